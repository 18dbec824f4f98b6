package blindlap.review;

import blindlap.plan.Measure;
import blindlap.stats.compare.PValueAdjustment;
import blindlap.stats.compare.SeveralMeasures;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.Nuisance;
import blindlap.stats.order.Sampling;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Function;
import java.util.stream.IntStream;

/**
 * The p of secondary measures, adjusted for their number; those with too many values missing are
 * left out. Two setups take the step-down maximum; trends and several setups Holm's steps.
 */
final class Adjusted {
  private Adjusted() {}

  /**
   * Two setups.
   *
   * @param nuisance what was removed of a measure
   */
  static void setups(
      Assignments set, int[] order, List<Comparison> others, Function<Measure, Nuisance> nuisance) {
    List<Integer> family = family(others);
    if (family.isEmpty()) {
      return;
    }
    List<SeveralMeasures.Series> series = new ArrayList<>();
    for (int i : family) {
      Comparison each = others.get(i);
      series.add(
          new SeveralMeasures.Series(
              each.measure().name(), each.stints().values(), nuisance.apply(each.measure())));
    }
    boolean[] valid = new boolean[set.stints()];
    Arrays.fill(valid, true);
    put(
        others,
        family,
        SeveralMeasures.compare(set, order, series, valid, Sampling.PREFERRED).pAdjusted());
  }

  /** Trends over levels, of which the step-down of two setups knows nothing. */
  static void trends(List<Comparison> others) {
    List<Integer> family = family(others);
    if (!family.isEmpty()) {
      double[] p = family.stream().mapToDouble(i -> others.get(i).p()).toArray();
      put(others, family, PValueAdjustment.HOLM.adjust(p));
    }
  }

  private static List<Integer> family(List<Comparison> others) {
    return IntStream.range(0, others.size())
        .filter(i -> inFamily(others.get(i).measure(), others.get(i).tested()))
        .boxed()
        .toList();
  }

  private static boolean inFamily(Measure measure, boolean tested) {
    return tested && measure.role() == Measure.Role.SECONDARY;
  }

  private static void put(List<Comparison> others, List<Integer> family, double[] adjusted) {
    for (int i = 0; i < adjusted.length; i++) {
      others.set(family.get(i), others.get(family.get(i)).withAdjusted(adjusted[i]));
    }
  }

  /** Three and more setups. */
  static void many(List<ManyComparison> many) {
    List<Integer> family =
        IntStream.range(0, many.size())
            .filter(i -> inFamily(many.get(i).measure(), many.get(i).tested()))
            .boxed()
            .toList();
    if (family.isEmpty()) {
      return;
    }
    double[] p = family.stream().mapToDouble(i -> many.get(i).result().p()).toArray();
    double[] adjusted = PValueAdjustment.HOLM.adjust(p);
    for (int i = 0; i < p.length; i++) {
      many.set(family.get(i), many.get(family.get(i)).withAdjusted(adjusted[i]));
    }
  }
}
