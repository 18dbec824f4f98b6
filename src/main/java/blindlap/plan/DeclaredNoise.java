package blindlap.plan;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;

/**
 * What the tester knows of the rider's noise in the primary measure before riding.
 *
 * @param sd stint-to-stint standard deviation in the unit of the measure (per cent on the ratio
 *     scale)
 * @param df degrees of freedom if it was estimated from earlier sessions; null if it is a guess
 * @param source where it comes from, in words
 */
public record DeclaredNoise(BigDecimal sd, @Nullable Integer df, String source) {
  /** Mean absolute difference of two normal values is 2/√π = 1.128… standard deviations. */
  private static final double MEAN_ABSOLUTE_DIFFERENCE = 2 / Math.sqrt(Math.PI);

  /**
   * The SD behind "two laps on the same setup usually differ by about x".
   *
   * @param usualDifference x, above 0
   */
  public static double sdFromUsualDifference(double usualDifference) {
    return usualDifference / MEAN_ABSOLUTE_DIFFERENCE;
  }
}
