package blindlap.review;

import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.stats.compare.HarmTest;
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
    int[] left = new int[2];
    boolean[] valid = each.stints().valid();
    for (int i = 0; i < valid.length; i++) {
      left[order[i]] += valid[i] ? 1 : 0;
    }
    return HarmTest.of(
        each.curve(),
        band.low(),
        band.high(),
        each.measure().better() == Measure.Better.HIGHER
            ? HarmTest.Direction.LESS_IS_HARM
            : HarmTest.Direction.MORE_IS_HARM,
        adjusted,
        Math.min(left[0], left[1]));
  }
}
