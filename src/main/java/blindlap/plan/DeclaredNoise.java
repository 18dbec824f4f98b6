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
 * @param usualDifference by how much two stints on one setup usually differ, as typed, if the SD
 *     was worked out from it; null otherwise
 */
public record DeclaredNoise(
    BigDecimal sd, @Nullable Integer df, String source, @Nullable BigDecimal usualDifference) {
  /** Mean absolute difference of two normal values is 2/√π = 1.128… standard deviations. */
  private static final double MEAN_ABSOLUTE_DIFFERENCE = 2 / Math.sqrt(Math.PI);

  /** A guess by what two stints on one setup usually differ by. */
  public static DeclaredNoise usually(BigDecimal usualDifference, String source) {
    BigDecimal sd =
        BigDecimal.valueOf(sdFromUsualDifference(usualDifference.doubleValue()))
            .round(new java.math.MathContext(6))
            .stripTrailingZeros();
    return new DeclaredNoise(sd, null, source, usualDifference);
  }

  /**
   * The SD behind "two laps on the same setup usually differ by about x".
   *
   * @param usualDifference x, above 0
   */
  public static double sdFromUsualDifference(double usualDifference) {
    return usualDifference / MEAN_ABSOLUTE_DIFFERENCE;
  }
}
