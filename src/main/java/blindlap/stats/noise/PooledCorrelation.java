package blindlap.stats.noise;

import blindlap.stats.distribution.Interval;
import blindlap.stats.distribution.Quantiles;
import java.util.List;
import java.util.Optional;

/**
 * One correlation over several days (docs/method.md#covariates): Fisher's z = artanh r of each day,
 * weighted by its degrees of freedom less one, which is the inverse of its variance; the interval
 * is that of the weighted mean. Fisher 1921, Metron 1:3; for partial correlations Fisher 1924,
 * Metron 3:329. Supposes about normal values.
 *
 * @param r pooled, from −1 to 1
 * @param interval95 95 % interval
 * @param days number of days
 */
public record PooledCorrelation(double r, Interval interval95, int days) {
  /** artanh 1 is infinite: a day on which nothing else varied counts as this. */
  private static final double MOST = 1 - 1e-9;

  /**
   * What one day shows.
   *
   * @param r from −1 to 1
   * @param df stints less all columns removed from both, less one
   */
  public record Seen(double r, int df) {}

  /** Over days of two and more degrees of freedom; empty if there is none. */
  public static Optional<PooledCorrelation> of(List<Seen> days) {
    List<Seen> telling =
        days.stream().filter(day -> Double.isFinite(day.r()) && day.df() >= 2).toList();
    double weight = telling.stream().mapToInt(day -> day.df() - 1).sum();
    if (telling.isEmpty()) {
      return Optional.empty();
    }
    double z = telling.stream().mapToDouble(day -> (day.df() - 1) * z(day.r())).sum() / weight;
    double half = Quantiles.Z_975 / Math.sqrt(weight);
    return Optional.of(
        new PooledCorrelation(
            Math.tanh(z), new Interval(Math.tanh(z - half), Math.tanh(z + half)), telling.size()));
  }

  private static double z(double r) {
    double cut = Math.max(-MOST, Math.min(MOST, r));
    return Math.log((1 + cut) / (1 - cut)) / 2;
  }

  /** The least and the most it may be, whichever way it goes. */
  public Interval size() {
    double low = Math.abs(interval95.low());
    double high = Math.abs(interval95.high());
    boolean nothing = interval95.low() <= 0 && interval95.high() >= 0;
    return new Interval(nothing ? 0 : Math.min(low, high), Math.max(low, high));
  }
}
