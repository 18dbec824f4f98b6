package blindlap.calibration;

import blindlap.stats.compare.ManySetups;
import blindlap.stats.compare.TwoSetups;
import blindlap.stats.compare.VoidBalance;
import blindlap.stats.distribution.Interval;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.Drift;
import blindlap.stats.order.Nuisance;
import blindlap.stats.order.Sampling;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;

/** Voids of single laps, watched harms, and intervals of pairs, as docs/calibration.md has them. */
final class SharperTables {
  private static final long SEED = 20_261_127L;

  /** Days a cell of the table of harms at least: its shares are small. */
  private static final int HARM_DAYS = 2_000;

  private SharperTables() {}

  /** Prints the tables alone; argument: days per cell. */
  public static void main(String[] arguments) {
    lines(Integer.parseInt(arguments[0])).forEach(System.out::println);
  }

  static List<String> lines(int days) {
    List<String> lines = new ArrayList<>();
    voids(days, lines);
    harms(Math.max(days, HARM_DAYS), lines);
    pairs(days, lines);
    return lines;
  }

  /** Which lap of a stint is void. */
  enum Voiding {
    ANY("each lap on one day in ten, whatever the setup", 0),
    THREE("the slowest lap of three stints on B", 3),
    ALL("the slowest lap of every stint on B", 6);

    private final String text;
    private final int stints;

    Voiding(String text, int stints) {
      this.text = text;
      this.stints = stints;
    }
  }

  /**
   * Twelve stints of three laps in blocks of four without a true difference.
   *
   * @param real share of days with p of .05 or less
   * @param flagged share of days on which void laps or void stints are flagged
   * @param byStints share of days on which void stints alone are
   */
  record VoidDays(double real, double flagged, double byStints) {
    static VoidDays simulate(Voiding voiding, int days, long seed) {
      UniformRandomProvider source = RandomSource.XO_RO_SHI_RO_128_PP.create(seed);
      Assignments set = Design.BLOCK4_12.orders();
      int real = 0;
      int flagged = 0;
      int byStints = 0;
      for (int day = 0; day < days; day++) {
        int[] order = set.random(source);
        int[] laps = new int[12];
        boolean[] whole = new boolean[12];
        boolean[] valid = new boolean[12];
        double[] y = day(voiding, order, source, laps);
        for (int i = 0; i < 12; i++) {
          whole[i] = laps[i] == 3;
          valid[i] = !whole[i];
        }
        boolean stints = VoidBalance.of(set, order, whole).flagged();
        byStints += stints ? 1 : 0;
        flagged += stints || VoidBalance.of(set, order, laps).flagged() ? 1 : 0;
        var curve = TwoSetups.compare(set, order, y, valid, Drift.LINE, Sampling.PREFERRED).curve();
        real += curve.exceeds(0, 0.025) || curve.fallsShortOf(0, 0.025) ? 1 : 0;
      }
      return new VoidDays((double) real / days, (double) flagged / days, (double) byStints / days);
    }

    /** Means of what is not void; {@code voids} is filled with the number of void laps. */
    private static double[] day(
        Voiding voiding, int[] order, UniformRandomProvider source, int[] voids) {
      double[] laps = NoiseScenario.WHITE.day(new int[36], source);
      double[] y = new double[12];
      int done = 0;
      for (int i = 0; i < 12; i++) {
        double[] own = Arrays.copyOfRange(laps, 3 * i, 3 * i + 3);
        boolean[] isVoid = new boolean[3];
        if (voiding == Voiding.ANY) {
          for (int lap = 0; lap < 3; lap++) {
            isVoid[lap] = source.nextDouble() < 0.1;
          }
        } else if (order[i] == 1 && done < voiding.stints) {
          done++;
          isVoid[slowest(own)] = true;
        }
        int n = 0;
        for (int lap = 0; lap < 3; lap++) {
          voids[i] += isVoid[lap] ? 1 : 0;
          y[i] += isVoid[lap] ? 0 : own[lap];
          n += isVoid[lap] ? 0 : 1;
        }
        y[i] = n == 0 ? Double.NaN : y[i] / n;
      }
      return y;
    }

    private static int slowest(double[] laps) {
      int slowest = 0;
      for (int lap = 1; lap < laps.length; lap++) {
        slowest = laps[lap] > laps[slowest] ? lap : slowest;
      }
      return slowest;
    }
  }

  private static void voids(int days, List<String> lines) {
    lines.add("## Voids of single laps");
    lines.add("");
    lines.add(
        "Twelve stints of three laps in blocks of four, white noise from lap to lap, no true"
            + " difference; "
            + days
            + " days a row. The second column errs where voids follow the setup; the third says how"
            + " often the unevenness is flagged, the last how often it would be if whole stints"
            + " alone were counted.");
    lines.add("");
    lines.add("| void | p ≤ .05 | flagged | by whole stints |");
    lines.add("| --- | ---: | ---: | ---: |");
    for (Voiding voiding : Voiding.values()) {
      VoidDays found = VoidDays.simulate(voiding, days, SEED + voiding.ordinal());
      lines.add(
          "| %s | %s | %s | %s |"
              .formatted(
                  voiding.text, share(found.real), share(found.flagged), share(found.byStints)));
    }
    lines.add("");
  }

  private static void harms(int days, List<String> lines) {
    lines.add("## Watched harms of pure noise");
    lines.add("");
    lines.add(
        "Sixteen stints in blocks of four, so many measures watched for harm, none of which"
            + " differs; "
            + days
            + " days a cell. How often the headline says \"did harm\" of any of them, by the harm"
            + " declared in standard deviations of the noise. No share may exceed .05 by more than"
            + " simulation error.");
    lines.add("");
    lines.add("| measures | .05 SD | .25 SD | .5 SD |");
    lines.add("| ---: | ---: | ---: | ---: |");
    for (int watched : new int[] {1, 3, 8}) {
      StringBuilder row = new StringBuilder("| " + watched + " |");
      for (String harm : List.of("0.05", "0.25", "0.5")) {
        row.append(' ')
            .append(share(HarmDays.simulate(watched, harm, days, SEED + 10_000L * watched).shown()))
            .append(" |");
      }
      lines.add(row.toString());
    }
    lines.add("");
  }

  /** Share of days on which the intervals of all pairs hold their true differences together. */
  static double coverage(int setups, int stints, NoiseScenario noise, int days, long seed) {
    UniformRandomProvider source = RandomSource.XO_RO_SHI_RO_128_PP.create(seed);
    Assignments set = Assignments.rule(setups, stints).block(setups).build();
    boolean[] all = new boolean[stints];
    Arrays.fill(all, true);
    // The intervals need the fit alone: as few orders as can be drawn.
    Sampling few = new Sampling(false, 99, seed, 0);
    int held = 0;
    for (int day = 0; day < days; day++) {
      int[] order = set.random(source);
      double[] y = noise.day(new int[stints], source);
      for (int i = 0; i < stints; i++) {
        y[i] += order[i] == 1 ? 1.5 : 0;
      }
      ManySetups found = ManySetups.compare(set, order, y, all, Nuisance.of(Drift.LINE), few);
      boolean together = true;
      for (ManySetups.Pair pair : found.pairs()) {
        double truth = (pair.second() == 1 ? 1.5 : 0) - (pair.first() == 1 ? 1.5 : 0);
        Interval interval = found.interval(pair, 0.95).orElseThrow();
        together &= interval.low() <= truth && truth <= interval.high();
      }
      held += together ? 1 : 0;
    }
    return (double) held / days;
  }

  private static void pairs(int days, List<String> lines) {
    lines.add("## Intervals of pairs");
    lines.add("");
    lines.add(
        "How often Tukey's and Kramer's intervals hold the true differences of all pairs together:"
            + " blocks of as many stints as setups, a straight line removed, one setup 1.5 SD away"
            + " from the others; "
            + days
            + " days a cell.");
    lines.add("");
    lines.add("| setups, stints | white | AR(1) .6 | t, 3 df | outlier laps |");
    lines.add("| --- | ---: | ---: | ---: | ---: |");
    for (int[] cell : new int[][] {{3, 12}, {3, 18}, {3, 24}, {4, 12}, {4, 16}, {4, 24}}) {
      StringBuilder row = new StringBuilder("| " + cell[0] + ", " + cell[1] + " |");
      for (NoiseScenario noise :
          List.of(
              NoiseScenario.WHITE, NoiseScenario.AR_6, NoiseScenario.T3, NoiseScenario.OUTLIERS)) {
        row.append(' ')
            .append(share(coverage(cell[0], cell[1], noise, days, SEED + noise.ordinal())))
            .append(" |");
      }
      lines.add(row.toString());
    }
    lines.add("");
  }

  private static String share(double value) {
    return String.format(Locale.ROOT, "%.3f", value);
  }
}
