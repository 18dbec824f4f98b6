package blindlap.plan;

import blindlap.fault.Problem;
import blindlap.stats.compare.Scale;
import blindlap.stats.compare.StintSummary;
import blindlap.stats.distribution.Interval;
import blindlap.stats.noise.LapSplit;
import blindlap.stats.order.Drift;
import blindlap.stats.power.DayPower;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BooleanSupplier;
import java.util.function.IntFunction;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * Divides a day of given length into stints and scored laps in all ways that fit, and says what
 * each can show (docs/method.md#day-divided). What depends on rules alone is worked out once.
 */
public final class DayDivider {
  /**
   * With the seed and the days of the answers of plans, so that a division reads as planning it
   * does.
   */
  private static final long SEED = 20_251_101L;

  /** As for the least plan: a rule with a least trend efficiency is one for short days. */
  private static final int SHORT_DAY = 24;

  private static final double SAME = 1e-9;

  private final DayBases bases;
  private final Supplier<List<Protocol>> protocols;

  DayDivider(DayBases bases, Supplier<List<Protocol>> protocols) {
    this.bases = bases;
    this.protocols = protocols;
  }

  /** Is told how far it has come, and says whether it is still wanted. */
  @FunctionalInterface
  public interface Waiting {
    /**
     * @param done divisions that are worked out
     * @param of how many there are
     * @return false to stop
     */
    boolean goOn(int done, int of);
  }

  /** Why a day cannot be divided at all; empty if it can be tried. */
  public static Optional<Problem> refused(Plan plan) {
    if (plan.kind() == Plan.Kind.NOISE_RUN) {
      return Optional.of(Problem.of(PlanFault.DIVIDE_NOISE_RUN, "session"));
    }
    if (plan.kind() == Plan.Kind.TELLING_RUN) {
      return Optional.of(Problem.of(PlanFault.DIVIDE_TELLING_RUN, "session"));
    }
    return plan.timetable() == null
        ? Optional.of(Problem.of(PlanFault.DIVIDE_WITHOUT_TIMETABLE, "timetable"))
        : Optional.empty();
  }

  /** The noise of stints of so many scored laps, as a plan with so many would take it. */
  public static IntFunction<@Nullable DeclaredNoise> typed(Plan plan) {
    DeclaredNoise noise = plan.noise();
    DeclaredNoise known =
        noise == null ? null : noise.of(noise.knownLaps(plan.laps().scored()), noise.stintShare());
    return laps -> known;
  }

  /** The same where the plan says nothing of it and earlier days tell it. */
  public static IntFunction<@Nullable DeclaredNoise> told(Plan plan, EarlierNoise earlier) {
    return laps -> plan.primary().flatMap(primary -> earlier.of(primary, laps)).orElse(null);
  }

  /**
   * All divisions.
   *
   * @param plan a comparison with a timetable
   * @param noise of stints of so many scored laps; null if unknown
   * @param waiting told how many sets of orders are made
   * @throws java.util.concurrent.CancellationException if it is not wanted any more
   */
  public DayDivided divide(Plan plan, IntFunction<@Nullable DeclaredNoise> noise, Waiting waiting) {
    List<Fitting> fitting = new ArrayList<>();
    int fewest = fewestLaps(plan);
    int beyond = 0;
    for (Protocol protocol : protocols(plan)) {
      for (int scored = fewest; scored <= DeclaredNoise.MOST_LAPS; scored++) {
        List<Fitting> found = fitting(plan, protocol, scored, noise.apply(scored));
        fitting.addAll(found);
        beyond += found.isEmpty() ? 1 : 0;
      }
    }
    List<Division> divisions = new ArrayList<>();
    Map<Rule, Plan> rough = new LinkedHashMap<>();
    int silent = 0;
    for (int i = 0; i < fitting.size(); i++) {
      if (!waiting.goOn(i, fitting.size())) {
        throw new java.util.concurrent.CancellationException("nobody waits for it any more");
      }
      Fitting each = fitting.get(i);
      DayBases.Base base = base(each.plan());
      if (base == null || base.never()) {
        silent += each.longest() ? 1 : 0;
        continue;
      }
      OptionalDouble simulated = simulated(each.plan(), base);
      if (needsDays(base) && simulated.isEmpty()) {
        rough.putIfAbsent(each.plan().rule(), each.plan());
      }
      double unit = simulated.orElse(base.unitDifference());
      if (Double.isNaN(unit)) {
        silent += each.longest() ? 1 : 0;
      } else {
        divisions.add(division(each, base, unit, simulated.isPresent()));
      }
    }
    return new DayDivided(
        marked(divisions), beyond, silent, fewest - 1, List.copyOf(rough.values()));
  }

  /**
   * Simulates the days of a set of orders that is too small for the formula; {@link #divide} then
   * has a better figure for it.
   *
   * @throws java.util.concurrent.CancellationException if cancelled
   */
  public void simulate(Plan rough, BooleanSupplier cancelled) {
    Compared.of(rough)
        .ifPresent(
            compared ->
                bases.simulate(
                    rough.protocol(),
                    compared,
                    rough.stints(),
                    drift(rough),
                    DaySimulation.usualDays(rough),
                    SEED,
                    cancelled));
  }

  /** Why no division is left; by the shortest day of the plan's own rule. */
  public static Problem nothingFits(Plan plan) {
    Integer block = plan.protocol().block();
    int stints = block == null || block < 2 ? plan.setups().size() : block;
    Schedule shortest =
        Schedule.of(plan.with(plan.protocol(), stints, fewestLaps(plan), plan.noise()))
            .orElseThrow();
    return Problem.of(
        PlanFault.DIVIDE_NOTHING_FITS,
        "timetable",
        stints,
        shortest.end().toLocalTime(),
        shortest.limit().toLocalTime());
  }

  private record Fitting(Plan plan, Schedule schedule, boolean longest) {}

  private List<Protocol> protocols(Plan plan) {
    List<Protocol> tried = new ArrayList<>(List.of(plan.protocol()));
    protocols.get().stream()
        .filter(plan::suits)
        .filter(p -> !p.equals(plan.protocol()))
        .forEach(tried::add);
    return tried;
  }

  /** A median needs three laps, so that fewer are no division of a plan that declares one. */
  private static int fewestLaps(Plan plan) {
    return plan.measures().stream().mapToInt(m -> m.summary().fewestLaps()).max().orElse(1);
  }

  private static List<Fitting> fitting(
      Plan plan, Protocol protocol, int scored, @Nullable DeclaredNoise noise) {
    Integer block = protocol.block();
    int setups = plan.setups().size();
    int step = block == null || block < 1 ? setups : block;
    int last = mostStints(plan, protocol);
    List<Fitting> found = new ArrayList<>();
    for (int stints = step; stints <= last; stints += step) {
      Plan divided = plan.with(protocol, stints, scored, noise);
      Schedule schedule = Schedule.of(divided).orElseThrow();
      if (!fits(divided, schedule)) {
        break;
      }
      if (DayBases.possible(setups, stints, block)) {
        found.add(new Fitting(divided, schedule, false));
      }
    }
    if (!found.isEmpty()) {
      Fitting most = found.remove(found.size() - 1);
      found.add(new Fitting(most.plan(), most.schedule(), true));
    }
    return found;
  }

  /** A rule for short days is named after its usual number: longer only where the plan has it. */
  private static int mostStints(Plan plan, Protocol protocol) {
    if (protocol.minTrendEfficiency() == null) {
      return Rule.MOST_STINTS;
    }
    return protocol.equals(plan.protocol()) ? SHORT_DAY : protocol.usualStints();
  }

  private static boolean fits(Plan plan, Schedule schedule) {
    Timetable table = plan.timetable();
    Integer budget = table == null ? null : table.lapBudget();
    int handled = Handlings.of(plan).perSetupAtMost();
    boolean wears =
        plan.change() == ChangeMethod.REFIT
            && plan.setups().stream()
                .anyMatch(s -> s.mostRefits() != null && s.mostRefits() < handled);
    return schedule.fits()
        && !wears
        && (budget == null || plan.laps().warmUp() + plan.lapsOfDay() <= budget);
  }

  private DayBases.@Nullable Base base(Plan plan) {
    return Compared.of(plan)
        .map(compared -> bases.of(plan.protocol(), compared, plan.stints(), drift(plan)))
        .orElse(null);
  }

  private OptionalDouble simulated(Plan plan, DayBases.Base base) {
    Compared compared = Compared.of(plan).orElse(null);
    return needsDays(base) && compared != null
        ? bases.simulated(plan.protocol(), compared, plan.stints(), drift(plan))
        : OptionalDouble.empty();
  }

  private static boolean needsDays(DayBases.Base base) {
    DayPower power = base.power();
    return power != null && !power.formulaHolds();
  }

  private static Division division(
      Fitting fitting, DayBases.Base base, double unit, boolean simulated) {
    Plan plan = fitting.plan();
    DayTerms terms = DayTerms.of(plan);
    Noise noise = Noise.of(plan);
    Interval share = noise.split().share();
    return new Division(
        plan,
        fitting.schedule(),
        base.orders().meanSwaps(),
        Handlings.of(plan),
        simulated ? DayAnswer.Source.SIMULATION : source(base),
        new Interval(
            terms.shown(unit * noise.at(share.low())), terms.shown(unit * noise.at(share.high()))),
        terms.comparable()
            ? noise.reach(terms.margin() / unit)
            : new Division.Reach(Division.Reached.UNKNOWN, OptionalDouble.empty()),
        StepsShows.of(plan, base, terms),
        fitting.longest(),
        false);
  }

  private static DayAnswer.Source source(DayBases.Base base) {
    return base.power() == null
        ? DayAnswer.Source.PAIRS
        : needsDays(base) ? DayAnswer.Source.ROUGH : DayAnswer.Source.FORMULA;
  }

  /** The noise of a division's stints over the share that lies in the stint. */
  private record Noise(double sd, LapSplit split, int scored, StintSummary summary) {
    static Noise of(Plan plan) {
      DeclaredNoise typed = plan.noise();
      DeclaredNoise noise = typed == null || typed.sd().signum() <= 0 ? null : typed;
      boolean ratio = plan.primary().map(m -> m.scale() == Scale.RATIO).orElse(false);
      double said = noise == null ? 1 : noise.sd().doubleValue();
      return new Noise(
          noise != null && ratio ? Math.log1p(said / 100) : said,
          noise == null ? LapSplit.unknown(1) : noise.split(plan.laps().scored()),
          plan.laps().scored(),
          plan.primary().map(Measure::summary).orElse(StintSummary.MEAN));
    }

    double at(double share) {
      return sd * split.factor(share, scored, summary);
    }

    /**
     * How far a noise of at most so much is reached.
     *
     * @param wanted SD of a stint
     */
    Division.Reach reach(double wanted) {
      Interval share = split.share();
      boolean low = at(share.low()) <= wanted;
      boolean high = at(share.high()) <= wanted;
      if (low == high) {
        return new Division.Reach(
            low ? Division.Reached.EITHER_WAY : Division.Reached.NOT, OptionalDouble.empty());
      }
      double ratio = wanted * wanted / (sd * sd);
      double own = LapSplit.variance(scored, summary);
      double known = 1 / split.laps();
      double edge = (ratio * known - own) / (1 - own - ratio * (1 - known));
      return new Division.Reach(
          low ? Division.Reached.AT_MOST : Division.Reached.AT_LEAST, OptionalDouble.of(edge));
    }
  }

  /** The best is best at both ends, and so between them; else none is. */
  private static List<Division> marked(List<Division> divisions) {
    double low = divisions.stream().mapToDouble(d -> d.ends().low()).min().orElse(Double.NaN);
    double high = divisions.stream().mapToDouble(d -> d.ends().high()).min().orElse(Double.NaN);
    List<Division> marked = new ArrayList<>();
    boolean found = false;
    for (Division each : divisions) {
      boolean best =
          !found
              && each.ends().low() <= low * (1 + SAME)
              && each.ends().high() <= high * (1 + SAME);
      found |= best;
      marked.add(best ? each.asBest() : each);
    }
    return marked;
  }

  private static Drift drift(Plan plan) {
    return plan.primary().map(Measure::drift).orElse(Drift.LINE);
  }
}
