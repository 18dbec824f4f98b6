package blindlap.plan;

import blindlap.stats.compare.Scale;
import blindlap.stats.distribution.Interval;
import java.math.BigDecimal;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/** The primary measure's scale: numbers are worked out in its model and shown in its unit. */
record DayTerms(NoiseKnown noise, boolean ratio, double worthwhile, double margin) {
  /** True differences the page tells of, in worthwhile ones. */
  private static final double[] TRUTHS = {0, 1, 1.5, 2};

  static DayTerms of(Plan plan) {
    NoiseKnown noise = NoiseKnown.of(plan);
    Measure primary = plan.primary().orElse(null);
    boolean ratio = primary != null && primary.scale() == Scale.RATIO;
    @Nullable BigDecimal declared = primary == null ? null : primary.worthwhile();
    double worthwhile =
        declared != null && declared.signum() > 0 ? declared.doubleValue() : Double.NaN;
    return new DayTerms(
        noise, ratio, worthwhile, ratio ? Math.log1p(worthwhile / 100) : worthwhile);
  }

  /** True if noise and worthwhile difference are in one unit. */
  boolean comparable() {
    return noise.kind() != NoiseKnown.Kind.UNKNOWN && worthwhile > 0;
  }

  /** True differences the page tells of, in units of noise; none if that cannot be said. */
  double[] truths() {
    return truths(noise.sd());
  }

  /** The same in units of the least that the noise may be; none where that is the only one. */
  double[] truthsAtLeast() {
    return noise.split() ? truths(noise.least()) : new double[0];
  }

  private double[] truths(double sd) {
    return comparable() ? Arrays.stream(TRUTHS).map(t -> t * margin / sd).toArray() : new double[0];
  }

  /** From the model to the unit in which people think; units of noise stay as they are. */
  double shown(double value) {
    return ratio && noise.kind() != NoiseKnown.Kind.UNKNOWN ? 100 * Math.expm1(value) : value;
  }

  Interval shown(Interval value) {
    return new Interval(shown(value.low()), shown(value.high()));
  }
}
