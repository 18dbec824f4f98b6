package blindlap.desk.day;

import blindlap.fault.Problem;
import blindlap.session.day.Day;
import java.util.List;

/** What became of something that was said or done on the day. */
public sealed interface DayResult {
  /**
   * Done and on disk.
   *
   * @param day the day afterwards
   */
  record Done(Day day) implements DayResult {}

  /**
   * Not done; nothing was written.
   *
   * @param problems at least one
   */
  record Refused(List<Problem> problems) implements DayResult {
    public Refused {
      problems = List.copyOf(problems);
    }
  }
}
