package blindlap.plan;

import blindlap.fault.Unusable;
import blindlap.stats.compare.OrderSet;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.Drift;
import blindlap.stats.power.DayPower;
import blindlap.stats.power.PairsPower;
import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * What depends on rule and drift alone, kept so that it is worked out once. Safe for use from
 * several threads.
 */
final class DayBases {
  private static final int KEPT = 400;
  private static final int OF_A_NODE = 200;

  /** Sums of positions that are counted in a fifth of a second; an answer needs some eight sets. */
  private static final long AT_ONCE = 1_000_000;

  private static final int SIMULATED = 1000;
  private static final long SEED = 20_251_127L;

  private final Map<Key, Base> kept = keeping();
  private final Map<Key, Double> simulated = keeping();
  private final Map<Key, Boolean> answered = keeping();

  private record Key(Rule rule, Drift drift) {}

  /** Power is null for three and four setups, pairs for two; differences in units of noise. */
  record Base(
      Assignments set,
      Summary summary,
      @Nullable DayPower power,
      @Nullable PairsPower pairs,
      double unitDifference) {
    OrderSet orders() {
      return summary.get();
    }

    /** True if no p of .05 or less can come out. */
    boolean never() {
      return (power == null ? orders().attainableLevel() : power.formula().attainableLevel()) == 0;
    }
  }

  /** A summary of a set, made when it is first asked for: most sets are only compared. */
  static final class Summary {
    private final Assignments set;
    private @Nullable OrderSet made;

    Summary(Assignments set) {
      this.set = set;
    }

    synchronized OrderSet get() {
      OrderSet known = made;
      if (known == null) {
        known = OrderSet.of(set);
        made = known;
      }
      return known;
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
   * True if a rule that was not worked out before costs much by the counted effort of one set: sums
   * of positions at the nodes of its graph for two setups, and as much work at the nodes of others
   * (docs/performance.md, "Rules that are refused").
   */
  boolean takesLong(Protocol protocol, int setups, int stints, Drift drift) {
    if (!possible(setups, stints, protocol.block())) {
      return false;
    }
    Rule rule = protocol.rule(setups, stints);
    synchronized (answered) {
      if (answered.containsKey(new Key(rule, drift))) {
        return false;
      }
    }
    try {
      long each = setups == 2 ? stints * (long) stints / 4 : OF_A_NODE;
      return rule.planned().nodes() * each > AT_ONCE;
    } catch (Unusable contradiction) {
      return false;
    }
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
        && setups <= 4
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

  private static @Nullable Base make(Key key) {
    try {
      Assignments set = key.rule.planned();
      if (set.count().signum() == 0 || !set.closedUnderRenaming()) {
        return null;
      }
      Summary orders = new Summary(set);
      if (key.rule.setups() > 2) {
        PairsPower pairs = PairsPower.of(set, key.drift);
        double unit =
            orders.get().attainableLevel() == 0
                ? Double.NaN
                : pairs.approximation().difference(1, DayAnswers.POWER);
        return new Base(set, orders, null, pairs, unit);
      }
      DayPower power = DayPower.of(set, key.drift);
      return new Base(set, orders, power, null, power.formula().difference(1, DayAnswers.POWER));
    } catch (Unusable contradiction) {
      // PlanCheck says in words what contradicts.
      return null;
    }
  }
}
