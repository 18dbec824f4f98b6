package blindlap.calibration;

import blindlap.stats.compare.ConfidenceCurve;
import blindlap.stats.compare.TwoSetups;
import blindlap.stats.distribution.Interval;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.Drift;
import blindlap.stats.order.Sampling;
import java.util.Arrays;
import java.util.Optional;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;

/**
 * Simulated days of one design under one noise, each with an order of its own and a true difference
 * of one standard deviation.
 *
 * @param days number of days
 * @param size share of days with p ≤ .05 at the true difference (what the test does when the
 *     difference asked about is the true one)
 * @param coverage share of days whose 95 % interval holds the true difference
 * @param power share of days with p ≤ .05 at no difference
 */
record CalibrationCell(int days, double size, double coverage, double power) {
  private static final double EFFECT = 1;
  private static final int DRAWS = 999;
  private static final long WHOLE_UP_TO = 4096;

  static CalibrationCell simulate(Design design, NoiseScenario scenario, int days, long seed) {
    UniformRandomProvider source =
        RandomSource.XO_RO_SHI_RO_128_PP.create(
            seed * 1_000_003 + design.ordinal() * 101L + scenario.ordinal());
    Assignments set = design.orders();
    boolean[] all = new boolean[set.stints()];
    Arrays.fill(all, true);
    int rejected = 0;
    int covered = 0;
    int found = 0;
    for (int day = 0; day < days; day++) {
      int[] order = set.random(source);
      double[] y = scenario.day(order, source);
      for (int i = 0; i < y.length; i++) {
        y[i] += EFFECT * order[i];
      }
      // Fresh draws for every day: one shared reference set would bias all days alike.
      Sampling sampling = new Sampling(false, DRAWS, source.nextLong(), WHOLE_UP_TO);
      ConfidenceCurve curve = TwoSetups.compare(set, order, y, all, Drift.LINE, sampling).curve();
      rejected += rejects(curve, EFFECT) ? 1 : 0;
      found += rejects(curve, 0) ? 1 : 0;
      Optional<Interval> interval = curve.interval(0.95);
      boolean holds =
          interval.isEmpty() || (interval.get().low() <= EFFECT && EFFECT <= interval.get().high());
      covered += holds ? 1 : 0;
    }
    return new CalibrationCell(
        days, (double) rejected / days, (double) covered / days, (double) found / days);
  }

  private static boolean rejects(ConfidenceCurve curve, double shift) {
    return curve.exceeds(shift, 0.025) || curve.fallsShortOf(shift, 0.025);
  }

  /** Standard error of a share over these days. */
  double error(double share) {
    return Math.sqrt(share * (1 - share) / days);
  }
}
