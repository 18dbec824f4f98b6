package blindlap.desk.day;

import blindlap.fault.Problem;
import blindlap.session.day.Day;
import blindlap.session.day.SessionId;
import java.util.List;

/**
 * Keying in paper: a table in ridden order, entered twice; where the two differ it is settled
 * before anything is recorded.
 */
public interface KeyingIn {
  /**
   * A keying in that is not done yet.
   *
   * @param again true once the first table was typed to its end
   * @param first what was typed first
   * @param second what was typed again
   */
  record Begun(boolean again, LapTable first, LapTable second) {}

  /** What was typed so far, in the laps that are still to be recorded. */
  Begun begun(Day day);

  /** Keeps what was typed so far; on disk when this returns. */
  void keep(SessionId session, Begun begun);

  /** Forgets what was typed so far. */
  void forget(SessionId session);

  /**
   * What is wrong with a row as it stands, each named by its lap. Nothing is recorded.
   *
   * @param row from 0
   */
  List<Problem> check(Day day, LapTable table, int row);

  /**
   * Records a settled table as keyed in from paper: every row in which something was typed.
   *
   * @param knowing names of the measures that were timed or scored by someone who knows the key
   */
  DayResult record(Day day, LapTable table, List<String> knowing);
}
