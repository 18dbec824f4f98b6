package blindlap.plan;

import blindlap.stats.compare.OrderSet;
import blindlap.stats.distribution.Interval;
import blindlap.stats.power.VerdictOdds;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.jspecify.annotations.Nullable;

/**
 * What a day can show, at once and by formula. Differences are in the unit of the primary measure
 * (per cent on the ratio scale), or in units of noise if the noise is unknown.
 *
 * @param orders what the set of orders is worth
 * @param handlings how often parts are handled
 * @param noise what is known of the noise
 * @param worthwhile the worthwhile difference; NaN if none was declared
 * @param chosen the planned number of stints
 * @param curve other numbers of stints with the same rule, rising, the planned one included
 * @param least the least plan that shows the worthwhile difference on 8 of 10 days; empty if no
 *     number of stints does, or if that cannot be said
 * @param mostStints most stints that daylight and lap budget leave room for
 * @param days days like this one that together show the worthwhile difference; empty if that cannot
 *     be said, if one is enough, and for levels and three and more setups, which have no pooled
 *     analysis
 * @param odds how such a day would end, by true difference; empty if that cannot be said
 * @param measures what it can show in measures beside the primary
 * @param series what the declared series of the plan can show; empty outside one
 * @param steps what a steps day can show beside its trend; empty for other plans
 */
public record DayAnswer(
    OrderSet orders,
    Handlings handlings,
    NoiseKnown noise,
    double worthwhile,
    Point chosen,
    List<Point> curve,
    Optional<Least> least,
    int mostStints,
    OptionalInt days,
    List<Ending> odds,
    List<MeasureShows> measures,
    Optional<SeriesShows> series,
    Optional<StepsShows> steps) {

  /** How an answer was found. */
  public enum Source {
    /** By formula, which holds for sets of 200 orders and more. */
    FORMULA,
    /** By formula where the set is too small for it: to be replaced by simulation. */
    ROUGH,
    /** By simulation, with its error. */
    SIMULATION,
    /** By the approximation for pairs of three or four setups. */
    PAIRS,
    /** No p of .05 or less can come out. */
    NEVER
  }

  /**
   * What a number of stints can show on 8 of 10 days.
   *
   * @param stints number of stints
   * @param source how it was found
   * @param difference the difference; NaN if never
   * @param range the same over the interval of an estimated noise; null if there is none
   * @param fits whether it fits the day
   */
  public record Point(
      int stints, Source source, double difference, @Nullable Interval range, boolean fits) {}

  /**
   * How such a day would end.
   *
   * @param difference true difference
   * @param odds share of days by verdict
   * @param best the same at the least that the noise may be, where it is not known how much of it
   *     the laps of a stint share; the odds themselves else
   */
  public record Ending(double difference, VerdictOdds odds, VerdictOdds best) {}

  /**
   * The least plan that does what was asked.
   *
   * @param protocol its rule
   * @param stints its number of stints
   * @param difference what it shows on 8 of 10 days
   */
  public record Least(Protocol protocol, int stints, double difference) {}

  public DayAnswer {
    curve = List.copyOf(curve);
    odds = List.copyOf(odds);
    measures = List.copyOf(measures);
  }

  /** The same with what the declared series of the plan can show. */
  public DayAnswer with(SeriesShows shows) {
    return new DayAnswer(
        orders,
        handlings,
        noise,
        worthwhile,
        chosen,
        curve,
        least,
        mostStints,
        days,
        odds,
        measures,
        Optional.of(shows),
        steps);
  }

  /** True if the plan can never show anything. */
  public boolean never() {
    return chosen.source() == Source.NEVER;
  }

  /** True if the day shows the worthwhile difference on 8 of 10 days; false if that is unknown. */
  public boolean showsWorthwhile() {
    return noise.kind() != NoiseKnown.Kind.UNKNOWN && chosen.difference() <= worthwhile;
  }
}
