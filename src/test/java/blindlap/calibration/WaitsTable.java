package blindlap.calibration;

import blindlap.stats.order.Assignments;
import blindlap.stats.order.Sampling;
import blindlap.stats.tell.WaitTest;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;

/** How often waits are flagged, with and without anything that tells. */
final class WaitsTable {
  private static final long SEED = 20_261_128L;

  private WaitsTable() {}

  /** Prints the table alone; argument: days per cell. */
  public static void main(String[] arguments) {
    lines(Integer.parseInt(arguments[0])).forEach(System.out::println);
  }

  /** What makes a wait longer, in standard deviations of the waits. */
  enum Slower {
    NOTHING("nothing", 0, 0, 0),
    TREND("nothing, but the helper grows quicker by 3 SD over the day", 0, 0, -3),
    REAL("every real swap, by 1.5 SD", 1.5, 1.5, 0),
    ONE_WAY("the swap from A to B, by 2 SD; back as a dummy swap", 2, 0, 0),
    TURNED("the swap from A to B, by 1.5 SD; back as much quicker", 1.5, -1.5, 0);

    private final String text;
    private final double toB;
    private final double toA;
    private final double trend;

    Slower(String text, double toB, double toA, double trend) {
      this.text = text;
      this.toB = toB;
      this.toA = toA;
      this.trend = trend;
    }
  }

  /**
   * Shares of days flagged.
   *
   * @param kind real swaps took longer than dummy swaps
   * @param setup one setup took longer than the other
   */
  record Flagged(double kind, double setup) {}

  static Flagged simulate(Design design, Slower slower, NoiseScenario noise, int days, long seed) {
    UniformRandomProvider source = RandomSource.XO_RO_SHI_RO_128_PP.create(seed);
    Assignments set = design.orders();
    // Fresh orders stand for sets that are too large to be walked on every day.
    Sampling sampling = new Sampling(false, 999, seed, 4_096);
    int kind = 0;
    int setup = 0;
    int tested = 0;
    while (tested < days) {
      int[] order = set.random(source);
      double[] waits = noise.day(new int[order.length], source);
      for (int i = 1; i < order.length; i++) {
        boolean real = order[i] != order[i - 1];
        waits[i] += real ? order[i] == 1 ? slower.toB : slower.toA : 0;
        waits[i] += slower.trend * i / (order.length - 1);
      }
      if (WaitTest.untested(order, waits).isPresent()) {
        continue;
      }
      tested++;
      WaitTest found = WaitTest.of(set, order, waits, sampling);
      kind += found.kind().flagged() ? 1 : 0;
      setup += found.setup().filter(WaitTest.BySetup::flagged).isPresent() ? 1 : 0;
    }
    return new Flagged((double) kind / days, (double) setup / days);
  }

  static List<String> lines(int days) {
    List<String> lines = new ArrayList<>();
    lines.add("## Waits that tell");
    lines.add("");
    lines.add(
        "How often waits are flagged (mid-p at most .10): first by real against dummy swaps, then by the setup now fitted; "
            + days
            + " days a cell. Where nothing is slower neither share may exceed .10 by more than simulation error and what a mid-p gains on a"
            + " coarse set. A swap that is slow in one direction and quick in the other is plain to the second and hidden from the first.");
    lines.add("");
    lines.add(
        "| what is slower | noise | blocks of four, 12 | blocks of four, 16 | blocks of four, 24 |");
    lines.add("| --- | --- | ---: | ---: | ---: |");
    for (Slower slower : Slower.values()) {
      for (NoiseScenario noise :
          List.of(NoiseScenario.WHITE, NoiseScenario.AR_6, NoiseScenario.OUTLIERS)) {
        StringBuilder row = new StringBuilder("| " + slower.text + " | " + noise.text() + " |");
        for (Design design : List.of(Design.BLOCK4_12, Design.BLOCK4_16, Design.BLOCK4_24)) {
          Flagged found =
              simulate(
                  design, slower, noise, days, SEED + 100L * slower.ordinal() + noise.ordinal());
          row.append(String.format(Locale.ROOT, " %.3f, %.3f |", found.kind(), found.setup()));
        }
        lines.add(row.toString());
      }
    }
    lines.add("");
    return lines;
  }
}
