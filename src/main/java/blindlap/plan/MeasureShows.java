package blindlap.plan;

import blindlap.stats.compare.Scale;
import blindlap.stats.distribution.Interval;
import blindlap.stats.power.DayPower;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * What a day can show on 8 of 10 in a measure beside the primary one, in units of that measure's
 * own noise, which no plan declares; in its own unit where earlier days tell that noise.
 *
 * @param measure secondary, or watched for harm
 * @param tested number of measures of its role, for which it is adjusted
 * @param units two setups, or the ends of the levels, that differ by so much; with one difference
 *     and a watched harm, so much beyond the harm that was declared; NaN if nothing can be shown,
 *     however large
 */
public record MeasureShows(Measure measure, int tested, double units) {
  private static final double LEVEL = 0.05;

  /** From this many on none is likely to be shown (docs/method.md#watched-harm). */
  public static final int MANY_WATCHED = 3;

  /** All measures beside the primary, in the order of the plan. */
  static List<MeasureShows> of(Plan plan, DayBases bases) {
    List<MeasureShows> found = new ArrayList<>();
    for (Measure measure : plan.measures()) {
      if (measure.role() != Measure.Role.PRIMARY) {
        int tested = (int) plan.measures().stream().filter(m -> m.role() == measure.role()).count();
        Compared.of(plan)
            .ifPresent(
                compared -> units(plan, compared, measure, tested, bases).ifPresent(found::add));
      }
    }
    return found;
  }

  /**
   * The same in the unit of the measure, per cent on the ratio scale.
   *
   * @param difference beyond the declared harm, or beyond nothing
   * @param best the same at the least that the noise may be
   * @param range of the difference over the interval of the noise; null if there is none
   */
  public record Sized(double difference, double best, @Nullable Interval range) {}

  /**
   * In the unit of the measure, at a noise that earlier days tell; empty where nothing can be shown
   * or the noise is of no use.
   *
   * @param scoredLaps scored laps a stint of the plan
   * @param beyond the declared harm that must be exceeded, in the unit; 0 for a difference
   */
  public Optional<Sized> at(DeclaredNoise noise, int scoredLaps, double beyond) {
    boolean ratio = measure.scale() == Scale.RATIO;
    NoiseKnown known = NoiseKnown.of(noise, measure, scoredLaps);
    if (known.kind() == NoiseKnown.Kind.UNKNOWN || Double.isNaN(units)) {
      return Optional.empty();
    }
    Interval range = known.range();
    return Optional.of(
        new Sized(
            sized(known.sd(), ratio, beyond),
            sized(known.least(), ratio, beyond),
            range == null
                ? null
                : new Interval(
                    sized(range.low(), ratio, beyond), sized(range.high(), ratio, beyond))));
  }

  private double sized(double sd, boolean ratio, double beyond) {
    return ratio ? (100 + beyond) * Math.expm1(units * sd) : units * sd;
  }

  private static Optional<MeasureShows> units(
      Plan plan, Compared compared, Measure measure, int tested, DayBases bases) {
    DayBases.Base base = bases.of(plan.protocol(), compared, plan.stints(), measure.drift());
    if (base == null) {
      return Optional.empty();
    }
    double units = units(base, tested);
    DayPower power = base.power();
    if (base.steps() != null && power != null && !power.formulaHolds()) {
      // So few orders of levels can be told apart that the formula may be twice too hopeful.
      double more = tested == 1 ? 1 : units / base.unitDifference();
      units = more * bases.difference(plan.protocol(), compared, plan.stints(), measure.drift());
    }
    return Optional.of(new MeasureShows(measure, tested, units));
  }

  /** The first step of Holm's adjustment, which is the strictest; none for pairs. */
  private static double units(DayBases.Base base, int tested) {
    DayPower power = base.power();
    return power == null
        ? base.unitDifference()
        : power.formula().at(LEVEL / tested).difference(1, DayAnswers.POWER);
  }

  /**
   * Most watched measures of which any can be shown to do harm: 2M/K is at most .05.
   *
   * @param orders number of admissible orders, K
   */
  public static int mostWatched(java.math.BigInteger orders) {
    return (int) Math.min(99, Math.floor(LEVEL / 2 * orders.doubleValue() + 1e-9));
  }
}
