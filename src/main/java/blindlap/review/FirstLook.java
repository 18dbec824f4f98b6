package blindlap.review;

import blindlap.session.Entry;
import blindlap.session.Fact;
import blindlap.session.FindingSeenAgain;
import blindlap.session.SessionState;
import blindlap.session.StoredEntry;
import java.time.Instant;
import java.util.Optional;

/**
 * When the finding of a session was looked at for the first time under another edition of the
 * method than it was unsealed under (docs/method.md#editions).
 *
 * @param edition that was looked with
 * @param at when; empty where it could not be written down
 * @param same true if its finding read like the one at unsealing
 */
public record FirstLook(int edition, Optional<Instant> at, boolean same) {
  /** What a notebook has of the first look under this program's edition. */
  public static Optional<FirstLook> kept(SessionState state) {
    FindingSeenAgain seen = state.seenAgain().get(Edition.CURRENT);
    return Optional.ofNullable(seen)
        .map(fact -> new FirstLook(fact.edition(), at(state, fact), fact.same()));
  }

  /** When a fact of a session was written. */
  static Optional<Instant> at(SessionState state, Fact fact) {
    return state.entries().stream()
        .map(StoredEntry::entry)
        .filter(entry -> entry.fact() == fact)
        .map(Entry::at)
        .findFirst();
  }
}
