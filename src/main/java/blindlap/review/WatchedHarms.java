package blindlap.review;

import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.stats.compare.HarmTest;
import blindlap.stats.compare.ManySetups;
import blindlap.stats.compare.PValueAdjustment;
import blindlap.stats.distribution.Interval;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The measures watched for harm, adjusted for their number (docs/method.md#watched-harm). Every
 * measure that the plan watches counts, those that could not be tested with p = 1: how many there
 * are was fixed before riding.
 */
final class WatchedHarms {
  private static final double LEVEL = 0.05;

  private WatchedHarms() {}

  /** Puts the harm tests into the comparisons of watched measures. */
  static void test(Plan plan, int[] order, List<Comparison> others) {
    int watched = watched(plan).size();
    List<Integer> tested = new ArrayList<>();
    for (int i = 0; i < others.size(); i++) {
      Comparison each = others.get(i);
      if (watches(each.measure()) && each.tested() && !each.result().noVariation()) {
        tested.add(i);
      }
    }
    if (tested.isEmpty()) {
      return;
    }
    double[] p = new double[watched];
    Arrays.fill(p, 1);
    for (int i = 0; i < tested.size(); i++) {
      Comparison each = others.get(tested.get(i));
      Interval band = each.worthwhileBand().orElseThrow();
      p[i] = HarmTest.p(each.curve(), band.low(), band.high());
    }
    double[] adjusted = PValueAdjustment.HOLM.adjust(p);
    for (int i = 0; i < tested.size(); i++) {
      Comparison each = others.get(tested.get(i));
      others.set(tested.get(i), each.withHarm(harm(each, order, adjusted[i])));
    }
  }

  /** The watched measures of a plan that have a harm declared. */
  static List<Measure> watched(Plan plan) {
    return plan.measures().stream().filter(WatchedHarms::watches).toList();
  }

  private static boolean watches(Measure measure) {
    return measure.role() == Measure.Role.WATCH_FOR_HARM && measure.worthwhile() != null;
  }

  private static HarmTest harm(Comparison each, int[] order, double adjusted) {
    Interval band = each.worthwhileBand().orElseThrow();
    return HarmTest.of(
        each.curve(),
        band.low(),
        band.high(),
        each.measure().better() == Measure.Better.HIGHER
            ? HarmTest.Direction.LESS_IS_HARM
            : HarmTest.Direction.MORE_IS_HARM,
        adjusted,
        fewestLeft(each, order));
  }

  /**
   * Stints of the setup with the fewest; of a trend half of all, which it parts like two setups.
   */
  private static int fewestLeft(Comparison each, int[] order) {
    if (each.trend().isPresent()) {
      return each.result().used() / 2;
    }
    int[] left = left(each.stints(), order, 2);
    return Math.min(left[0], left[1]);
  }

  private static int[] left(StintValues stints, int[] order, int setups) {
    int[] left = new int[setups];
    boolean[] valid = stints.valid();
    for (int i = 0; i < valid.length; i++) {
      left[order[i]] += valid[i] ? 1 : 0;
    }
    return left;
  }

  /** The same for three and more setups, from intervals of pairs (docs/method.md#pair-harm). */
  static void testMany(Plan plan, int[] order, List<ManyComparison> many) {
    double level = 1 - LEVEL / Math.max(1, watched(plan).size());
    for (int i = 0; i < many.size(); i++) {
      ManyComparison each = many.get(i);
      if (watches(each.measure()) && each.tested()) {
        int[] left = left(each.stints(), order, plan.setups().size());
        many.set(
            i,
            each.withHarms(
                each.result().pairs().stream().map(p -> harm(each, p, level, left)).toList()));
      }
    }
  }

  private static ManyComparison.PairHarm harm(
      ManyComparison each, ManySetups.Pair pair, double level, int[] left) {
    Interval band = Comparison.band(each.measure()).orElseThrow();
    Interval wide = each.result().interval(pair, level).orElseThrow();
    boolean enough = Math.min(left[pair.first()], left[pair.second()]) >= HarmTest.LEAST_STINTS;
    HarmTest.Finding found = HarmTest.Finding.NOT_SETTLED;
    if (ManyComparison.against(wide, band) == ManyComparison.Size.BEYOND) {
      found = HarmTest.Finding.SHOWN;
    } else if (enough && each.against(pair).orElseThrow() == ManyComparison.Size.WITHIN) {
      found = HarmTest.Finding.RULED_OUT;
    }
    return new ManyComparison.PairHarm(pair, found, wide);
  }
}
