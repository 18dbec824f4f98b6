package blindlap.plan;

import java.util.Optional;

/** What earlier days tell of a rider's noise in any measure on a trail. */
@FunctionalInterface
public interface EarlierNoise {
  /** Nothing is known of any measure. */
  EarlierNoise NONE = (measure, scoredLaps) -> Optional.empty();

  /**
   * The noise with its degrees of freedom and where it comes from; empty where nothing tells it.
   *
   * @param scoredLaps scored laps a stint: a mean of two laps is steadier than one lap
   */
  Optional<DeclaredNoise> of(Measure measure, int scoredLaps);
}
