package blindlap.stats.pool;

import blindlap.fault.Require;
import blindlap.fault.StatsException;
import blindlap.stats.distribution.Interval;
import blindlap.stats.distribution.Quantiles;

/**
 * Sessions of one rider averaged, each counted once: mean of their estimates, its standard error
 * √(Σ se²)/n, and degrees of freedom (Σ se²)²/Σ(se⁴/df) after Satterthwaite (1946), Biometrics
 * Bull. 2:110. One session keeps its own.
 *
 * <p>It describes the rider's days; it is no test of docs/method.md#pooling, whose intervals are
 * those of {@link StratifiedSessions} and {@link RidersInGeneral}.
 *
 * @param estimate mean of the estimates
 * @param standardError of the mean
 * @param df degrees of freedom, at least the fewest of a session
 */
public record AveragedSessions(double estimate, double standardError, double df) {
  /**
   * Averages sessions.
   *
   * @param estimates one per session, at least one
   * @param standardErrors of the estimates, not negative
   * @param dfs degrees of freedom of the standard errors, at least 1
   * @throws StatsException if the lists differ in length or hold impossible values
   */
  public static AveragedSessions of(double[] estimates, double[] standardErrors, int[] dfs) {
    int n = Require.sample("estimates", estimates, 1).length;
    if (standardErrors.length != n || dfs.length != n) {
      throw new StatsException("estimates", "must have one entry per session, as the other lists.");
    }
    double sum = 0;
    double squares = 0;
    double spread = 0;
    double fewest = Double.POSITIVE_INFINITY;
    for (int i = 0; i < n; i++) {
      double variance = standardErrors[i] * standardErrors[i];
      if (!(variance >= 0) || Double.isInfinite(variance) || dfs[i] < 1) {
        throw new StatsException(
            "standardErrors[" + i + "]", "and its degrees of freedom must be those of a session.");
      }
      sum += estimates[i];
      squares += variance;
      spread += variance * variance / dfs[i];
      fewest = Math.min(fewest, dfs[i]);
    }
    double df = spread > 0 ? squares * squares / spread : fewest;
    return new AveragedSessions(sum / n, Math.sqrt(squares) / n, df);
  }

  /**
   * The t interval.
   *
   * @param level such as .95, between 0 and 1
   */
  public Interval interval(double level) {
    double tail = (1 - level) / 2;
    return Interval.around(estimate, Quantiles.tUpper(tail, df) * standardError);
  }
}
