package blindlap.review;

import blindlap.fault.DayFault;
import blindlap.fault.Unusable;
import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.stats.compare.CountRatio;
import blindlap.stats.compare.CutShort;
import blindlap.stats.compare.ManySetups;
import blindlap.stats.compare.OneDifference;
import blindlap.stats.compare.OrderSet;
import blindlap.stats.compare.Verdict;
import blindlap.stats.compare.VoidBalance;
import blindlap.stats.distribution.Interval;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.Sampling;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Consumer;

/** Makes a finding from a day, one step after the other. */
public final class Analysis {
  static final double MOST_MISSING = 0.30;

  private final DayRecord day;
  private final Plan plan;
  private final Consumer<String> progress;
  private final Assignments set;
  private final OrderSet orders;
  private final int[] order;
  private final Measure first;
  private final boolean earlier;
  private Optional<LooksFound> looks = Optional.empty();
  private final List<Finding.Refusal> refusals = new ArrayList<>();

  /**
   * @throws Unusable if the day as a whole cannot be compared
   */
  /**
   * Analyses a day.
   *
   * @throws Unusable if the day as a whole cannot be compared, such as a noise run
   */
  public static Finding of(DayRecord day) {
    return new Analysis(day, step -> {}, false).finding();
  }

  /** Analyses a day, telling of each step (a measure's name) before it is taken. */
  public static Finding of(DayRecord day, Consumer<String> progress) {
    return new Analysis(day, progress, false).finding();
  }

  /**
   * The verdict alone, for lists and for a page that shows it first: the primary measure without
   * everything that stands beside it. Empty where no verdict can be given.
   */
  public static Optional<Comparison> verdictOnly(DayRecord day) {
    return new Analysis(day, step -> {}, false).primaryOnly();
  }

  /** The same by the rules before edition 3: void laps never count, and every day may conclude. */
  static Optional<Comparison> earlierVerdictOnly(DayRecord day) {
    return new Analysis(day, step -> {}, true).primaryOnly();
  }

  /** The primary measure of three and more setups alone; empty where it cannot be compared. */
  public static Optional<ManyComparison> manyOnly(DayRecord day) {
    Analysis analysis = new Analysis(day, step -> {}, false);
    return analysis.one() ? Optional.empty() : analysis.compareMany(analysis.first);
  }

  private Analysis(DayRecord day, Consumer<String> progress, boolean earlier) {
    this.day = day;
    this.earlier = earlier;
    this.plan = day.plan();
    if (plan.setups().size() < 2) {
      throw new Unusable(
          "plan", "is a noise run and compares nothing.", DayFault.NOTHING_TO_COMPARE);
    }
    this.first =
        plan.primary()
            .orElseThrow(
                () -> new Unusable("plan", "has no primary measure.", DayFault.NO_PRIMARY));
    this.progress = progress;
    this.set = plan.rule().assignments();
    this.orders = plan.steps() == null ? OrderSet.of(set) : OrderSet.ofTrend(set);
    this.order = day.key().setups();
  }

  Optional<Comparison> primaryOnly() {
    return one() ? compare(first) : Optional.empty();
  }

  private boolean one() {
    return plan.oneDifference();
  }

  Finding finding() {
    Optional<Comparison> primary = Optional.empty();
    List<Comparison> others = new ArrayList<>();
    List<ManyComparison> many = new ArrayList<>();
    if (one()) {
      primary = compare(first);
      notPrimary().forEach(m -> compare(m).ifPresent(others::add));
      adjust(others);
      WatchedHarms.test(plan, order, others);
    } else {
      compareMany(first).ifPresent(many::add);
      notPrimary().forEach(m -> compareMany(m).ifPresent(many::add));
      Adjusted.many(many);
      WatchedHarms.testMany(plan, order, many);
    }
    StintValues raw = counted(first);
    StintValues stints = TakenOut.of(day, first, raw).stints();
    progress.accept("");
    return new Finding(
        day,
        orders,
        primary,
        others,
        many,
        refusals,
        primary.isPresent() || compared(many, first)
            ? new Sensitivities(day, set, first, stints).found()
            : List.of(),
        Guesses.of(day, set),
        Waits.of(day, set),
        VoidBalance.of(set, order, voids(stints)),
        VoidBalance.of(set, order, voidLaps(stints)),
        left(stints),
        Parity.of(day),
        new CovariateChecks(day, set, first, raw).found(),
        WhereAnalysis.of(day, set, looks.filter(LooksFound::stopped).isPresent()));
  }

  private static boolean compared(List<ManyComparison> many, Measure measure) {
    return many.stream().anyMatch(m -> m.measure() == measure);
  }

  private List<Measure> notPrimary() {
    return plan.measures().stream().filter(m -> m != first).toList();
  }

  private static boolean[] voids(StintValues stints) {
    boolean[] voids = new boolean[stints.stints()];
    for (int i = 0; i < voids.length; i++) {
      voids[i] = stints.voided(i + 1);
    }
    return voids;
  }

  private static int[] voidLaps(StintValues stints) {
    int[] laps = new int[stints.stints()];
    java.util.Arrays.setAll(laps, i -> stints.voidLaps(i + 1));
    return laps;
  }

  private Optional<CutShort> left(StintValues stints) {
    return stints.used() == stints.stints()
        ? Optional.empty()
        : Optional.of(
            plan.steps() == null
                ? CutShort.of(set, stints.valid(), first.drift())
                : CutShort.ofTrend(set, stints.valid(), first.drift()));
  }

  private Optional<Comparison> compare(Measure measure) {
    progress.accept(measure.name());
    try {
      TakenOut out = takenOut(measure);
      StintValues stints = out.stints();
      OneDifference result = result(stints, out);
      Set<Caveat> caveats = caveats(measure, stints);
      Optional<LooksFound> looked = looks(measure, stints);
      caveats.addAll(afterLooks(measure));
      Optional<CountRatio> ratio = ratio(measure, stints);
      if (ratio.filter(r -> r.meanCount() < 1).isPresent()) {
        caveats.add(Caveat.FEW_COUNTS);
      }
      boolean tested = !caveats.contains(Caveat.MISSING) && !caveats.contains(Caveat.ENDED_FREELY);
      if (measure.role() == Measure.Role.WATCH_FOR_HARM) {
        band(measure);
      }
      return Optional.of(
          new Comparison(
              measure,
              stints,
              result,
              tested ? verdict(measure, result, looked) : Optional.empty(),
              OptionalDouble.empty(),
              Optional.empty(),
              ratio,
              caveats,
              looked));
    } catch (Unusable e) {
      refusals.add(new Finding.Refusal(measure, e.problem()));
      return Optional.empty();
    }
  }

  private TakenOut takenOut(Measure measure) {
    return TakenOut.of(day, measure, counted(measure));
  }

  private StintValues counted(Measure measure) {
    return earlier
        ? StintValues.of(day, measure, StintValues.Laps.NOT_VOID)
        : StintValues.counted(day, measure);
  }

  private OneDifference result(StintValues stints, TakenOut out) {
    return OfDay.compare(plan, set, order, stints.values(), stints.valid(), out.nuisance());
  }

  /** Worked out once, with the primary measure, which is compared before all others. */
  private Optional<LooksFound> looks(Measure measure, StintValues stints) {
    if (measure != first || day.looks().isEmpty()) {
      return Optional.empty();
    }
    looks = Optional.of(LooksFound.of(day, set, order, first, stints.values()));
    return looks;
  }

  private Set<Caveat> afterLooks(Measure measure) {
    Set<Caveat> caveats = new TreeSet<>();
    boolean rating = measure.kind().rating();
    if (looks.filter(LooksFound::stopped).isPresent() && measure != first) {
      caveats.add(Caveat.STOPPED_EARLY);
    }
    if (looks.filter(LooksFound::knewNothingLarge).isPresent() && rating) {
      caveats.add(Caveat.KNEW_NOTHING_LARGE);
    }
    if (looks.filter(LooksFound::knewTheyDiffer).isPresent() && rating) {
      caveats.add(Caveat.KNEW_THEY_DIFFER);
    }
    return caveats;
  }

  private Set<Caveat> caveats(Measure measure, StintValues stints) {
    return Caveats.of(day, measure, stints, earlier);
  }

  private Optional<CountRatio> ratio(Measure measure, StintValues stints) {
    if (!measure.kind().counted() || plan.steps() != null) {
      return Optional.empty();
    }
    return Optional.of(
        CountRatio.of(set, order, stints.values(), stints.valid(), Sampling.PREFERRED));
  }

  private static Optional<Interval> band(Measure measure) {
    BigDecimal declared = measure.worthwhile();
    if (declared != null && declared.signum() <= 0) {
      throw new Unusable(
          "worthwhile",
          "must be above 0, but is " + declared.toPlainString() + ".",
          DayFault.WORTHWHILE_NOT_POSITIVE,
          declared.toPlainString());
    }
    return Comparison.band(measure);
  }

  private Optional<Verdict> verdict(
      Measure measure, OneDifference result, Optional<LooksFound> looks) {
    Optional<Interval> band = band(measure);
    if (measure.role() != Measure.Role.PRIMARY || band.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        orders.attainableLevel() == 0
            ? Verdict.COULD_NOT_SHOW
            : looks
                .map(found -> found.verdict(result, band.get()))
                .orElseGet(() -> result.verdict(band.get().low(), band.get().high())));
  }

  private Optional<ManyComparison> compareMany(Measure measure) {
    progress.accept(measure.name());
    try {
      TakenOut out = takenOut(measure);
      StintValues stints = out.stints();
      ManySetups result =
          ManySetups.compare(
              set, order, stints.values(), stints.valid(), out.nuisance(), Sampling.PREFERRED);
      return Optional.of(
          new ManyComparison(
              measure,
              stints,
              result,
              OptionalDouble.empty(),
              List.of(),
              caveats(measure, stints)));
    } catch (Unusable e) {
      refusals.add(new Finding.Refusal(measure, e.problem()));
      return Optional.empty();
    }
  }

  private void adjust(List<Comparison> others) {
    if (plan.steps() == null) {
      Adjusted.setups(set, order, others, measure -> takenOut(measure).nuisance());
    } else {
      Adjusted.trends(others);
    }
  }
}
