package blindlap.exchange;

import blindlap.fault.Problem;
import blindlap.session.PlainDay;
import java.util.List;

/**
 * What a file of old days holds.
 *
 * @param days in the order in which the file names them
 * @param problems mistakes that no day can be told for; then no day is to be used
 */
public record PlainDayReading(List<PlainDay> days, List<Problem> problems) {
  public PlainDayReading {
    days = List.copyOf(days);
    problems = List.copyOf(problems);
  }
}
