package blindlap.review;

import blindlap.session.Fact;
import blindlap.session.SessionState;
import blindlap.session.StoredEntry;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * When an abandoned session of a series may be replaced by another (docs/method.md#series): if no
 * scored lap was ridden, or if whoever abandoned it declares not to know key or setups, and if
 * nothing of the series was unsealed by then. Any other could have been dropped for its result.
 */
public final class SeriesAbandoned {
  private SeriesAbandoned() {}

  /**
   * @param state an abandoned session
   * @param all every session of its series
   */
  static boolean replaceable(SessionState state, List<SessionState> all) {
    Optional<StoredEntry> abandoning = abandoning(state);
    Instant at = abandoning.map(stored -> stored.entry().at()).orElse(Instant.MAX);
    boolean known =
        all.stream()
            .flatMap(each -> each.opening().stream())
            .map(opening -> opening.entry().at())
            .anyMatch(unsealed -> unsealed.isBefore(at));
    return !known && (!scoredLap(state) || abandoning.filter(SeriesAbandoned::unaware).isPresent());
  }

  private static Optional<StoredEntry> abandoning(SessionState state) {
    return state.entries().stream()
        .filter(stored -> stored.entry().fact() instanceof Fact.SessionAbandoned)
        .findFirst();
  }

  private static boolean unaware(StoredEntry stored) {
    return stored.entry().fact() instanceof Fact.SessionAbandoned fact
        && !fact.unawareBy().isEmpty();
  }

  /** True once a lap that counts was ridden. */
  public static boolean scoredLap(SessionState state) {
    int settling = state.plan().laps().settling();
    return state.laps().stream().anyMatch(lap -> lap.ridden() && lap.id().lap() > settling);
  }
}
