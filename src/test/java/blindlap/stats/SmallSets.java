package blindlap.stats;

import blindlap.stats.order.Assignments;
import java.util.ArrayList;
import java.util.List;

/** Sets of orders made the slow way, from every sequence of letters, for comparison. */
public final class SmallSets {
  private SmallSets() {}

  /** A rule as plain numbers; 0 and empty mean "no limit". */
  public record Plain(
      int setups, int stints, int block, List<String> patterns, int maxRun, double efficiency) {
    public static Plain blocks(int setups, int stints, int block) {
      return new Plain(setups, stints, block, List.of(), 0, 0);
    }

    public Assignments assignments() {
      return Assignments.rule(setups, stints)
          .block(block)
          .patterns(patterns)
          .maxRun(maxRun)
          .minTrendEfficiency(efficiency)
          .build();
    }
  }

  public static final Plain SHORT_8 = new Plain(2, 8, 8, List.of(), 3, 0.8);
  public static final Plain COMPLETE_8 = Plain.blocks(2, 8, 8);
  static final Plain PAIRS_10 = Plain.blocks(2, 10, 2);
  public static final Plain BLOCK4_12 = Plain.blocks(2, 12, 4);
  static final Plain RUN2_10 = new Plain(2, 10, 10, List.of(), 2, 0);
  static final Plain ABBA_12 = new Plain(2, 12, 4, List.of("ABBA", "BAAB"), 0, 0);
  public static final Plain THREE_9 = Plain.blocks(3, 9, 3);
  public static final Plain THREE_6_WHOLE = new Plain(3, 6, 6, List.of(), 1, 0);
  public static final Plain FOUR_8 = Plain.blocks(4, 8, 4);

  public static List<Plain> twoSetups() {
    return List.of(SHORT_8, COMPLETE_8, PAIRS_10, BLOCK4_12, RUN2_10, ABBA_12);
  }

  public static List<Plain> all() {
    List<Plain> rules = new ArrayList<>(twoSetups());
    rules.addAll(List.of(THREE_9, THREE_6_WHOLE, FOUR_8));
    return rules;
  }

  /** Every sequence of letters that satisfies the rule, in lexicographic order. */
  public static List<String> filtered(Plain rule) {
    List<String> found = new ArrayList<>();
    extend(rule, new StringBuilder(), found);
    return found;
  }

  private static void extend(Plain rule, StringBuilder start, List<String> found) {
    if (start.length() == rule.stints) {
      if (satisfies(rule, start.toString())) {
        found.add(start.toString());
      }
      return;
    }
    for (int setup = 0; setup < rule.setups; setup++) {
      start.append((char) ('A' + setup));
      extend(rule, start, found);
      start.setLength(start.length() - 1);
    }
  }

  private static boolean satisfies(Plain rule, String order) {
    for (int from = 0; from < rule.stints; from += rule.block) {
      String block = order.substring(from, from + rule.block);
      for (int setup = 0; setup < rule.setups; setup++) {
        char letter = (char) ('A' + setup);
        if (block.chars().filter(each -> each == letter).count() != rule.block / rule.setups) {
          return false;
        }
      }
      if (!rule.patterns.isEmpty() && !rule.patterns.contains(block)) {
        return false;
      }
    }
    if (rule.maxRun > 0 && order.matches(".*(.)\\1{" + rule.maxRun + "}.*")) {
      return false;
    }
    return rule.efficiency == 0 || efficiency(order) >= rule.efficiency - 1e-9;
  }

  /** 1 − (z̃·t̃)²/(z̃·z̃) as it stands in the rule. */
  public static double efficiency(String order) {
    int n = order.length();
    double zt = 0;
    double tt = 0;
    for (int i = 0; i < n; i++) {
      double t = i - (n - 1) / 2.0;
      zt += (order.charAt(i) == 'B' ? 0.5 : -0.5) * t;
      tt += t * t;
    }
    return 1 - zt * zt / tt / (n / 4.0);
  }

  public static String swapped(String order) {
    return order.replace('A', 'x').replace('B', 'A').replace('x', 'B');
  }
}
