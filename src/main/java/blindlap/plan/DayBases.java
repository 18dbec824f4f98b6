package blindlap.plan;

import blindlap.fault.Unusable;
import blindlap.stats.compare.OrderSet;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.Drift;
import blindlap.stats.power.DayPower;
import blindlap.stats.power.PairsPower;
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

  private record Key(Rule rule, Drift drift) {}

  /** Power is null for three and more setups, pairs for two; differences in units of noise. */
  record Base(
      Assignments set,
      RuleBook.Entry rule,
      @Nullable DayPower power,
      @Nullable PairsPower pairs,
      double unitDifference) {
    OrderSet orders() {
      return rule.summary();
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
  boolean takesLong(Protocol protocol, int setups, int stints, List<Integer> lengths, Drift drift) {
    if (!possible(setups, stints, protocol.block())) {
      return false;
    }
    Rule own = protocol.rule(setups, stints);
    synchronized (answered) {
      if (answered.containsKey(new Key(own, drift))) {
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
  void answered(Rule rule, Drift drift) {
    synchronized (answered) {
      answered.put(new Key(rule, drift), true);
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
  @Nullable Base of(Protocol protocol, int setups, int stints, Drift drift) {
    Integer block = protocol.block();
    if (!possible(setups, stints, block)) {
      return null;
    }
    Key key = new Key(protocol.rule(setups, stints), drift);
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
   * where two setups have too few orders for the formula; NaN if it shows none.
   */
  double difference(Protocol protocol, int setups, int stints, Drift drift) {
    Base base = of(protocol, setups, stints, drift);
    if (base == null) {
      return Double.NaN;
    }
    DayPower power = base.power;
    if (power == null || power.formula().formulaHolds() || Double.isNaN(base.unitDifference)) {
      return base.unitDifference;
    }
    Key key = new Key(protocol.rule(setups, stints), drift);
    synchronized (simulated) {
      return simulated.computeIfAbsent(
          key,
          k -> power.difference(1, DayAnswers.POWER, SIMULATED, SEED, () -> false).difference());
    }
  }

  /**
   * The same as a plan of such a day says it once its days are simulated; empty while they are not.
   */
  OptionalDouble simulated(Protocol protocol, int setups, int stints, Drift drift) {
    synchronized (asPlanned) {
      Double known = asPlanned.get(new Key(protocol.rule(setups, stints), drift));
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
      int setups,
      int stints,
      Drift drift,
      int days,
      long seed,
      BooleanSupplier cancelled) {
    Base base = of(protocol, setups, stints, drift);
    if (base != null && base.power() != null) {
      double unit = base.power().simulate(days, seed, cancelled).difference(1, DayAnswers.POWER);
      synchronized (asPlanned) {
        asPlanned.put(new Key(protocol.rule(setups, stints), drift), unit);
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
      if (key.rule.setups() > 2) {
        PairsPower pairs = PairsPower.of(set, key.drift);
        double unit =
            entry.summary().attainableLevel() == 0
                ? Double.NaN
                : pairs.approximation().difference(1, DayAnswers.POWER);
        return new Base(set, entry, null, pairs, unit);
      }
      DayPower power = DayPower.of(set, key.drift);
      return new Base(set, entry, power, null, power.formula().difference(1, DayAnswers.POWER));
    } catch (Unusable contradiction) {
      // PlanCheck says in words what contradicts.
      return null;
    }
  }
}
