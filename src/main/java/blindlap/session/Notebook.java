package blindlap.session;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Where entries are kept. Appending is the only change to the record; drafts are kept apart and are
 * not part of it. Implementations throw {@link NotebookException} with one sentence when the file
 * cannot be used.
 */
public interface Notebook extends AutoCloseable {
  /** The id of this notebook. */
  NotebookId id();

  /** Ids of all sessions, latest first by their first entry. */
  List<SessionId> sessions();

  /** All entries of a session in causal order; empty if there is none. */
  List<StoredEntry> entries(SessionId session);

  /** The last entry of every chain of a session. */
  List<Head> heads(SessionId session);

  /**
   * Appends facts to this notebook's own chain of a session in one transaction: all or none, on
   * disk when this returns.
   *
   * @param session the session, new or known
   * @param known heads that the caller has seen; if others are there by now nothing is written
   * @param facts at least one
   * @param at time of writing
   * @param zone zone of the writer
   * @return the new entries, or empty if the session has moved on since {@code known}
   */
  Optional<List<StoredEntry>> append(
      SessionId session, List<Head> known, List<Fact> facts, Instant at, ZoneId zone);

  /** Changes whenever any window or program has written to the file. */
  long dataVersion();

  /** Drafts by name, in the form in which they were typed. */
  Map<String, String> drafts();

  /** Keeps or replaces a draft. */
  void putDraft(String name, String text);

  /** Forgets a draft. */
  void deleteDraft(String name);

  @Override
  void close();
}
