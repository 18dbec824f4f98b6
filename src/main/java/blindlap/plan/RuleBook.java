package blindlap.plan;

import blindlap.fault.Unusable;
import blindlap.stats.compare.OrderSet;
import blindlap.stats.order.Assignments;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * The sets of orders of rules: each is made once and kept for whoever asks, since a large one takes
 * a second or two and a plan is judged anew at every letter that is typed. Safe for use from
 * several threads.
 */
public final class RuleBook {
  private static final int KEPT = 400;
  private static final int OF_A_NODE = 200;

  /** Sums of positions that are counted in a fifth of a second; an answer needs some eight sets. */
  private static final long AT_ONCE = 1_000_000;

  private static final RuleBook OF_PROGRAM = new RuleBook(Rule::planned);

  private final Function<Rule, Assignments> maker;
  private final Map<Rule, Entry> entries =
      new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Rule, Entry> eldest) {
          return size() > KEPT;
        }
      };

  /**
   * @param maker makes the set of a rule, or throws {@link Unusable}
   */
  public RuleBook(Function<Rule, Assignments> maker) {
    this.maker = maker;
  }

  /** What the program has worked out so far. */
  public static RuleBook ofProgram() {
    return OF_PROGRAM;
  }

  /** What is known of a rule; nothing is made before it is asked for. */
  Entry of(Rule rule) {
    synchronized (entries) {
      return entries.computeIfAbsent(rule, r -> new Entry(r, maker));
    }
  }

  private @Nullable Entry at(Rule rule) {
    synchronized (entries) {
      return entries.get(rule);
    }
  }

  /** True if a plan with this rule can be judged without making its set. */
  public boolean judged(Rule rule) {
    Entry known = at(rule);
    return known != null && known.judged;
  }

  /** True if the set of a rule was made and is kept. */
  public boolean made(Rule rule) {
    Entry entry = at(rule);
    return entry != null && entry.set != null;
  }

  /** Makes the set of a rule and all that judging a plan asks of it. */
  public void judge(Rule rule) {
    of(rule).judge();
  }

  /** True if a rule is judged already, or so small that nobody waits for it. */
  public boolean atOnce(Rule rule) {
    return judged(rule) || !large(rule, RuleSize.nodesAtMost(rule));
  }

  /**
   * True if one set of the rule costs much by its effort: sums of positions at the nodes of its
   * graph for two setups, and as much work at the nodes of others (docs/performance.md, "Rules that
   * are refused"). The nodes are counted where the set is known, else bounded by arithmetic;
   * nothing is made.
   */
  boolean large(Rule rule) {
    Entry entry = at(rule);
    Assignments set = entry == null ? null : entry.set;
    return large(rule, set == null ? RuleSize.nodesAtMost(rule) : set.nodes());
  }

  /** True if it is known that the rule gives nothing that could be answered. */
  boolean fruitless(Rule rule) {
    Entry entry = at(rule);
    Assignments set = entry == null ? null : entry.set;
    return entry != null && entry.contradiction != null
        || set != null && (set.count().signum() == 0 || !set.closedUnderRenaming());
  }

  private static boolean large(Rule rule, long nodes) {
    long each = rule.setups() == 2 ? rule.stints() * (long) rule.stints() / 4 : OF_A_NODE;
    return nodes * each > AT_ONCE;
  }

  /** A rule with its set and its summary, each made when it is first asked for. */
  static final class Entry {
    private final Rule rule;
    private final Function<Rule, Assignments> maker;
    private volatile @Nullable Assignments set;
    private volatile @Nullable Unusable contradiction;
    private volatile @Nullable OrderSet summary;
    private volatile boolean judged;

    private Entry(Rule rule, Function<Rule, Assignments> maker) {
      this.rule = rule;
      this.maker = maker;
    }

    /**
     * The set of orders, possibly empty.
     *
     * @throws Unusable if the rule contradicts itself
     */
    Assignments set() {
      Assignments known = set;
      return known == null ? make() : known;
    }

    private synchronized Assignments make() {
      Assignments known = set;
      if (known != null) {
        return known;
      }
      Unusable before = contradiction;
      if (before != null) {
        throw before;
      }
      try {
        Assignments made = maker.apply(rule);
        set = made;
        return made;
      } catch (Unusable e) {
        contradiction = e;
        throw e;
      }
    }

    /** What the set is worth; it must have an order. */
    OrderSet summary() {
      OrderSet known = summary;
      return known == null ? summed() : known;
    }

    private synchronized OrderSet summed() {
      OrderSet known = summary;
      if (known == null) {
        known = OrderSet.of(set());
        summary = known;
      }
      return known;
    }

    private void judge() {
      try {
        Assignments made = set();
        if (made.count().signum() > 0 && made.closedUnderRenaming()) {
          summary();
        }
      } catch (Unusable contradicts) {
        // It is kept, and PlanCheck says it in words.
      }
      judged = true;
    }
  }
}
