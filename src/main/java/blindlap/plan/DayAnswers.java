package blindlap.plan;

import blindlap.stats.distribution.Interval;
import blindlap.stats.order.Drift;
import blindlap.stats.power.DayPower;
import blindlap.stats.power.PairsPower;
import blindlap.stats.power.SimulatedDays;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Works out what a day can show. Keeps what depends on the rule alone, so that turning another knob
 * answers at once. Safe for use from several threads.
 */
public final class DayAnswers {
  /** "On 8 of 10 such days." */
  public static final double POWER = 0.8;

  private static final int MOST_DAYS = 99;

  /** What follows from a rule alone, whatever the plan: worked out once in the program's life. */
  private static final DayBases BASES = new DayBases(RuleBook.ofProgram());

  private final DayBases bases;
  private final Supplier<List<Protocol>> protocols;
  private final LooksBook looks;

  /** Recommends other numbers of stints by a plan's own rule only. */
  public DayAnswers() {
    this(List::of);
  }

  /** Looks for the least plan among these protocols, too. */
  public DayAnswers(Supplier<List<Protocol>> protocols) {
    this(protocols, BASES);
  }

  private DayAnswers(Supplier<List<Protocol>> protocols, DayBases bases) {
    this.protocols = protocols;
    this.bases = bases;
    this.looks = new LooksBook(bases.rules());
  }

  /**
   * Answers with nothing worked out before, such as the first of a program; to be timed and
   * counted.
   */
  public static DayAnswers unprepared(Supplier<List<Protocol>> protocols, RuleBook rules) {
    return new DayAnswers(protocols, new DayBases(rules));
  }

  /** How a day of given length can be divided into stints and laps. */
  public DayDivider divider() {
    return new DayDivider(bases, protocols);
  }

  /** The sets of orders that are known. */
  public RuleBook rules() {
    return bases.rules();
  }

  /**
   * The answer by formula.
   *
   * @return empty if the plan is no comparison or its rule gives no orders; PlanCheck says why
   */
  public Optional<DayAnswer> quick(Plan plan) {
    return quick(plan, (done, of) -> true);
  }

  /**
   * True if {@link #quick} would keep someone at a page waiting: it needs the sets of several
   * lengths of day of a rule that has not been worked out before, and one of them takes long by its
   * effort. Told by arithmetic; no set is made.
   */
  public boolean takesLong(Plan plan) {
    Optional<Compared> compared = Compared.of(plan);
    return plan.kind().measured()
        && compared.isPresent()
        && bases.takesLong(
            plan.protocol(), compared.get(), plan.stints(), DayLengths.of(plan), drift(plan));
  }

  /** Is told how far an answer has come, and says whether it is still wanted. */
  @FunctionalInterface
  public interface Waiting {
    /**
     * @param done lengths of day that are worked out
     * @param of how many there are
     * @return false to stop
     */
    boolean goOn(int done, int of);
  }

  /**
   * The same, for rules that take long.
   *
   * @throws java.util.concurrent.CancellationException if it is not wanted any more
   */
  public Optional<DayAnswer> quick(Plan plan, Waiting waiting) {
    DayBases.Base base = base(plan, plan.stints());
    Compared compared = Compared.of(plan).orElse(null);
    if (base == null || compared == null) {
      return Optional.empty();
    }
    DayTerms terms = DayTerms.of(plan);
    int most = Schedule.mostStints(plan);
    DayAnswer.Point chosen = point(base, plan.stints(), terms, most);
    List<DayAnswer.Point> curve = curve(plan, terms, most, waiting);
    DayAnswer answer =
        new DayAnswer(
            base.orders(),
            Handlings.of(plan),
            terms.noise(),
            terms.worthwhile(),
            chosen,
            curve,
            least(plan, terms),
            most,
            days(plan, base, chosen, terms),
            DayEndings.byFormula(base, terms),
            MeasureShows.of(plan, bases),
            Optional.empty(),
            StepsShows.of(plan, base, terms));
    bases.answered(plan.rule(), compared, drift(plan));
    return Optional.of(answer);
  }

  /** What a plan's declared series can show; see {@link SeriesShows}. */
  public Optional<SeriesShows> series(Plan plan, List<SeriesShows.Session> standing) {
    return SeriesShows.of(plan, standing, bases);
  }

  /**
   * What is left of the day if it is cut short or loses stints.
   *
   * @param cancelled asked often
   * @return empty where {@link #quick} is
   * @throws java.util.concurrent.CancellationException if cancelled
   */
  public Optional<DayLeft> left(Plan plan, BooleanSupplier cancelled) {
    DayBases.Base base = base(plan, plan.stints());
    if (base == null) {
      return Optional.empty();
    }
    return Optional.of(new DayCuts(plan, base, drift(plan), cancelled).left(bases));
  }

  /**
   * Simulates days of this plan; days of several calls can be joined, each with a seed of its own.
   *
   * @param days simulated days, at least 1
   * @param seed the same seed gives the same days
   * @param cancelled asked before every day
   * @return empty where {@link #quick} is and where nothing can be shown
   * @throws java.util.concurrent.CancellationException if cancelled
   */
  public Optional<DaySimulation> simulate(
      Plan plan, int days, long seed, BooleanSupplier cancelled) {
    DayBases.Base base = base(plan, plan.stints());
    if (base == null || base.never()) {
      return Optional.empty();
    }
    if (base.power() != null) {
      return Optional.of(new DaySimulation.Two(base.power().simulate(days, seed, cancelled)));
    }
    DayTerms terms = DayTerms.of(plan);
    PairsPower pairs = java.util.Objects.requireNonNull(base.pairs());
    double[] ladder = pairs.ladder(POWER);
    double[] all =
        Stream.of(terms.truths(), terms.truthsAtLeast(), ladder)
            .flatMapToDouble(Arrays::stream)
            .toArray();
    return Optional.of(
        new DaySimulation.Many(
            pairs.simulate(all, days, seed, cancelled), all.length - ladder.length));
  }

  /**
   * Days to simulate so that the answer comes within a second up to 16 stints
   * (docs/performance.md).
   */
  public static int usualDays(Plan plan) {
    return DaySimulation.usualDays(plan);
  }

  /** The answer that simulated days of this plan give. */
  public DayDetail detail(Plan plan, DaySimulation simulation) {
    DayTerms terms = DayTerms.of(plan);
    double sd = terms.noise().sd();
    double unit;
    Interval error;
    if (simulation instanceof DaySimulation.Many many) {
      unit = many.simulated().difference(1, POWER, many.ladder());
      error = many.simulated().differenceError95(sd, POWER, many.ladder());
    } else {
      SimulatedDays simulated = ((DaySimulation.Two) simulation).simulated();
      unit = simulated.difference(1, POWER);
      error = simulated.differenceError95(sd, POWER);
    }
    DayAnswer.Point point =
        new DayAnswer.Point(
            plan.stints(),
            DayAnswer.Source.SIMULATION,
            terms.shown(unit * sd),
            range(unit, terms),
            plan.stints() <= Schedule.mostStints(plan));
    return new DayDetail(
        simulation.days(),
        point,
        terms.shown(error),
        DayEndings.of(simulation, terms),
        DayEndings.ofPairs(simulation, terms),
        looks.of(plan));
  }

  /**
   * The answer with what simulated days tell in place of what is only rough by formula; unchanged
   * where the formula holds.
   */
  public DayAnswer refined(Plan plan, DayAnswer answer, DayDetail detail) {
    DayAnswer.Source source = answer.chosen().source();
    if (source != DayAnswer.Source.ROUGH && source != DayAnswer.Source.PAIRS) {
      return answer;
    }
    DayTerms terms = DayTerms.of(plan);
    DayBases.Base base = base(plan, plan.stints());
    List<DayAnswer.Point> curve =
        answer.curve().stream()
            .map(p -> p.stints() == plan.stints() ? detail.chosen() : p)
            .toList();
    return new DayAnswer(
        answer.orders(),
        answer.handlings(),
        answer.noise(),
        answer.worthwhile(),
        detail.chosen(),
        curve,
        answer.least(),
        answer.mostStints(),
        base == null ? OptionalInt.empty() : days(plan, base, detail.chosen(), terms),
        detail.odds().isEmpty() ? answer.odds() : detail.odds(),
        answer.measures(),
        answer.series(),
        answer.steps());
  }

  private static Drift drift(Plan plan) {
    return plan.primary().map(Measure::drift).orElse(Drift.LINE);
  }

  private DayBases.@Nullable Base base(Plan plan, int stints) {
    return plan.kind().measured()
        ? Compared.of(plan)
            .map(compared -> bases.of(plan.protocol(), compared, stints, drift(plan)))
            .orElse(null)
        : null;
  }

  private static DayAnswer.Point point(DayBases.Base base, int stints, DayTerms terms, int most) {
    DayAnswer.Source source;
    if (base.never()) {
      source = DayAnswer.Source.NEVER;
    } else if (base.power() == null) {
      source = DayAnswer.Source.PAIRS;
    } else {
      source = base.power().formulaHolds() ? DayAnswer.Source.FORMULA : DayAnswer.Source.ROUGH;
    }
    return new DayAnswer.Point(
        stints,
        source,
        terms.shown(base.unitDifference() * terms.noise().sd()),
        range(base.unitDifference(), terms),
        stints <= most);
  }

  private static @Nullable Interval range(double unitDifference, DayTerms terms) {
    Interval noise = terms.noise().range();
    return noise == null || Double.isNaN(unitDifference)
        ? null
        : terms.shown(new Interval(unitDifference * noise.low(), unitDifference * noise.high()));
  }

  private List<DayAnswer.Point> curve(Plan plan, DayTerms terms, int most, Waiting waiting) {
    List<Integer> lengths = DayLengths.of(plan);
    List<DayAnswer.Point> curve = new ArrayList<>();
    for (int i = 0; i < lengths.size(); i++) {
      if (!waiting.goOn(i, lengths.size())) {
        throw new java.util.concurrent.CancellationException("nobody waits for it any more");
      }
      DayBases.Base base = base(plan, lengths.get(i));
      if (base != null) {
        curve.add(point(base, lengths.get(i), terms, most));
      }
    }
    return curve;
  }

  private Optional<DayAnswer.Least> least(Plan plan, DayTerms terms) {
    return terms.comparable()
        ? new LeastPlan(bases, protocols.get()).of(plan, drift(plan), terms)
        : Optional.empty();
  }

  /** Days of two setups are pooled; of more, and of levels, there is no pooled analysis. */
  private static OptionalInt days(
      Plan plan, DayBases.Base base, DayAnswer.Point chosen, DayTerms terms) {
    DayPower power = base.power();
    if (power == null
        || plan.steps() != null
        || !terms.comparable()
        || !(chosen.difference() / terms.worthwhile() > 1)) {
      return OptionalInt.empty();
    }
    double wanted = terms.margin() / terms.noise().sd();
    for (int days = 2; days <= MOST_DAYS; days++) {
      if (power.formula().days(days).difference(1, POWER) <= wanted) {
        return OptionalInt.of(days);
      }
    }
    return OptionalInt.empty();
  }
}
