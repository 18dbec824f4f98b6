package blindlap.calibration;

import blindlap.stats.order.Assignments;
import blindlap.stats.order.Drift;
import blindlap.stats.power.PairsPower;
import blindlap.stats.power.SimulatedPairs;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** How often days of three and four setups tell one apart that differs from all others. */
final class PairsTable {
  private static final long SEED = 20_261_129L;
  private static final double APART = 1.5;
  private static final int[][] DAYS_OF = {{3, 12}, {3, 18}, {3, 24}, {4, 16}, {4, 24}};

  private PairsTable() {}

  /** Prints the table of docs/method.md#figures-of-pairs; argument: days a row. */
  public static void main(String[] arguments) {
    lines(Integer.parseInt(arguments[0])).forEach(System.out::println);
  }

  static List<String> lines(int days) {
    List<String> lines = new ArrayList<>();
    lines.add("| setups, stints | a named pair told apart | \"they differ\" |");
    lines.add("| --- | ---: | ---: |");
    for (int[] each : DAYS_OF) {
      SimulatedPairs.Odds odds = odds(each[0], each[1], days);
      lines.add(
          String.format(
              Locale.ROOT,
              "| %d, %d | %.3f | %.3f |",
              each[0],
              each[1],
              odds.pair(),
              odds.differ()));
    }
    return lines;
  }

  static SimulatedPairs.Odds odds(int setups, int stints, int days) {
    Assignments set = Assignments.rule(setups, stints).block(setups).build();
    return PairsPower.of(set, Drift.LINE)
        .simulate(new double[] {APART}, days, SEED + 100L * setups + stints, () -> false)
        .odds(0);
  }
}
