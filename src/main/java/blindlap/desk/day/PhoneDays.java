package blindlap.desk.day;

import blindlap.fault.Problem;
import blindlap.session.day.ByPhone;
import blindlap.session.day.Day;
import blindlap.session.day.SessionId;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * What phones say on the day. Each message is entered once and answered only once it is on disk.
 */
public interface PhoneDays {
  /**
   * A day as it stands.
   *
   * @param entries number of the last entry of the session that this notebook wrote
   * @param last by client, the greatest number of a message that is entered
   */
  record Seen(Day day, long entries, java.util.Map<String, Long> last) {
    public Seen {
      last = java.util.Map.copyOf(last);
    }
  }

  /** What became of a message. */
  sealed interface Taken {
    /**
     * Entered now, or nothing was to be entered.
     *
     * @param seen the day afterwards
     */
    record Done(Seen seen) implements Taken {}

    /** Entered before. */
    record Already(Seen seen) implements Taken {}

    /** Not entered. */
    record Refused(List<Problem> problems) implements Taken {
      public Refused {
        problems = List.copyOf(problems);
      }
    }
  }

  /** The day of a session as it stands on disk. */
  Optional<Seen> day(SessionId id);

  /** Another number once anybody has written to the notebook. */
  long version();

  /**
   * Does what a message says, once.
   *
   * @param by as it is to stand in the entries; {@link ByPhone#knew} is left out by this where the
   *     message came at once
   * @param act what it says; decided again if a window was faster
   */
  Taken act(SessionId id, ByPhone by, Function<PhoneActs, DayResult> act);
}
