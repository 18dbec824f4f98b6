package blindlap.plan;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/**
 * How large the graph of a rule's orders can be, by arithmetic: at every stint the ways in which
 * its past can differ for what may follow, which are place in the block, setup and length of the
 * last run, and sum of B's positions. Never less than what making the graph counts, and just that
 * without longest run and trend.
 */
final class RuleSize {
  private final int setups;
  private final int block;
  private final int each;
  private final int longest;
  private final boolean trend;
  private long nodes = 1;

  private RuleSize(Rule rule) {
    Integer run = rule.maxRun();
    Double least = rule.minTrendEfficiency();
    this.setups = rule.setups();
    this.block = rule.block();
    this.each = block / setups;
    this.longest = run == null ? 0 : Math.max(0, run);
    this.trend = least != null && least > 0;
  }

  /**
   * @param rule of two to four setups
   * @return nodes; 0 for a rule whose blocks do not go up, which is refused before any is made
   */
  static long nodesAtMost(Rule rule) {
    int block = rule.block();
    if (block < 1 || block % rule.setups() != 0 || rule.stints() % block != 0) {
      return 0;
    }
    RuleSize size = new RuleSize(rule);
    for (int stint = 1; stint <= rule.stints(); stint++) {
      size.level(stint, rule.patterns());
    }
    return size.nodes;
  }

  private void level(int stint, List<String> patterns) {
    int at = stint % block;
    if (at == 0) {
      int lastRuns = longest == 0 ? 1 : setups * Math.min(longest, each);
      nodes += lastRuns * sums(stint, 0, 0);
    } else if (patterns.isEmpty()) {
      counts(stint, at, 0, at, new int[setups]);
    } else {
      Set<String> beginnings = new TreeSet<>();
      patterns.forEach(p -> beginnings.add(p.substring(0, Math.min(at, p.length()))));
      beginnings.forEach(b -> followed(stint, at, b));
    }
  }

  /** How often each setup was ridden in the block so far, gone through for all ways. */
  private void counts(int stint, int at, int setup, int left, int[] often) {
    if (setup == setups - 1) {
      if (left <= each) {
        often[setup] = left;
        nodes += counted(stint, at, often) * sums(stint, at, often[1]);
      }
      return;
    }
    for (int n = 0; n <= Math.min(each, left); n++) {
      often[setup] = n;
      counts(stint, at, setup + 1, left - n, often);
    }
  }

  private long counted(int stint, int at, int[] often) {
    if (longest == 0) {
      return 1;
    }
    long lastRuns = 0;
    for (int n : often) {
      lastRuns += n == at ? whole(stint, at) : Math.min(longest, n);
    }
    return lastRuns;
  }

  private void followed(int stint, int at, String beginning) {
    boolean one = beginning.chars().distinct().count() == 1;
    int ofB = (int) beginning.chars().filter(letter -> letter == 'B').count();
    nodes += (longest > 0 && one ? whole(stint, at) : 1) * sums(stint, at, ofB);
  }

  /** Lengths of a run that fills the block so far and may have begun in the block before. */
  private long whole(int stint, int at) {
    int before = stint > at ? each : 0;
    return Math.max(0, Math.min(longest, at + before) - at + 1);
  }

  /** Sums of B's positions: a whole block has (each² + 1) of them, part of one n·(at − n) + 1. */
  private long sums(int stint, int at, int ofB) {
    long wholeBlocks = (stint - at) / block;
    return trend ? wholeBlocks * each * each + (long) ofB * (at - ofB) + 1 : 1;
  }
}
