package blindlap.plan;

import blindlap.fault.Unusable;
import blindlap.stats.compare.OrderSet;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.Drift;
import blindlap.stats.power.DayPower;
import blindlap.stats.power.PairsPower;
import blindlap.stats.power.StepsPower;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.BooleanSupplier;
import org.jspecify.annotations.Nullable;

/**
 * What depends on rule and drift alone, kept so that it is worked out once. Safe for use from
 * several threads.
 */
final class DayBases {
  private static final int KEPT = 400;
  private static final int SIMULATED = 1000;

  /** Of levels a day takes ten times as long. */
  private static final int SIMULATED_OF_LEVELS = 400;

  private static final long SEED = 20_251_127L;

  private final RuleBook rules;
  private final Map<Key, Base> kept = keeping();
  private final Map<Key, Double> simulated = keeping();
  private final Map<Key, Double> asPlanned = keeping();
  private final Map<Key, Boolean> answered = keeping();

  /**
   * @param rules makes and keeps the sets
   */
  DayBases(RuleBook rules) {
    this.rules = rules;
  }

  RuleBook rules() {
    return rules;
  }

  private record Key(Rule rule, Compared compared, Drift drift) {}

  /**
   * What follows from a rule; differences in units of noise.
   *
   * @param power of two setups, or from the lowest to the highest level; null for more setups
   * @param pairs of three and more setups; null else
   * @param steps of the levels of a steps day; null else
   */
  record Base(
      Assignments set,
      RuleBook.Entry rule,
      @Nullable DayPower power,
      @Nullable PairsPower pairs,
      @Nullable StepsPower steps,
      double unitDifference) {
    OrderSet orders() {
      return steps == null ? rule.summary() : rule.summary().ofTrend();
    }

    /** True if no p of .05 or less can come out. */
    boolean never() {
      return (power == null ? orders().attainableLevel() : power.formula().attainableLevel()) == 0;
    }
  }

  private static <V> Map<Key, V> keeping() {
    return new LinkedHashMap<>(16, 0.75f, true) {
      private static final long serialVersionUID = 1L;

      @Override
      protected boolean removeEldestEntry(Map.Entry<Key, V> eldest) {
        return size() > KEPT;
      }
    };
  }

  /**
   * True if the rule was not worked out before and {@link RuleBook#large costs much} at one of the
   * lengths of day that an answer goes through. Makes nothing.
   */
  boolean takesLong(
      Protocol protocol, Compared compared, int stints, List<Integer> lengths, Drift drift) {
    int setups = compared.setups();
    if (!possible(setups, stints, protocol.block())) {
      return false;
    }
    Rule own = protocol.rule(setups, stints);
    synchronized (answered) {
      if (answered.containsKey(new Key(own, compared, drift))) {
        return false;
      }
    }
    if (rules.fruitless(own)) {
      return false;
    }
    return lengths.stream()
        .filter(length -> possible(setups, length, protocol.block()))
        .anyMatch(length -> rules.large(protocol.rule(setups, length)));
  }

  /** All that an answer needs of a rule is known now. */
  void answered(Rule rule, Compared compared, Drift drift) {
    synchronized (answered) {
      answered.put(new Key(rule, compared, drift), true);
    }
  }

  /** True if there may be a rule of that size. */
  static boolean possible(int setups, int stints, @Nullable Integer block) {
    return setups >= 2
        && setups <= StepsDay.MOST
        && stints >= 2
        && stints <= Rule.MOST_STINTS
        && stints % (block == null ? 1 : Math.max(1, block)) == 0;
  }

  /** Null where the rule gives no orders. */
  @Nullable Base of(Protocol protocol, Compared compared, int stints, Drift drift) {
    Integer block = protocol.block();
    if (!possible(compared.setups(), stints, block)) {
      return null;
    }
    Key key = new Key(protocol.rule(compared.setups(), stints), compared, drift);
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

  /**
   * The difference that such a day shows with the power of an answer, in units of noise, simulated
   * where two setups or levels have too few orders for the formula; NaN if it shows none.
   */
  double difference(Protocol protocol, Compared compared, int stints, Drift drift) {
    Base base = of(protocol, compared, stints, drift);
    if (base == null) {
      return Double.NaN;
    }
    DayPower power = base.power;
    if (power == null || power.formulaHolds() || base.never()) {
      return base.unitDifference;
    }
    Key key = new Key(protocol.rule(compared.setups(), stints), compared, drift);
    int days = base.steps == null ? SIMULATED : SIMULATED_OF_LEVELS;
    synchronized (simulated) {
      return simulated.computeIfAbsent(
          key, k -> power.difference(1, DayAnswers.POWER, days, SEED, () -> false).difference());
    }
  }

  /**
   * The same as a plan of such a day says it once its days are simulated; empty while they are not.
   */
  OptionalDouble simulated(Protocol protocol, Compared compared, int stints, Drift drift) {
    Key key = new Key(protocol.rule(compared.setups(), stints), compared, drift);
    synchronized (asPlanned) {
      Double known = asPlanned.get(key);
      return known == null ? OptionalDouble.empty() : OptionalDouble.of(known);
    }
  }

  /**
   * Simulates them.
   *
   * @throws java.util.concurrent.CancellationException if cancelled
   */
  void simulate(
      Protocol protocol,
      Compared compared,
      int stints,
      Drift drift,
      int days,
      long seed,
      BooleanSupplier cancelled) {
    Base base = of(protocol, compared, stints, drift);
    if (base != null && base.power() != null) {
      double unit = base.power().simulate(days, seed, cancelled).difference(1, DayAnswers.POWER);
      synchronized (asPlanned) {
        asPlanned.put(new Key(protocol.rule(compared.setups(), stints), compared, drift), unit);
      }
    }
  }

  private @Nullable Base make(Key key) {
    try {
      RuleBook.Entry entry = rules.of(key.rule);
      Assignments set = entry.set();
      if (set.count().signum() == 0 || !set.closedUnderRenaming()) {
        return null;
      }
      if (key.compared.levels() != null) {
        StepsPower steps = StepsPower.of(set, key.compared.numbers(), key.drift);
        DayPower trend = steps.trend();
        double unit = trend.formula().difference(1, DayAnswers.POWER);
        // One order may follow the drift itself: no formula tells what the rest can show.
        double finite = Double.isInfinite(unit) ? Double.NaN : unit;
        return new Base(set, entry, trend, null, steps, finite);
      }
      if (key.rule.setups() > 2) {
        PairsPower pairs = PairsPower.of(set, key.drift);
        double unit =
            entry.summary().attainableLevel() == 0
                ? Double.NaN
                : pairs.approximation().difference(1, DayAnswers.POWER);
        return new Base(set, entry, null, pairs, null, unit);
      }
      DayPower power = DayPower.of(set, key.drift);
      return new Base(
          set, entry, power, null, null, power.formula().difference(1, DayAnswers.POWER));
    } catch (Unusable contradiction) {
      // PlanCheck says in words what contradicts.
      return null;
    }
  }
}
