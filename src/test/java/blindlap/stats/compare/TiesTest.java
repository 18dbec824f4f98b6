package blindlap.stats.compare;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.stats.SmallSets;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.Drift;
import blindlap.stats.order.Nuisance;
import blindlap.stats.order.Orders;
import blindlap.stats.order.Sampling;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Ties stay ties on a large offset, and orders that hold no information count for nothing. */
class TiesTest {
  private static final double OFFSET = 100_000;
  private static final double UNIT = 0.001;

  private static boolean[] all(int n) {
    boolean[] use = new boolean[n];
    Arrays.fill(use, true);
    return use;
  }

  /** Small whole numbers, which tie often and add up without rounding. */
  private static double[] whole(int n, Random random) {
    double[] y = new double[n];
    Arrays.setAll(y, i -> random.nextInt(4));
    return y;
  }

  private static double[] offset(double[] y) {
    return Arrays.stream(y).map(each -> OFFSET + UNIT * each).toArray();
  }

  @Test
  void twoSetupsCountTheSameOrdersNear100000WithAScatterOfAThousandth() {
    Assignments set = Assignments.rule(2, 16).block(4).build();
    int[] order = Orders.parse("ABBABABAABBABAAB");
    for (int seed = 0; seed < 60; seed++) {
      double[] y = whole(16, new Random(seed));
      ConfidenceCurve small = curve(set, order, y, Drift.NONE);
      ConfidenceCurve large = curve(set, order, offset(y), Drift.NONE);
      for (double shift : new double[] {0, 1, -1}) {
        assertThat(large.countPlus(UNIT * shift))
            .as("seed %s", seed)
            .isEqualTo(small.countPlus(shift));
        assertThat(large.countMinus(UNIT * shift)).isEqualTo(small.countMinus(shift));
      }
    }
  }

  private static ConfidenceCurve curve(Assignments set, int[] order, double[] y, Drift drift) {
    return TwoSetups.compare(set, order, y, all(y.length), drift, Sampling.PREFERRED).curve();
  }

  @Test
  void threeSetupsAndSeveralMeasuresCountTheSameOrdersToo() {
    Assignments three = SmallSets.THREE_9.assignments();
    int[] order = three.order(java.math.BigInteger.valueOf(17));
    Assignments two = Assignments.rule(2, 12).block(4).build();
    int[] ridden = Orders.parse("ABBABABAABAB");
    for (int seed = 0; seed < 60; seed++) {
      double[] y = whole(9, new Random(seed));
      ManySetups small = many(three, order, y, all(9));
      ManySetups large = many(three, order, offset(y), all(9));
      if (!small.noVariation()) {
        assertThat(large.p()).as("seed %s", seed).isEqualTo(small.p());
        for (int i = 0; i < 3; i++) {
          assertThat(large.pairs().get(i).p()).isEqualTo(small.pairs().get(i).p());
          assertThat(large.pairs().get(i).pAdjusted()).isEqualTo(small.pairs().get(i).pAdjusted());
        }
      }
      double[] v = whole(12, new Random(seed));
      double[] w = whole(12, new Random(1000 + seed));
      assertThat(measures(two, ridden, offset(v), offset(w)))
          .containsExactly(measures(two, ridden, v, w));
    }
  }

  private static double[] measures(Assignments set, int[] order, double[] v, double[] w) {
    return SeveralMeasures.compare(
            set,
            order,
            List.of(
                new SeveralMeasures.Series("v", v, Drift.NONE),
                new SeveralMeasures.Series("w", w, Drift.NONE)),
            all(v.length),
            Sampling.PREFERRED)
        .pAdjusted();
  }

  private static ManySetups many(Assignments set, int[] order, double[] y, boolean[] use) {
    return ManySetups.compare(set, order, y, use, Nuisance.of(Drift.NONE), Sampling.PREFERRED);
  }

  /** With four stints left some orders put one setup on masked stints only. */
  @Test
  void ordersThatCannotTellThreeSetupsApartCountAsNoDifference() {
    Assignments set = SmallSets.THREE_6_WHOLE.assignments();
    boolean[] use = {true, true, true, false, true, false};
    double[] y = {3, 9, 1, 0, 3.5, 0};
    List<String> orders = SmallSets.filtered(SmallSets.THREE_6_WHOLE);
    String ridden = orders.stream().filter(o -> statistic(o, use, y) > 0).findFirst().orElseThrow();
    assertThat(orders).anyMatch(o -> statistic(o, use, y) == 0);
    ManySetups found = many(set, Orders.parse(ridden), y, use);
    long counted = 0;
    for (String each : orders) {
      counted += statistic(each, use, y) >= statistic(ridden, use, y) * (1 - 1e-9) ? 1 : 0;
    }
    assertThat(found.p()).isEqualTo(counted / (double) orders.size());
  }

  /** Between over within sum of squares by group means; 0 where a setup is not there. */
  private static double statistic(String order, boolean[] use, double[] y) {
    double mean = 0;
    int n = 0;
    double[] sum = new double[3];
    int[] often = new int[3];
    for (int i = 0; i < y.length; i++) {
      if (use[i]) {
        mean += y[i];
        n++;
        sum[order.charAt(i) - 'A'] += y[i];
        often[order.charAt(i) - 'A']++;
      }
    }
    mean /= n;
    double between = 0;
    double total = 0;
    for (int i = 0; i < y.length; i++) {
      total += use[i] ? (y[i] - mean) * (y[i] - mean) : 0;
    }
    for (int s = 0; s < 3; s++) {
      if (often[s] == 0) {
        return 0;
      }
      between += often[s] * Math.pow(sum[s] / often[s] - mean, 2);
    }
    return between / Math.max(total - between, 1e-15 * total);
  }
}
