package blindlap.stats.compare;

import static blindlap.stats.Refusals.refused;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import blindlap.stats.Regression;
import blindlap.stats.SmallSets;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.Drift;
import blindlap.stats.order.Orders;
import blindlap.stats.order.Sampling;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;

class SeveralMeasuresTest {
  private static final String RIDDEN = "ABBABABAABAB";

  private final UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(9L);
  private final Assignments set = SmallSets.BLOCK4_12.assignments();

  private SeveralMeasures.Series series(Drift drift) {
    return new SeveralMeasures.Series("m", random.doubles(12, 0, 5).toArray(), drift);
  }

  private static boolean[] all(int n) {
    boolean[] use = new boolean[n];
    Arrays.fill(use, true);
    return use;
  }

  private SeveralMeasures compare(List<SeveralMeasures.Series> measures, boolean[] valid) {
    return SeveralMeasures.compare(set, Orders.parse(RIDDEN), measures, valid, Sampling.PREFERRED);
  }

  @Test
  void everyPIsThatOfGoingThroughAllOrdersByRegression() {
    boolean[] valid = all(12);
    valid[5] = false;
    for (int trial = 0; trial < 5; trial++) {
      List<SeveralMeasures.Series> measures =
          List.of(series(Drift.LINE), series(Drift.LINE), series(Drift.NONE), series(Drift.CURVE));
      SeveralMeasures found = compare(measures, valid);
      List<double[]> all =
          set.list().stream().map(order -> shares(order, measures, valid)).toList();
      double[] observed = shares(RIDDEN, measures, valid);
      Integer[] rank = IntStream.range(0, 4).boxed().toArray(Integer[]::new);
      Arrays.sort(rank, (a, b) -> Double.compare(observed[b], observed[a]));
      double before = 0;
      for (int j = 0; j < 4; j++) {
        int m = rank[j];
        int from = j;
        double limit = observed[m] * (1 - 1e-7);
        double own = share(all, r -> r[m] >= limit);
        double single = share(all, r -> Arrays.stream(r).max().orElseThrow() >= limit);
        double step =
            share(
                all,
                r ->
                    IntStream.range(from, 4).mapToDouble(i -> r[rank[i]]).max().orElseThrow()
                        >= limit);
        before = Math.max(before, step);
        assertThat(found.p()[m]).isCloseTo(own, within(1e-12));
        assertThat(found.pAdjusted()[m]).isCloseTo(before, within(1e-12));
        assertThat(found.pSingleStep().orElseThrow()[m]).isCloseTo(single, within(1e-12));
      }
    }
  }

  private static double[] shares(
      String order, List<SeveralMeasures.Series> measures, boolean[] valid) {
    return measures.stream()
        .map(m -> new Regression(order, 2, m.values(), valid, m.nuisance().drift()))
        .mapToDouble(r -> (r.nullRss - r.rss) / r.nullRss)
        .toArray();
  }

  private static double share(
      List<double[]> all, java.util.function.Predicate<double[]> condition) {
    return (double) all.stream().filter(condition).count() / all.size();
  }

  @Test
  void aMeasureAloneHasThePOfTheTwoSetupTest() {
    for (int trial = 0; trial < 20; trial++) {
      SeveralMeasures.Series one = series(Drift.LINE);
      double p =
          TwoSetups.compare(
                  set, Orders.parse(RIDDEN), one.values(), all(12), Drift.LINE, Sampling.PREFERRED)
              .curve()
              .p(0);
      SeveralMeasures alone = compare(List.of(one), all(12));
      assertThat(alone.p()[0]).isEqualTo(p);
      assertThat(alone.pAdjusted()[0]).isEqualTo(p);
      assertThat(compare(List.of(series(Drift.LINE), one), all(12)).p()[1]).isEqualTo(p);
    }
  }

  @Test
  void aMeasureListedTwiceCostsNothing() {
    SeveralMeasures.Series one = series(Drift.LINE);
    SeveralMeasures found = compare(List.of(one, one, one), all(12));
    assertThat(found.pAdjusted()[2]).isEqualTo(found.p()[0]);
  }

  @Test
  void unitsAndSignsOfTheMeasuresChangeNothing() {
    SeveralMeasures.Series one = series(Drift.LINE);
    SeveralMeasures.Series two = series(Drift.LINE);
    SeveralMeasures.Series far =
        new SeveralMeasures.Series(
            "far", Arrays.stream(one.values()).map(v -> 1e4 - 2000 * v).toArray(), Drift.LINE);
    SeveralMeasures plain = compare(List.of(one, two), all(12));
    SeveralMeasures scaled = compare(List.of(far, two), all(12));
    assertThat(scaled.p()).isEqualTo(plain.p());
    assertThat(scaled.pAdjusted()).isEqualTo(plain.pAdjusted());
  }

  @Test
  void holmReplacesTheMaximumWhereUsableStintsDiffer() {
    SeveralMeasures.Series one = series(Drift.LINE);
    double[] gap = series(Drift.LINE).values();
    gap[3] = Double.NaN;
    SeveralMeasures.Series two = new SeveralMeasures.Series("gap", gap, Drift.LINE);
    SeveralMeasures found = compare(List.of(one, two), all(12));
    assertThat(found.method()).isEqualTo(SeveralMeasures.Method.HOLM);
    assertThat(found.pSingleStep()).isEmpty();
    assertThat(found.p()[1])
        .isEqualTo(
            TwoSetups.compare(
                    set, Orders.parse(RIDDEN), gap, all(12), Drift.LINE, Sampling.PREFERRED)
                .curve()
                .p(0));
    double smaller = Math.min(found.p()[0], found.p()[1]);
    assertThat(Math.min(found.pAdjusted()[0], found.pAdjusted()[1]))
        .isEqualTo(Math.min(1, 2 * smaller));
    boolean[] valid = all(12);
    valid[3] = false;
    assertThat(compare(List.of(one, two), valid).method())
        .isEqualTo(SeveralMeasures.Method.STEP_DOWN_MAXIMUM);
  }

  @Test
  void aMeasureThatDoesNotVaryHasPOneAndLeavesTheOthersAlone() {
    SeveralMeasures.Series one = series(Drift.LINE);
    double[] flat = new double[12];
    Arrays.fill(flat, 4.4);
    SeveralMeasures found =
        compare(List.of(one, new SeveralMeasures.Series("flat", flat, Drift.LINE)), all(12));
    assertThat(found.p()[1]).isEqualTo(1);
    assertThat(found.pAdjusted()[0]).isEqualTo(found.p()[0]);
  }

  @Test
  void whatCannotBeComparedIsRefusedAtItsArgument() {
    refused("measures", () -> compare(List.of(), all(12)));
    SeveralMeasures.Series longer = new SeveralMeasures.Series("m", new double[13], Drift.LINE);
    refused("measures[1].values", () -> compare(List.of(series(Drift.LINE), longer), all(12)));
    double[] infinite = new double[12];
    infinite[7] = Double.POSITIVE_INFINITY;
    refused(
        "measures[0].values[7]",
        () -> compare(List.of(new SeveralMeasures.Series("m", infinite, Drift.LINE)), all(12)));
  }
}
