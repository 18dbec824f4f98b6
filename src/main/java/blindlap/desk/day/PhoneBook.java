package blindlap.desk.day;

import blindlap.session.day.SessionId;
import java.util.Optional;

/**
 * Which phones were let in to a session, kept beside the record so that a program that was started
 * again knows them. No key, and no token in the clear.
 */
public interface PhoneBook {
  /** What was kept; empty if nothing was. */
  Optional<String> kept(SessionId id);

  /** Keeps or replaces it. */
  void keep(SessionId id, String text);

  /** Forgets it: the day is over. */
  void forget(SessionId id);
}
