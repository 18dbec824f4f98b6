package blindlap.plan;

import blindlap.stats.order.LevelScale;
import blindlap.stats.power.StepsPower;
import java.util.Optional;

/**
 * What a steps day can show beside its one difference from the lowest to the highest level
 * (docs/method.md#steps-power).
 *
 * @param range highest less lowest level, in the unit of the setting
 * @param bend how far the middle of that range must lie off the straight line between its ends to
 *     be seen on 8 of 10 days, in the unit of the primary measure, per cent on the ratio scale, or
 *     in units of noise if that is unknown; NaN if no bend can be seen
 * @param atLeast true where there are so few stints that the bend must be deeper than that
 * @param ratio true where differences are in per cent
 */
public record StepsShows(double range, double bend, boolean atLeast, boolean ratio) {
  /** Of fewer stints a level a bend of the formula's height is seen on 6 to 7 of 10 days. */
  private static final int STINTS_A_LEVEL = 3;

  /** Empty for other plans than steps days. */
  static Optional<StepsShows> of(Plan plan, DayBases.Base base, DayTerms terms) {
    StepsPower steps = base.steps();
    if (steps == null) {
      return Optional.empty();
    }
    boolean perCent = terms.ratio() && terms.noise().kind() != NoiseKnown.Kind.UNKNOWN;
    double height = steps.bend(1, DayAnswers.POWER) * terms.noise().sd();
    return Optional.of(
        new StepsShows(
            LevelScale.range(plan.levelNumbers()),
            terms.shown(height),
            base.set().stints() < STINTS_A_LEVEL * base.set().setups(),
            perCent));
  }

  /** A difference from the lowest to the highest level, spread evenly over the units between. */
  public double perUnit(double difference) {
    return ratio ? 100 * Math.expm1(Math.log1p(difference / 100) / range) : difference / range;
  }

  /** True if a bend, however deep, could come out at all. */
  public boolean bendSeen() {
    return !Double.isNaN(bend);
  }
}
