package blindlap.calibration;

import blindlap.stats.compare.TwoSetups;
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
import org.apache.commons.rng.sampling.distribution.ZigguratSampler;
import org.apache.commons.rng.simple.RandomSource;

/** Error rates and coverage with a covariate taken out, whatever its check says. */
final class CovariatesTable {
  private static final long SEED = 20_261_129L;
  private static final double LEVEL = 0.05;
  private static final double FLAG = 0.10;

  private CovariatesTable() {}

  /** Prints the table alone; argument: days per cell. */
  public static void main(String[] arguments) {
    lines(Integer.parseInt(arguments[0])).forEach(System.out::println);
  }

  /** How a covariate goes with the noise, and whether the setup touches it. */
  enum Goes {
    NOT("not at all", 0, 0),
    WELL("by .7", 0.7, 0),
    TOUCHED("by .7, and the setup moves it by 1 SD", 0.7, 1);

    private final String text;
    private final double r;
    private final double touched;

    Goes(String text, double r, double touched) {
      this.text = text;
      this.r = r;
      this.touched = touched;
    }
  }

  /**
   * Days without a true difference, but for what the covariate brings.
   *
   * @param real share of days with p of .05 or less, the covariate taken out
   * @param covered share of days whose 95 % interval holds the true difference, 0
   * @param flagged share of days on which the check says that the setup may have touched it
   * @param swapped share of days with p of .05 or less if the analysis were swapped for the one
   *     without covariate wherever the check flags, which nobody may do
   */
  record Found(double real, double covered, double flagged, double swapped) {}

  static Found simulate(Design design, Goes goes, NoiseScenario noise, int days, long seed) {
    UniformRandomProvider source = RandomSource.XO_RO_SHI_RO_128_PP.create(seed);
    ZigguratSampler.NormalizedGaussian normal = ZigguratSampler.NormalizedGaussian.of(source);
    Assignments set = design.orders();
    boolean[] all = new boolean[set.stints()];
    Arrays.fill(all, true);
    Sampling sampling = new Sampling(false, 999, seed, 4_096);
    int[] found = new int[4];
    for (int day = 0; day < days; day++) {
      int[] order = set.random(source);
      double[] own = noise.day(order, source);
      double[] x = new double[order.length];
      double[] y = new double[order.length];
      for (int i = 0; i < x.length; i++) {
        double wind = normal.sample();
        y[i] = goes.r * wind + Math.sqrt(1 - goes.r * goes.r) * own[i];
        x[i] = wind + goes.touched * order[i];
      }
      Nuisance drift = Nuisance.of(Drift.LINE);
      TwoSetups with =
          TwoSetups.compare(set, order, y, all, Nuisance.of(Drift.LINE, List.of(x)), sampling);
      boolean real = with.curve().p(0) <= LEVEL;
      boolean flag = TwoSetups.compare(set, order, x, all, drift, sampling).curve().p(0) <= FLAG;
      Interval interval = with.curve().interval(0.95).orElseThrow();
      found[0] += real ? 1 : 0;
      found[1] += interval.low() <= 0 && interval.high() >= 0 ? 1 : 0;
      found[2] += flag ? 1 : 0;
      boolean swapped =
          flag
              ? TwoSetups.compare(set, order, y, all, drift, sampling).curve().p(0) <= LEVEL
              : real;
      found[3] += swapped ? 1 : 0;
    }
    double of = days;
    return new Found(found[0] / of, found[1] / of, found[2] / of, found[3] / of);
  }

  static List<String> lines(int days) {
    List<String> lines = new ArrayList<>();
    lines.add("## A covariate taken out");
    lines.add("");
    lines.add(
        "Sixteen stints in blocks of four, no true difference, a covariate of white noise taken out beside a straight drift; "
            + days
            + " days a row. Where no setup touches the covariate, p ≤ .05 on no more than .05 of days beyond simulation error,"
            + " whatever the check says; the last column is what swapping the analysis on the check would do, which is not done."
            + " The rows where the setup moves the covariate err: that is why a reason is asked for.");
    lines.add("");
    lines.add(
        "| goes with the noise | noise | p ≤ .05 | 95 % interval holds 0 | flagged by the check | p ≤ .05 if swapped |");
    lines.add("| --- | --- | ---: | ---: | ---: | ---: |");
    for (Goes goes : Goes.values()) {
      for (NoiseScenario noise :
          List.of(NoiseScenario.WHITE, NoiseScenario.AR_6, NoiseScenario.OUTLIERS)) {
        long seed = SEED + 100L * goes.ordinal() + noise.ordinal();
        Found found = simulate(Design.BLOCK4_16, goes, noise, days, seed);
        lines.add(
            String.format(
                Locale.ROOT,
                "| %s | %s | %.3f | %.3f | %.3f | %.3f |",
                goes.text,
                noise.text(),
                found.real,
                found.covered,
                found.flagged,
                found.swapped));
      }
    }
    lines.add("");
    return lines;
  }
}
