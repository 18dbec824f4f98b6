package blindlap.review;

import blindlap.session.CausalOrder;
import blindlap.session.Head;
import blindlap.session.SeriesStood;
import blindlap.session.SessionState;
import blindlap.session.StoredEntry;
import java.util.List;
import java.util.Optional;

/**
 * Which of two entries in the sessions of a series came first: the entries themselves say so as far
 * as they name each other; else the clocks of their writers must be believed
 * (docs/method.md#series).
 *
 * @param first true if the one that was asked about came before the other
 * @param byClocks true if only clocks tell
 */
record SeriesOrder(boolean first, boolean byClocks) {

  /**
   * Whether an entry was there before another was written.
   *
   * @param other session of the entry that is asked about
   * @param asked that entry
   * @param one session of the entry that it is held against
   * @param against that entry
   */
  static SeriesOrder of(
      SessionState other, StoredEntry asked, SessionState one, StoredEntry against) {
    boolean same = other.id().equals(one.id());
    Optional<List<Head>> seenByAgainst =
        same ? Optional.of(List.of(against.head())) : stood(one, against, other);
    if (seenByAgainst.isPresent()
        && CausalOrder.known(other.entries(), seenByAgainst.get(), asked)) {
      return new SeriesOrder(true, false);
    }
    Optional<List<Head>> seenByAsked =
        same ? Optional.of(List.of(asked.head())) : stood(other, asked, one);
    if (seenByAsked.isPresent() && CausalOrder.known(one.entries(), seenByAsked.get(), against)) {
      return new SeriesOrder(false, false);
    }
    boolean sameNotebook = against.entry().notebook().equals(asked.entry().notebook());
    if (sameNotebook && seenByAgainst.isPresent()) {
      // One notebook wrote both, and the later names the other session without the earlier.
      return new SeriesOrder(false, false);
    }
    return new SeriesOrder(asked.entry().at().isBefore(against.entry().at()), true);
  }

  /** The heads of another session as they are named directly after an entry, if they are. */
  private static Optional<List<Head>> stood(
      SessionState state, StoredEntry entry, SessionState other) {
    return state.entries().stream()
        .filter(e -> e.entry().notebook().equals(entry.entry().notebook()))
        .filter(e -> e.entry().number() == entry.entry().number() + 1)
        .map(e -> e.entry().fact())
        .filter(SeriesStood.class::isInstance)
        .map(SeriesStood.class::cast)
        .flatMap(stood -> Optional.ofNullable(stood.heads().get(other.id())).stream())
        .findFirst();
  }
}
