package blindlap.review;

import blindlap.session.Fact;
import blindlap.session.SessionState;
import blindlap.session.StoredEntry;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

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
    return openings(state, all).noneMatch(SeriesOrder::first)
        && (!scoredLap(state) || abandoning(state).filter(SeriesAbandoned::unaware).isPresent());
  }

  /**
   * True if only clocks tell whether a session was abandoned before a seal of its series was
   * opened.
   *
   * @param state an abandoned session
   * @param all every session of its series
   */
  static boolean byClocks(SessionState state, List<SessionState> all) {
    return openings(state, all).anyMatch(SeriesOrder::byClocks);
  }

  /** Each opened seal of the series held against the abandoning: whether it was opened before. */
  private static Stream<SeriesOrder> openings(SessionState state, List<SessionState> all) {
    return abandoning(state).stream()
        .flatMap(
            abandoned ->
                all.stream()
                    .flatMap(
                        each ->
                            SeriesPeeks.openings(each).stream()
                                .map(o -> SeriesOrder.of(each, o, state, abandoned))));
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
