package blindlap.stats.order;

import blindlap.fault.RuleFault;
import blindlap.fault.StatsException;
import blindlap.fault.Unusable;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;

/**
 * Builds {@link Assignments} from a rule: the stints fall into blocks that hold every setup equally
 * often; optionally only listed patterns per block, a longest run, and a least trend efficiency
 * (Morgan and Rubin 2012, Annals of Statistics 40:1263, restricted randomization).
 */
public final class AssignmentsBuilder {
  private static final int MOST_STINTS = 400;
  private static final int MOST_NODES = 2_000_000;
  private static final double EFFICIENCY_SLACK = 1e-9;

  private final int setups;
  private final int stints;
  private int block;
  private List<String> patterns = List.of();
  private boolean independent;
  private int maxRun;
  private double minTrendEfficiency;
  private int mostNodes = MOST_NODES;

  AssignmentsBuilder(int setups, int stints) {
    require(
        "setups", setups >= 2 && setups <= 26, "must lie between 2 and 26, not " + setups + ".");
    require(
        "stints",
        stints >= 1 && stints <= MOST_STINTS,
        "must lie between 1 and " + MOST_STINTS + ", not " + stints + ".");
    this.setups = setups;
    this.stints = stints;
    this.block = stints;
  }

  /** Length of a block; the stints are a multiple of it. One block for the day if never called. */
  public AssignmentsBuilder block(int length) {
    this.block = length;
    return this;
  }

  /** Restricts every block to these sequences of letters. */
  public AssignmentsBuilder patterns(List<String> sequences) {
    this.patterns = List.copyOf(sequences);
    return this;
  }

  /**
   * Restricts every block to these sequences of letters, which need not hold every setup equally
   * often: trials, each drawn on its own.
   */
  public AssignmentsBuilder trials(List<String> sequences) {
    this.patterns = List.copyOf(sequences);
    this.independent = true;
    return this;
  }

  /** No setup more often than this in a row, across block borders too; 0 for no limit. */
  public AssignmentsBuilder maxRun(int longest) {
    this.maxRun = longest;
    return this;
  }

  /** Least 1 − (z̃·t̃)²/(z̃·z̃), two setups only; 0 for no limit. */
  public AssignmentsBuilder minTrendEfficiency(double least) {
    this.minTrendEfficiency = least;
    return this;
  }

  /**
   * Refuses a set whose graph has more nodes than this, as too large to be worked through.
   *
   * @param nodes at least 1; never more than two million are made
   */
  public AssignmentsBuilder mostNodes(int nodes) {
    this.mostNodes = Math.min(nodes, MOST_NODES);
    return this;
  }

  /**
   * The set. It may be empty (count 0); the caller decides whether that is an error.
   *
   * @throws Unusable if the rule contradicts itself; its argument is the field of the rule
   */
  public Assignments build() {
    refuseUnless(
        block >= 1 && stints % block == 0,
        "block",
        stints + " stints are not a multiple of the block of " + block + ".",
        RuleFault.BLOCK_DOES_NOT_DIVIDE,
        stints,
        block);
    refuseUnless(
        independent || block % setups == 0,
        "block",
        "a block of " + block + " cannot hold " + setups + " setups equally often.",
        RuleFault.BLOCK_UNBALANCED,
        block,
        setups);
    refuseUnless(maxRun >= 0, "max_run", "must be at least 1.", RuleFault.RUN_BELOW_ONE);
    String trend = "min_trend_efficiency";
    refuseUnless(
        minTrendEfficiency == 0 || setups == 2,
        trend,
        "is defined for two setups only.",
        RuleFault.TREND_NEEDS_TWO_SETUPS);
    refuseUnless(
        minTrendEfficiency >= 0 && minTrendEfficiency <= 1,
        trend,
        "must lie between 0 and 1.",
        RuleFault.TREND_RANGE);
    for (int i = 0; i < patterns.size(); i++) {
      String pattern = patterns.get(i);
      refuseUnless(
          independent ? trial(pattern) : balancedPattern(pattern),
          "patterns[" + i + "]",
          "\"" + pattern + "\" is not a block of " + block + " with every setup equally often.",
          RuleFault.PATTERN_UNBALANCED,
          pattern,
          block);
    }
    return new Graph()
        .build(patterns.isEmpty() || patterns.stream().allMatch(this::balancedPattern));
  }

  private static void refuseUnless(
      boolean condition, String argument, String why, RuleFault reason, Object... details) {
    if (!condition) {
      throw new Unusable(argument, why, reason, details);
    }
  }

  static Assignments listed(List<String> orders) {
    return repeated(orders, 1);
  }

  static Assignments repeated(List<String> orders, int times) {
    require("times", times >= 1, "must be at least 1, not " + times + ".");
    require("orders", !orders.isEmpty(), "is empty.");
    int length = orders.get(0).length();
    int setups = 2;
    for (int i = 0; i < orders.size(); i++) {
      String field = "orders[" + i + "]";
      require(
          field,
          orders.get(i).length() == length,
          "has " + orders.get(i).length() + " stints, but the first order has " + length + ".");
      for (int setup : Orders.parse(field, orders.get(i))) {
        setups = Math.max(setups, setup + 1);
      }
    }
    AssignmentsBuilder builder = new AssignmentsBuilder(setups, length * times);
    builder.block = length;
    builder.patterns = List.copyOf(orders);
    boolean balanced = orders.stream().allMatch(builder::balancedPattern);
    return builder.new Graph().build(balanced);
  }

  private boolean trial(String pattern) {
    return pattern.length() == block
        && java.util.Arrays.stream(Orders.parse("patterns", pattern)).allMatch(s -> s < setups);
  }

  private boolean balancedPattern(String pattern) {
    if (pattern.length() != block || block % setups != 0) {
      return false;
    }
    int[] often = new int[setups];
    for (int setup : Orders.parse("patterns", pattern)) {
      if (setup >= setups) {
        return false;
      }
      often[setup]++;
    }
    for (int count : often) {
      if (count != block / setups) {
        return false;
      }
    }
    return true;
  }

  private static void require(String argument, boolean condition, String why) {
    if (!condition) {
      throw new StatsException(argument, why);
    }
  }

  /** What the past of an order leaves open: place in the block, run, sum of B's positions. */
  private record State(long inBlock, int last, int run, int sum) {}

  private final class Graph {
    private final List<int[]> edges = new ArrayList<>();
    private final List<State> states = new ArrayList<>();
    private final List<Map<Long, Long>> trie = new ArrayList<>();

    Assignments build(boolean balanced) {
      for (String pattern : new TreeSet<>(patterns)) {
        insert(Orders.parse("patterns", pattern));
      }
      int[] firstOfLevel = new int[stints + 2];
      add(new State(0, -1, 0, 0));
      firstOfLevel[1] = 1;
      for (int i = 0; i < stints; i++) {
        Map<State, Integer> level = new HashMap<>();
        for (int node = firstOfLevel[i]; node < firstOfLevel[i + 1]; node++) {
          for (int setup = 0; setup < setups; setup++) {
            State to = step(states.get(node), i, setup);
            if (to != null) {
              edges.get(node)[setup] = level.computeIfAbsent(to, this::add);
            }
          }
        }
        firstOfLevel[i + 2] = states.size();
      }
      return finish(firstOfLevel[stints], balanced);
    }

    private int add(State state) {
      refuseUnless(
          states.size() < mostNodes,
          "stints",
          "make this rule too large to be counted.",
          RuleFault.TOO_LARGE);
      int[] none = new int[setups];
      java.util.Arrays.fill(none, -1);
      edges.add(none);
      states.add(state);
      return states.size() - 1;
    }

    private void insert(int[] pattern) {
      if (trie.isEmpty()) {
        trie.add(new HashMap<>());
      }
      int at = 0;
      for (int setup : pattern) {
        Long to = trie.get(at).get((long) setup);
        if (to == null) {
          to = (long) trie.size();
          trie.add(new HashMap<>());
          trie.get(at).put((long) setup, to);
        }
        at = to.intValue();
      }
    }

    private @org.jspecify.annotations.Nullable State step(State from, int i, int setup) {
      long inBlock = patterns.isEmpty() ? counted(from.inBlock, setup) : followed(from, setup);
      if (inBlock < 0) {
        return null;
      }
      int run = from.last == setup ? from.run + 1 : 1;
      if (maxRun > 0 && run > maxRun) {
        return null;
      }
      int sum = minTrendEfficiency > 0 && setup == 1 ? from.sum + i : from.sum;
      if (i == stints - 1 && minTrendEfficiency > 0 && !efficient(sum)) {
        return null;
      }
      boolean blockEnds = (i + 1) % block == 0;
      return new State(blockEnds ? 0 : inBlock, maxRun > 0 ? setup : -1, maxRun > 0 ? run : 0, sum);
    }

    private long counted(long counts, int setup) {
      long each = block / setups;
      long unit = 1;
      for (int s = 0; s < setup; s++) {
        unit *= each + 1;
      }
      return (counts / unit) % (each + 1) == each ? -1 : counts + unit;
    }

    private long followed(State from, int setup) {
      return trie.get((int) from.inBlock).getOrDefault((long) setup, -1L);
    }

    private boolean efficient(int sum) {
      double n = stints;
      double overlap = (2.0 * sum - n * (n - 1) / 2) / 2;
      double spread = n * (n * n - 1) / 12;
      return 1 - overlap * overlap / spread / (n / 4) >= minTrendEfficiency - EFFICIENCY_SLACK;
    }

    private Assignments finish(int firstLeaf, boolean balanced) {
      int nodes = states.size();
      BigInteger[] completions = new BigInteger[nodes];
      int[][] next = new int[setups][nodes];
      for (int node = nodes - 1; node >= 0; node--) {
        BigInteger sum = node >= firstLeaf ? BigInteger.ONE : BigInteger.ZERO;
        for (int setup = 0; setup < setups; setup++) {
          int to = edges.get(node)[setup];
          boolean dead = to < 0 || completions[to].signum() == 0;
          next[setup][node] = dead ? -1 : to;
          sum = dead ? sum : sum.add(completions[to]);
        }
        completions[node] = sum;
      }
      return new Assignments(setups, stints, next, completions, balanced);
    }
  }
}
