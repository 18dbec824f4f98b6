package blindlap.stats.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import blindlap.stats.SmallSets;
import blindlap.stats.order.Drift;
import blindlap.stats.order.Orders;
import blindlap.stats.order.Sampling;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The curve of medians beside its definition: every lap is shifted by the setup it was ridden on,
 * the medians are taken anew, and every order is fitted by itself.
 */
class MedianCurveTest {
  private static final int LAPS = 3;

  private final UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(18L);

  static List<SmallSets.Plain> rules() {
    return SmallSets.twoSetups();
  }

  private double[][] day(int stints, boolean gap) {
    double[][] laps = new double[stints][LAPS];
    for (double[] stint : laps) {
      // Whole tenths, so that medians tie, and a slip now and then.
      Arrays.setAll(
          stint,
          i -> 90 + Math.rint(random.nextDouble() * 30) / 10 + (random.nextInt(6) == 0 ? 7 : 0));
    }
    if (gap) {
      laps[random.nextInt(stints)][1] = Double.NaN; // void: the stint has no median
    }
    return laps;
  }

  private static double[] medians(double[][] laps, String order, double shift) {
    double[] medians = new double[laps.length];
    for (int i = 0; i < laps.length; i++) {
      double off = order.charAt(i) == 'B' ? shift : 0;
      double[] shifted = Arrays.stream(laps[i]).map(lap -> lap - off).toArray();
      medians[i] = StintSummary.MEDIAN.of(shifted);
    }
    return medians;
  }

  /** |t| of an order by the normal equations, without the engine; 0 where it says nothing. */
  private static double t(String order, double[] y, boolean[] use, Drift drift) {
    int columns = drift.degree() + 1;
    double[] z = new double[y.length];
    Arrays.setAll(z, i -> order.charAt(i) == 'B' ? 0.5 : -0.5);
    double[] rest = y.clone();
    double[] signs = z.clone();
    double[][] basis = new double[columns][y.length];
    for (int degree = 0; degree < columns; degree++) {
      for (int i = 0; i < y.length; i++) {
        basis[degree][i] = use[i] ? Math.pow((i - y.length / 2.0) / y.length, degree) : 0;
      }
      for (int before = 0; before < degree; before++) {
        remove(basis[degree], basis[before], use);
      }
      remove(rest, basis[degree], use);
      remove(signs, basis[degree], use);
    }
    double information = dot(signs, signs, use);
    double squares = dot(rest, rest, use);
    double effect = dot(signs, rest, use);
    return information < 1e-9 || squares < 1e-18 ? 0 : Math.abs(effect) / Math.sqrt(information);
  }

  private static void remove(double[] from, double[] column, boolean[] use) {
    double factor = dot(from, column, use) / dot(column, column, use);
    for (int i = 0; i < from.length; i++) {
      from[i] -= use[i] ? factor * column[i] : 0;
    }
  }

  private static double dot(double[] a, double[] b, boolean[] use) {
    double sum = 0;
    for (int i = 0; i < a.length; i++) {
      sum += use[i] ? a[i] * b[i] : 0;
    }
    return sum;
  }

  @ParameterizedTest
  @MethodSource("rules")
  void theCurveIsThatOfShiftedLapsOverEveryOrder(SmallSets.Plain rule) {
    List<String> orders = SmallSets.filtered(rule);
    for (Drift drift : Drift.values()) {
      for (int day = 0; day < 3; day++) {
        double[][] laps = day(rule.stints(), rule.stints() >= 10);
        String ridden = orders.get(random.nextInt(orders.size()));
        double[] medians = medians(laps, ridden, 0);
        boolean[] use = new boolean[medians.length];
        for (int i = 0; i < use.length; i++) {
          use[i] = !Double.isNaN(medians[i]);
        }
        TwoSetups found =
            TwoSetups.compare(
                rule.assignments(), Orders.parse(ridden), medians, use, drift, Sampling.PREFERRED);
        for (double shift : new double[] {0, -1.37, 0.73, 2.91}) {
          double[] left = medians(laps, ridden, shift);
          double observed = t(ridden, left, use, drift);
          long count =
              orders.stream().filter(o -> t(o, left, use, drift) >= observed - 1e-9).count();
          assertThat(found.curve().p(shift))
              .as("%s, %s, shift %s", drift, ridden, shift)
              .isCloseTo((double) count / orders.size(), within(1e-12));
        }
      }
    }
  }
}
