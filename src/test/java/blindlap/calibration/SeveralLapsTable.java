package blindlap.calibration;

import blindlap.fault.Unusable;
import blindlap.stats.compare.StintSummary;
import blindlap.stats.compare.TwoSetups;
import blindlap.stats.distribution.Interval;
import blindlap.stats.noise.LapNoise;
import blindlap.stats.noise.LapSplit;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.Drift;
import blindlap.stats.order.Sampling;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.sampling.distribution.ZigguratSampler;
import org.apache.commons.rng.simple.RandomSource;

/** Several scored laps a stint, as docs/calibration.md has them. */
final class SeveralLapsTable {
  private static final long SEED = 20_261_128L;
  private static final int LAPS = 3;

  private SeveralLapsTable() {}

  /** Prints the tables alone; argument: days per cell. */
  public static void main(String[] arguments) {
    lines(Integer.parseInt(arguments[0])).forEach(System.out::println);
  }

  static List<String> lines(int days) {
    List<String> lines = new ArrayList<>();
    coverage(days, lines);
    gains(days, lines);
    medians(days, lines);
    return lines;
  }

  /** Laps of a day by stint: what a stint's laps share, and each lap's own noise of a scenario. */
  private static double[][] day(
      double share, NoiseScenario own, int stints, int laps, UniformRandomProvider source) {
    ZigguratSampler.NormalizedGaussian normal = ZigguratSampler.NormalizedGaussian.of(source);
    double[] each = own.day(new int[stints * laps], source);
    double[][] day = new double[stints][laps];
    for (int stint = 0; stint < stints; stint++) {
      double shared = Math.sqrt(share) * normal.sample();
      for (int lap = 0; lap < laps; lap++) {
        day[stint][lap] = shared + Math.sqrt(1 - share) * each[stint * laps + lap];
      }
    }
    return day;
  }

  /**
   * How often intervals hold the truth, three laps of 16 stints in blocks of four.
   *
   * @param ratio of λ
   * @param stint of σ_b
   */
  record Coverage(double ratio, double stint) {
    static Coverage simulate(double share, int days, long seed) {
      UniformRandomProvider source = RandomSource.XO_RO_SHI_RO_128_PP.create(seed);
      Assignments set = Design.BLOCK4_16.orders();
      int ratio = 0;
      int stint = 0;
      for (int i = 0; i < days; i++) {
        LapNoise found =
            LapNoise.of(
                    set.random(source),
                    day(share, NoiseScenario.WHITE, 16, LAPS, source),
                    Drift.LINE)
                .orElseThrow();
        ratio += holds(found.ratio95(), share / (1 - share)) ? 1 : 0;
        stint += holds(found.shared95(), Math.sqrt(share)) ? 1 : 0;
      }
      return new Coverage((double) ratio / days, (double) stint / days);
    }

    private static boolean holds(Interval interval, double truth) {
      return interval.low() <= truth && truth <= interval.high();
    }
  }

  /**
   * The difference that 8 of 10 days show, 16 stints in blocks of four: a day shows a difference if
   * its interval, moved by it, leaves 0 out.
   */
  static double shown(
      double share, NoiseScenario own, int laps, StintSummary summary, int days, long seed) {
    UniformRandomProvider source = RandomSource.XO_RO_SHI_RO_128_PP.create(seed);
    Assignments set = Design.BLOCK4_16.orders();
    double[] needed = new double[days];
    for (int i = 0; i < days; i++) {
      int[] order = set.random(source);
      double[] y =
          Arrays.stream(day(share, own, 16, laps, source)).mapToDouble(summary::of).toArray();
      boolean[] valid = new boolean[16];
      Arrays.fill(valid, true);
      needed[i] =
          -TwoSetups.compare(set, order, y, valid, Drift.LINE, Sampling.PREFERRED)
              .curve()
              .interval(0.95)
              .orElseThrow()
              .low();
    }
    Arrays.sort(needed);
    return needed[(int) Math.ceil(0.8 * days) - 1];
  }

  /** Which laps are void. */
  enum Voiding {
    NONE("none"),
    EVENLY("each lap on one day in ten"),
    UNEVENLY("each lap on B on one day in five");

    private final String text;

    Voiding(String text) {
      this.text = text;
    }

    boolean isVoid(int setup, UniformRandomProvider source) {
      return switch (this) {
        case NONE -> false;
        case EVENLY -> source.nextInt(10) == 0;
        case UNEVENLY -> setup == 1 && source.nextInt(5) == 0;
      };
    }
  }

  /** How often p is .05 or less without a difference, 16 stints of three laps, by the median. */
  static double real(Voiding voiding, NoiseScenario own, int days, long seed) {
    UniformRandomProvider source = RandomSource.XO_RO_SHI_RO_128_PP.create(seed);
    Assignments set = Design.BLOCK4_16.orders();
    int real = 0;
    for (int i = 0; i < days; i++) {
      int[] order = set.random(source);
      double[][] laps = day(0.3, own, 16, LAPS, source);
      double[] y = new double[16];
      boolean[] valid = new boolean[16];
      for (int stint = 0; stint < 16; stint++) {
        for (int lap = 0; lap < LAPS; lap++) {
          laps[stint][lap] = voiding.isVoid(order[stint], source) ? Double.NaN : laps[stint][lap];
        }
        y[stint] = StintSummary.MEDIAN.of(laps[stint]);
        valid[stint] = !Double.isNaN(y[stint]);
      }
      real += real(set, order, y, valid) ? 1 : 0;
    }
    return (double) real / days;
  }

  /** A day on which one setup has no value left is not told apart. */
  private static boolean real(Assignments set, int[] order, double[] y, boolean[] valid) {
    try {
      var curve = TwoSetups.compare(set, order, y, valid, Drift.LINE, Sampling.PREFERRED).curve();
      return curve.exceeds(0, 0.025) || curve.fallsShortOf(0, 0.025);
    } catch (Unusable oneSetupIsGone) {
      return false;
    }
  }

  private static void coverage(int days, List<String> lines) {
    lines.add("## Lap noise and stint noise");
    lines.add("");
    lines.add(
        "Sixteen stints of three laps in blocks of four, white noise; %d days a row. How often the 95 %% intervals hold the true ratio of variances and the true stint noise, by the share of one lap's variance that lies in the stint."
            .formatted(days));
    lines.add("");
    lines.add("| share | ratio | stint noise |");
    lines.add("| ---: | ---: | ---: |");
    for (int i = 0; i < 3; i++) {
      Coverage found = Coverage.simulate(0.3 * i, days, SEED + i);
      lines.add(
          row("%.1f", 0.3 * i) + row("%.3f", found.ratio()) + row("%.3f", found.stint()) + "|");
    }
    lines.add("");
  }

  private static void gains(int days, List<String> lines) {
    lines.add("## Three laps a stint instead of one");
    lines.add("");
    lines.add(
        "What the difference shown on 8 of 10 days changes by, 16 stints in blocks of four; %d days a cell. Above, by the share of one lap's variance in the stint, means of three laps against one lap; below, medians of three laps against their means, no noise shared."
            .formatted(days));
    lines.add("");
    lines.add("| | simulated | by the formula |");
    lines.add("| --- | ---: | ---: |");
    for (int i = 0; i < 3; i++) {
      double share = 0.3 * i;
      double formula =
          new LapSplit(1, new Interval(share, share)).factor(share, LAPS, StintSummary.MEAN);
      lines.add(
          "| means, share %.1f %s%s|"
              .formatted(
                  share,
                  row("%+.0f %%", 100 * (gain(share, days, SEED + 10 + i) - 1)),
                  row("%+.0f %%", 100 * (formula - 1))));
    }
    for (NoiseScenario own :
        List.of(NoiseScenario.OUTLIERS, NoiseScenario.T3, NoiseScenario.WHITE)) {
      String formula =
          own == NoiseScenario.WHITE
              ? row(
                  "%+.0f %%", 100 * (Math.sqrt(3 * LapSplit.variance(3, StintSummary.MEDIAN)) - 1))
              : "| ";
      lines.add(
          "| medians, %s %s%s|"
              .formatted(
                  own.text(),
                  row("%+.0f %%", 100 * (medianGain(own, days, SEED + 20) - 1)),
                  formula));
    }
    lines.add("");
  }

  static double gain(double share, int days, long seed) {
    return shown(share, NoiseScenario.WHITE, LAPS, StintSummary.MEAN, days, seed)
        / shown(share, NoiseScenario.WHITE, 1, StintSummary.MEAN, days, seed + 1000);
  }

  /** On the same days, so that their chance differs as little as it may. */
  static double medianGain(NoiseScenario own, int days, long seed) {
    return shown(0, own, LAPS, StintSummary.MEDIAN, days, seed)
        / shown(0, own, LAPS, StintSummary.MEAN, days, seed);
  }

  private static void medians(int days, List<String> lines) {
    lines.add("## Medians with void laps");
    lines.add("");
    lines.add(
        "Sixteen stints of three laps in blocks of four, a share of .3 in the stint, no true difference; %d days a cell. How often p is .05 or less by the median, where a stint that lacks a lap has no value."
            .formatted(days));
    lines.add("");
    StringBuilder head = new StringBuilder("| void ");
    StringBuilder under = new StringBuilder("| --- ");
    List<NoiseScenario> scenarios =
        List.of(NoiseScenario.WHITE, NoiseScenario.AR_6, NoiseScenario.T3, NoiseScenario.OUTLIERS);
    scenarios.forEach(
        own -> {
          head.append("| ").append(own.text()).append(' ');
          under.append("| ---: ");
        });
    lines.add(head + "|");
    lines.add(under + "|");
    for (Voiding voiding : Voiding.values()) {
      StringBuilder row = new StringBuilder("| " + voiding.text + " ");
      for (NoiseScenario own : scenarios) {
        row.append(row("%.3f", real(voiding, own, days, SEED + 30 + voiding.ordinal())));
      }
      lines.add(row + "|");
    }
    lines.add("");
  }

  private static String row(String form, double value) {
    return "| " + String.format(Locale.ROOT, form, value) + " ";
  }
}
