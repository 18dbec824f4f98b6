package blindlap.plan;

import blindlap.stats.distribution.Interval;
import blindlap.stats.order.Drift;
import blindlap.stats.power.DayPower;
import blindlap.stats.power.Detectable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * What a declared series can show on 8 of 10 such series: the sessions that stand, and the rest as
 * the plan at hand (docs/method.md#several-days).
 *
 * @param declared number of sessions declared
 * @param standing those that are committed already
 * @param difference in the unit of the primary measure, per cent on the ratio scale, or in units of
 *     noise if that is unknown; NaN if nothing is shown, however large
 * @param range the same over the interval of an estimated noise; null if there is none
 * @param worthwhile the worthwhile difference; NaN if none can be compared
 */
public record SeriesShows(
    int declared, int standing, double difference, @Nullable Interval range, double worthwhile) {

  /**
   * A session that stands.
   *
   * @param plan its plan
   * @param stints how many of its stints are ridden or can be: fewer if it was cut short
   */
  public record Session(Plan plan, int stints) {}

  /** Empty without a declared number, for other than two setups, and where all stand already. */
  static Optional<SeriesShows> of(Plan plan, List<Session> standing, DayBases bases) {
    Integer declared = plan.seriesSessions();
    Optional<Detectable> own = formula(new Session(plan, plan.stints()), bases);
    if (plan.series() == null || declared == null || standing.size() >= declared || own.isEmpty()) {
      return Optional.empty();
    }
    List<Detectable> days = new ArrayList<>();
    standing.forEach(session -> formula(session, bases).ifPresent(days::add));
    for (int i = standing.size(); i < declared; i++) {
      days.add(own.get());
    }
    Detectable together = Detectable.together(days);
    DayTerms terms = DayTerms.of(plan);
    double unit =
        together.attainableLevel() == 0 ? Double.NaN : together.difference(1, DayAnswers.POWER);
    Interval noise = terms.noise().range();
    return Optional.of(
        new SeriesShows(
            declared,
            standing.size(),
            terms.shown(unit * terms.noise().sd()),
            noise == null || Double.isNaN(unit)
                ? null
                : terms.shown(new Interval(unit * noise.low(), unit * noise.high())),
            terms.comparable() ? terms.worthwhile() : Double.NaN));
  }

  /** Empty for three and more setups, and for a session too short to tell anything. */
  private static Optional<Detectable> formula(Session session, DayBases bases) {
    Plan plan = session.plan();
    Drift drift = plan.primary().map(Measure::drift).orElse(Drift.LINE);
    DayBases.Base base =
        bases.of(plan.protocol(), Compared.of(plan.setups().size()), plan.stints(), drift);
    DayPower power = base == null ? null : base.power();
    if (base == null || power == null) {
      return Optional.empty();
    }
    if (session.stints() >= plan.stints()) {
      return Optional.of(power.formula());
    }
    if (session.stints() <= drift.columns() + 1) {
      return Optional.empty();
    }
    boolean[] ridden = new boolean[plan.stints()];
    Arrays.fill(ridden, 0, session.stints(), true);
    Detectable left = DayPower.of(base.set(), ridden, drift).formula();
    return left.efficiency() > 0 ? Optional.of(left) : Optional.empty();
  }
}
