package blindlap.calibration;

import blindlap.stats.compare.TwoSetups;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.Drift;
import blindlap.stats.order.Sampling;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;

/** Voids by someone who knows what is on, as docs/calibration.md has them. */
final class KnownVoidsTable {
  private static final long SEED = 20_261_128L;

  private KnownVoidsTable() {}

  /** Prints the table alone; argument: days per cell. */
  public static void main(String[] arguments) {
    lines(Integer.parseInt(arguments[0])).forEach(System.out::println);
  }

  /**
   * How often a day without a true difference comes out as one.
   *
   * @param left with the void laps left out
   * @param counted with all ridden laps
   */
  record Found(double left, double counted) {}

  /**
   * Days of one lap a stint, white noise, on which someone voids the worst laps of one setup, B.
   *
   * @param many how many laps
   */
  static Found simulate(Design design, int many, int days, long seed) {
    UniformRandomProvider source = RandomSource.XO_RO_SHI_RO_128_PP.create(seed);
    Assignments set = design.orders();
    int left = 0;
    int counted = 0;
    for (int day = 0; day < days; day++) {
      int[] order = set.random(source);
      double[] y = NoiseScenario.WHITE.day(new int[order.length], source);
      boolean[] all = new boolean[order.length];
      java.util.Arrays.fill(all, true);
      boolean[] valid = all.clone();
      for (int each = 0; each < many; each++) {
        valid[worst(order, y, valid)] = false;
      }
      left += real(set, order, y, valid) ? 1 : 0;
      counted += real(set, order, y, all) ? 1 : 0;
    }
    return new Found((double) left / days, (double) counted / days);
  }

  private static int worst(int[] order, double[] y, boolean[] valid) {
    int worst = -1;
    for (int i = 0; i < y.length; i++) {
      if (valid[i] && order[i] == 1 && (worst < 0 || y[i] > y[worst])) {
        worst = i;
      }
    }
    return worst;
  }

  private static boolean real(Assignments set, int[] order, double[] y, boolean[] valid) {
    var curve = TwoSetups.compare(set, order, y, valid, Drift.LINE, Sampling.PREFERRED).curve();
    return curve.exceeds(0, 0.025) || curve.fallsShortOf(0, 0.025);
  }

  static List<String> lines(int days) {
    List<String> lines = new ArrayList<>();
    lines.add("## Voids by someone who knows");
    lines.add("");
    lines.add(
        "One lap a stint in blocks of four, white noise, no true difference; someone who knows what"
            + " is on voids the slowest laps of one setup; "
            + days
            + " days a cell. p ≤ .05 where void laps are left out, as with a helper, and where all"
            + " ridden laps count, as below the level \"prepared\".");
    lines.add("");
    lines.add("| stints | void laps | left out | all ridden laps |");
    lines.add("| ---: | ---: | ---: | ---: |");
    for (Design design : List.of(Design.BLOCK4_12, Design.BLOCK4_16)) {
      for (int many = 0; many <= 3; many++) {
        Found found = simulate(design, many, days, SEED + many);
        lines.add(
            String.format(
                Locale.ROOT,
                "| %d | %d | %.3f | %.3f |",
                design.orders().stints(),
                many,
                found.left,
                found.counted));
      }
    }
    lines.add("");
    return lines;
  }
}
