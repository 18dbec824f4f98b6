package blindlap.plan;

import blindlap.stats.noise.LapSplit;
import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;

/**
 * What the tester knows of the rider's noise in the primary measure before riding.
 *
 * @param sd stint-to-stint standard deviation in the unit of the measure (per cent on the ratio
 *     scale), of means of {@code laps} laps
 * @param df degrees of freedom if it was estimated from earlier sessions; null if it is a guess
 * @param source where it comes from, in words
 * @param usualDifference by how much two laps of different stints on one setup usually differ, as
 *     typed, if the SD was worked out from it; null otherwise
 * @param laps scored laps a stint that the SD is of; null where nothing is said: 1 with a usual
 *     difference, else as many as planned
 * @param stintShare how much of it the laps of a stint share; null if unknown
 */
public record DeclaredNoise(
    BigDecimal sd,
    @Nullable Integer df,
    String source,
    @Nullable BigDecimal usualDifference,
    @Nullable Integer laps,
    @Nullable StintShare stintShare) {
  /** Mean absolute difference of two normal values is 2/√π = 1.128… standard deviations. */
  private static final double MEAN_ABSOLUTE_DIFFERENCE = 2 / Math.sqrt(Math.PI);

  /** Most scored laps of a stint. */
  public static final int MOST_LAPS = 9;

  /** Where nothing is said of laps and stints apart. */
  public DeclaredNoise(
      BigDecimal sd, @Nullable Integer df, String source, @Nullable BigDecimal usualDifference) {
    this(sd, df, source, usualDifference, null, null);
  }

  /** A guess by what two laps of different stints on one setup usually differ by. */
  public static DeclaredNoise usually(BigDecimal usualDifference, String source) {
    BigDecimal sd =
        BigDecimal.valueOf(sdFromUsualDifference(usualDifference.doubleValue()))
            .round(new java.math.MathContext(6))
            .stripTrailingZeros();
    return new DeclaredNoise(sd, null, source, usualDifference);
  }

  /** The same, saying of how many laps a stint it is known and how much these share. */
  public DeclaredNoise of(@Nullable Integer ofLaps, @Nullable StintShare share) {
    return new DeclaredNoise(sd, df, source, usualDifference, ofLaps, share);
  }

  /**
   * Scored laps a stint that the SD is of.
   *
   * @param planned scored laps a stint of the plan
   */
  public int knownLaps(int planned) {
    return laps != null ? laps : usualDifference != null ? 1 : planned;
  }

  /** What turns it into the noise of stints of other numbers of laps. */
  LapSplit split(int planned) {
    double known = Math.max(1, knownLaps(planned));
    return stintShare == null ? LapSplit.unknown(known) : new LapSplit(known, stintShare.share());
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
