package blindlap.store;

import blindlap.session.Entry;
import blindlap.session.Fact;
import blindlap.session.SessionSummary;
import blindlap.session.StoredEntry;
import blindlap.session.day.Step;
import java.sql.SQLException;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Changes of a summary over the life of a session, and of what others of its question did. */
final class Summaries {
  private Summaries() {}

  /** The same at a step with a verdict; sealed sessions have none. */
  static SessionSummary with(SessionSummary summary, Step step, String verdict) {
    return new SessionSummary(
        summary.id(),
        summary.kind(),
        summary.level(),
        summary.question(),
        summary.rider(),
        summary.trail(),
        summary.day(),
        summary.setups(),
        summary.series(),
        summary.looks(),
        summary.committedAt(),
        step,
        step.sealed() ? "" : verdict,
        summary.reason());
  }

  /**
   * Forgets verdicts that say whether a result was known at commit, or what a series answers, where
   * new entries of another session may have changed that; whoever shows the list makes them anew.
   * Which setups were compared is not looked at: one verdict too many costs a moment, one too few
   * is wrong.
   *
   * @param about the session that has new entries
   */
  static void forget(SummaryTable table, SessionSummary about, List<StoredEntry> entries)
      throws SQLException {
    Optional<Instant> since = since(about, entries);
    if (since.isEmpty()) {
      return;
    }
    for (SessionSummary other : table.all()) {
      if (!other.id().equals(about.id())
          && !other.verdict().isEmpty()
          && (about.series() != null && about.series().equals(other.series())
              || same(other.rider(), about.rider())
                  && same(other.trail(), about.trail())
                  && other.committedAt().isAfter(since.get()))) {
        table.change(with(other, other.step(), ""));
      }
    }
  }

  /** Sessions committed later may have known a result; empty if none was opened by the entries. */
  private static Optional<Instant> since(SessionSummary about, List<StoredEntry> entries) {
    // The last day of a series tells the results of all of them, and an abandoned one may be that.
    return about.series() == null
        ? entries.stream()
            .map(StoredEntry::entry)
            .filter(entry -> entry.fact() instanceof Fact.SealOpened)
            .map(Entry::at)
            .min(Comparator.naturalOrder())
        : Optional.of(Instant.MIN);
  }

  private static boolean same(String a, String b) {
    return a.strip().toLowerCase(Locale.ROOT).equals(b.strip().toLowerCase(Locale.ROOT));
  }
}
