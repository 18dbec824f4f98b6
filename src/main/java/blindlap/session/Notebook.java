package blindlap.session;

import blindlap.seal.Cover;
import blindlap.seal.CoveredOrder;
import blindlap.session.day.ByPhone;
import blindlap.session.day.SessionId;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Where entries are kept. Appending is the only change to the record; drafts are kept apart and are
 * not part of it. Implementations throw {@link NotebookException} with one sentence when the file
 * cannot be used.
 */
public interface Notebook extends AutoCloseable {
  /** The id of this notebook. */
  NotebookId id();

  /** Ids of all sessions, latest first: by the arrival of their commit in this notebook. */
  List<SessionId> sessions();

  /** What a list of sessions shows, in the order of {@link #sessions}; holds nothing of a key. */
  List<SessionSummary> summaries();

  /**
   * The sessions that hold every one of some words in question, setups, rider, trail, date, step or
   * verdict; capitals and accents do not matter.
   *
   * @param words parted by spaces; blank finds all
   */
  List<SessionSummary> search(String words);

  /**
   * Keeps a verdict in words for the lists. It is not part of the record.
   *
   * @return false, and nothing is kept, unless the session is unsealed
   */
  boolean putVerdict(SessionId session, String words);

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
  default Optional<List<StoredEntry>> append(
      SessionId session, List<Head> known, List<Fact> facts, Instant at, ZoneId zone) {
    return append(session, known, facts, at, zone, null);
  }

  /**
   * The same of facts that a phone said.
   *
   * @param phone which message of which phone; null where none did
   */
  Optional<List<StoredEntry>> append(
      SessionId session,
      List<Head> known,
      List<Fact> facts,
      Instant at,
      ZoneId zone,
      @Nullable ByPhone phone);

  /**
   * Begins a session whose order is covered, entries and cover in one transaction; from then on
   * every append wraps the order anew (docs/sealing.md#covered).
   *
   * @param session a new session
   * @param facts the committed plan first
   * @param order as it was drawn; it is kept nowhere else
   * @return the entries
   */
  List<StoredEntry> commit(
      SessionId session, List<Fact> facts, Instant at, ZoneId zone, CoveredOrder order);

  /**
   * The covered order of a session, if this notebook keeps one: it does where the session was
   * committed here, or in the notebook that this one is a backup of.
   */
  Optional<Cover> cover(SessionId session);

  /**
   * Adds entries that other notebooks wrote, as they are, in one transaction: all or none. Entries
   * that are here already are left alone. The result is the same in whatever order notebooks
   * exchange their entries.
   *
   * @param entries of one or more sessions, in any order
   * @return what was added, or why nothing was
   */
  Addition addEntries(List<StoredEntry> entries);

  /** Reads and checks everything: the file, every entry, every chain, the lists. */
  NotebookReport verify();

  /** Changes whenever any window or program, this one included, has written to the file. */
  long dataVersion();

  /** Drafts by name, in the form in which they were typed. */
  Map<String, String> drafts();

  /** Keeps or replaces a draft. */
  void putDraft(String name, String text);

  /** Forgets a draft. */
  void deleteDraft(String name);

  /** The trail book. */
  Trails trails();

  /** Who should look at what. */
  Profiles profiles();

  /** What recordings left of the way. */
  Contents contents();

  @Override
  void close();
}
