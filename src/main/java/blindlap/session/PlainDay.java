package blindlap.session;

import blindlap.fault.Problem;
import java.time.LocalDate;
import java.util.List;

/**
 * An old day as a file has it, before it is taken.
 *
 * @param day when
 * @param lines lines of its laps, in ridden order
 * @param laps in ridden order, times in seconds; empty where there are problems
 * @param lapsPerStint laps of every stint; 1 without a column for the stint
 * @param problems why it is not taken, in the order of the file; empty if it can be
 */
public record PlainDay(
    LocalDate day,
    List<Integer> lines,
    List<PlainLap> laps,
    int lapsPerStint,
    List<Problem> problems) {
  public PlainDay {
    lines = List.copyOf(lines);
    laps = List.copyOf(laps);
    problems = List.copyOf(problems);
  }
}
