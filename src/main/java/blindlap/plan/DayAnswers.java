package blindlap.plan;

import blindlap.stats.Assignments;
import blindlap.stats.CutShort;
import blindlap.stats.DayPower;
import blindlap.stats.Detectable;
import blindlap.stats.Drift;
import blindlap.stats.Interval;
import blindlap.stats.OrderSet;
import blindlap.stats.PairsDetectable;
import blindlap.stats.Scale;
import blindlap.stats.SimulatedDays;
import blindlap.stats.VerdictOdds;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.BooleanSupplier;
import org.jspecify.annotations.Nullable;

/**
 * Works out what a day can show. Keeps what depends on the rule alone, so that turning another knob
 * answers at once. Safe for use from several threads.
 */
public final class DayAnswers {
  /** "On 8 of 10 such days." */
  public static final double POWER = 0.8;

  private static final int LONGEST_CURVE = 48;
  private static final int KEPT = 200;
  private static final double[] TRUTHS = {0, 1, 1.5, 2};

  private final Map<Key, Base> kept =
      new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Key, Base> eldest) {
          return size() > KEPT;
        }
      };

  private record Key(Rule rule, Drift drift) {}

  /** What depends on rule and drift alone; power is null for three and four setups. */
  private record Base(
      Assignments set,
      OrderSet orders,
      @Nullable DayPower power,
      @Nullable PairsDetectable pairs,
      double unitDifference) {}

  /**
   * The answer by formula.
   *
   * @return empty if the plan is no comparison or its rule gives no orders; PlanCheck says why
   */
  public Optional<DayAnswer> quick(Plan plan) {
    Base base = base(plan, plan.stints());
    if (base == null) {
      return Optional.empty();
    }
    Terms terms = Terms.of(plan);
    int most = Schedule.mostStints(plan);
    DayAnswer.Point chosen = point(base, plan.stints(), terms, most);
    List<DayAnswer.Point> curve = curve(plan, terms, most);
    return Optional.of(
        new DayAnswer(
            base.orders,
            Handlings.of(plan),
            terms.noise,
            terms.worthwhile,
            chosen,
            curve,
            enough(curve, terms),
            most,
            days(chosen, terms),
            odds(base, terms)));
  }

  /**
   * What is left of the day if it is cut short or loses stints.
   *
   * @param cancelled asked often
   * @return empty where {@link #quick} is
   * @throws java.util.concurrent.CancellationException if cancelled
   */
  public Optional<DayLeft> left(Plan plan, BooleanSupplier cancelled) {
    Base base = base(plan, plan.stints());
    if (base == null) {
      return Optional.empty();
    }
    Drift drift = drift(plan);
    return Optional.of(
        new DayLeft(
            cuts(base, drift, Terms.of(plan), cancelled),
            losing(base, 1, drift, cancelled),
            losing(base, 2, drift, cancelled)));
  }

  /**
   * Simulates days of this plan; days of several calls can be joined, each with a seed of its own.
   *
   * @param days simulated days, at least 1
   * @param seed the same seed gives the same days
   * @param cancelled asked before every day
   * @return empty where {@link #quick} is, for three and four setups, and where nothing can be
   *     shown
   * @throws java.util.concurrent.CancellationException if cancelled
   */
  public Optional<SimulatedDays> simulate(
      Plan plan, int days, long seed, BooleanSupplier cancelled) {
    Base base = base(plan, plan.stints());
    if (base == null || base.power == null || base.orders.attainableLevel() == 0) {
      return Optional.empty();
    }
    return Optional.of(base.power.simulate(days, seed, cancelled));
  }

  /** The answer that simulated days of this plan give. */
  public DayDetail detail(Plan plan, SimulatedDays simulated) {
    Terms terms = Terms.of(plan);
    double sd = terms.noise.sd();
    DayAnswer.Point point =
        new DayAnswer.Point(
            plan.stints(),
            DayAnswer.Source.SIMULATION,
            terms.shown(simulated.difference(sd, POWER)),
            range(simulated.difference(1, POWER), terms),
            plan.stints() <= Schedule.mostStints(plan));
    List<DayAnswer.Ending> odds = new ArrayList<>();
    if (terms.comparable()) {
      for (double truth : TRUTHS) {
        VerdictOdds each = simulated.odds(truth * terms.margin, terms.margin, sd);
        odds.add(new DayAnswer.Ending(terms.shown(truth * terms.margin), each));
      }
    }
    return new DayDetail(
        simulated.days(), point, terms.shown(simulated.differenceError95(sd, POWER)), odds);
  }

  private static CutShort losing(Base base, int lost, Drift drift, BooleanSupplier cancelled) {
    stopIf(cancelled);
    return CutShort.losing(base.set, Math.min(lost, base.set.stints()), drift);
  }

  private static void stopIf(BooleanSupplier cancelled) {
    if (cancelled.getAsBoolean() || Thread.currentThread().isInterrupted()) {
      throw new java.util.concurrent.CancellationException("the knobs were turned again");
    }
  }

  private static List<DayLeft.Cut> cuts(
      Base base, Drift drift, Terms terms, BooleanSupplier cancelled) {
    List<DayLeft.Cut> cuts = new ArrayList<>();
    int stints = base.set.stints();
    for (int after = 1; after <= stints; after++) {
      stopIf(cancelled);
      CutShort left = CutShort.after(base.set, after, drift);
      double difference = Double.NaN;
      if (base.power != null && left.smallestP() <= 0.05 + 1e-12) {
        boolean[] ridden = new boolean[stints];
        java.util.Arrays.fill(ridden, 0, after, true);
        Detectable formula = DayPower.of(base.set, ridden, drift).formula();
        difference = terms.shown(formula.difference(terms.noise.sd(), POWER));
      }
      cuts.add(new DayLeft.Cut(after, left, difference));
    }
    return cuts;
  }

  private static Drift drift(Plan plan) {
    return plan.primary().map(Measure::drift).orElse(Drift.LINE);
  }

  private @Nullable Base base(Plan plan, int stints) {
    int setups = plan.setups().size();
    Integer block = plan.protocol().block();
    if (plan.kind() != Plan.Kind.COMPARISON
        || setups < 2
        || setups > 4
        || stints < 2
        || stints > Rule.MOST_STINTS
        || stints % (block == null ? 1 : Math.max(1, block)) != 0) {
      return null;
    }
    Key key = new Key(plan.protocol().rule(setups, stints), drift(plan));
    synchronized (kept) {
      Base known = kept.get(key);
      if (known != null) {
        return known;
      }
    }
    Base made = make(key);
    if (made != null) {
      synchronized (kept) {
        kept.put(key, made);
      }
    }
    return made;
  }

  private static @Nullable Base make(Key key) {
    try {
      Assignments set = key.rule.assignments();
      if (set.count().signum() == 0 || !set.closedUnderRenaming()) {
        return null;
      }
      OrderSet orders = OrderSet.of(set);
      if (key.rule.setups() > 2) {
        PairsDetectable pairs = PairsDetectable.of(set, key.drift);
        double unit = orders.attainableLevel() == 0 ? Double.NaN : pairs.difference(1, POWER);
        return new Base(set, orders, null, pairs, unit);
      }
      DayPower power = DayPower.of(set, key.drift);
      return new Base(set, orders, power, null, power.formula().difference(1, POWER));
    } catch (IllegalArgumentException contradiction) {
      // PlanCheck says in words what contradicts.
      return null;
    }
  }

  private static DayAnswer.Point point(Base base, int stints, Terms terms, int most) {
    DayAnswer.Source source;
    if (base.orders.attainableLevel() == 0) {
      source = DayAnswer.Source.NEVER;
    } else if (base.power == null) {
      source = DayAnswer.Source.PAIRS;
    } else {
      source =
          base.power.formula().formulaHolds() ? DayAnswer.Source.FORMULA : DayAnswer.Source.ROUGH;
    }
    return new DayAnswer.Point(
        stints,
        source,
        terms.shown(base.unitDifference * terms.noise.sd()),
        range(base.unitDifference, terms),
        stints <= most);
  }

  private static @Nullable Interval range(double unitDifference, Terms terms) {
    Interval noise = terms.noise.range();
    return noise == null || Double.isNaN(unitDifference)
        ? null
        : terms.shown(new Interval(unitDifference * noise.low(), unitDifference * noise.high()));
  }

  private List<DayAnswer.Point> curve(Plan plan, Terms terms, int most) {
    Integer block = plan.protocol().block();
    int setups = Math.max(2, plan.setups().size());
    int step = block == null || block < 4 ? setups == 3 ? 6 : 4 : block;
    List<DayAnswer.Point> curve = new ArrayList<>();
    int last = block == null ? Math.max(24, plan.stints()) : Math.max(LONGEST_CURVE, plan.stints());
    for (int stints = 2; stints <= last; stints++) {
      if (stints % step != 0 && stints != plan.stints() || stints < 8 && stints != plan.stints()) {
        continue;
      }
      if (stints > 32 && stints % (2 * step) != 0 && stints != plan.stints()) {
        continue;
      }
      Base base = base(plan, stints);
      if (base != null) {
        curve.add(point(base, stints, terms, most));
      }
    }
    return curve;
  }

  private static OptionalInt enough(List<DayAnswer.Point> curve, Terms terms) {
    return !terms.comparable()
        ? OptionalInt.empty()
        : curve.stream()
            .filter(p -> p.difference() <= terms.worthwhile)
            .mapToInt(DayAnswer.Point::stints)
            .min();
  }

  /** Estimates of n like days are averaged: the difference shrinks by √n (METHOD 10). */
  private static OptionalInt days(DayAnswer.Point chosen, Terms terms) {
    double times = chosen.difference() / terms.worthwhile;
    if (!terms.comparable() || !(times > 1)) {
      return OptionalInt.empty();
    }
    double days = Math.ceil(times * times - 1e-9);
    return days > 99 ? OptionalInt.empty() : OptionalInt.of((int) days);
  }

  private static List<DayAnswer.Ending> odds(Base base, Terms terms) {
    List<DayAnswer.Ending> odds = new ArrayList<>();
    if (base.power != null && terms.comparable() && base.orders.attainableLevel() > 0) {
      for (double truth : TRUTHS) {
        double difference = truth * terms.margin;
        odds.add(
            new DayAnswer.Ending(
                terms.shown(difference),
                base.power.odds(difference, terms.margin, terms.noise.sd())));
      }
    }
    return odds;
  }

  /** The primary measure's scale: numbers are worked out in its model and shown in its unit. */
  private record Terms(NoiseKnown noise, boolean ratio, double worthwhile, double margin) {
    static Terms of(Plan plan) {
      NoiseKnown noise = NoiseKnown.of(plan);
      Measure primary = plan.primary().orElse(null);
      boolean ratio = primary != null && primary.scale() == Scale.RATIO;
      java.math.@org.jspecify.annotations.Nullable BigDecimal declared =
          primary == null ? null : primary.worthwhile();
      double worthwhile =
          declared != null && declared.signum() > 0 ? declared.doubleValue() : Double.NaN;
      return new Terms(noise, ratio, worthwhile, ratio ? Math.log1p(worthwhile / 100) : worthwhile);
    }

    /** True if noise and worthwhile difference are in one unit. */
    boolean comparable() {
      return noise.kind() != NoiseKnown.Kind.UNKNOWN && worthwhile > 0;
    }

    /** From the model to the unit in which people think; units of noise stay as they are. */
    double shown(double value) {
      return ratio && noise.kind() != NoiseKnown.Kind.UNKNOWN ? 100 * Math.expm1(value) : value;
    }

    Interval shown(Interval value) {
      return new Interval(shown(value.low()), shown(value.high()));
    }
  }
}
