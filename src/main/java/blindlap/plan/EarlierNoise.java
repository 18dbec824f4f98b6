package blindlap.plan;

import blindlap.stats.noise.PooledCorrelation;
import java.util.Optional;

/**
 * What earlier days tell of a rider's noise in any measure on a trail, and of what goes with it.
 */
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

  /**
   * How strongly a covariate, declared with the same name and meaning, went with a measure, drift
   * and setups removed; empty where no day tells it.
   *
   * @param scoredLaps scored laps a stint: the mean of several goes with a covariate more closely
   */
  default Optional<PooledCorrelation> correlation(
      Measure measure, int scoredLaps, Covariate covariate) {
    return Optional.empty();
  }
}
