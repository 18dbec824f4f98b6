package blindlap.stats.look;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import blindlap.stats.distribution.Quantiles;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class BoundaryTest {
  private static final double[] LOOKS = {0.3, 0.55, 0.8, 1};

  @Test
  void aSingleLookAtTheEndHasTheOrdinaryQuantileAsItsBound() {
    double[] once = {1};
    assertThat(Boundary.spending(once, new double[] {0.05}, true)[0])
        .isCloseTo(Quantiles.Z_975, within(1e-10));
    assertThat(Boundary.spending(once, new double[] {0.025}, false)[0])
        .isCloseTo(Quantiles.Z_975, within(1e-10));
    for (Boundary.Shape shape : Boundary.Shape.values()) {
      assertThat(shape.constant(1, 0.05)).isCloseTo(Quantiles.Z_975, within(1e-10));
    }
  }

  @ParameterizedTest
  @EnumSource(Spending.class)
  void simulatedPathsCrossUpToEachLookAsOftenAsTheErrorSpentThere(Spending spending) {
    double level = 0.2;
    double[] spent = spending.spent(level, LOOKS);
    double[] bounds = Boundary.spending(LOOKS, spent, true);
    int paths = 200_000;
    int[] crossed = new int[LOOKS.length];
    Random random = new Random(5);
    for (int path = 0; path < paths; path++) {
      int at = firstCrossing(bounds, random);
      for (int look = at; look < LOOKS.length; look++) {
        crossed[look]++;
      }
    }
    for (int look = 0; look < LOOKS.length; look++) {
      double error = Math.sqrt(spent[look] * (1 - spent[look]) / paths);
      assertThat((double) crossed[look] / paths).isCloseTo(spent[look], within(4 * error));
    }
    assertThat(spent[LOOKS.length - 1]).isCloseTo(level, within(1e-12));
  }

  private static int firstCrossing(double[] bounds, Random random) {
    double sum = 0;
    double before = 0;
    for (int look = 0; look < LOOKS.length; look++) {
      sum += Math.sqrt(LOOKS[look] - before) * random.nextGaussian();
      before = LOOKS[look];
      if (Math.abs(sum) >= bounds[look] * Math.sqrt(LOOKS[look])) {
        return look;
      }
    }
    return LOOKS.length;
  }

  @Test
  void aLookThatMaySpendNothingHasNoBoundAndCostsTheLaterOnesNothing() {
    double[] looks = {0.0005, 1};
    double[] spent = Spending.OBRIEN_FLEMING.spent(0.05, looks);
    double[] bounds = Boundary.spending(looks, spent, true);
    assertThat(bounds[0]).isInfinite();
    assertThat(bounds[1]).isCloseTo(Quantiles.Z_975, within(1e-9));
  }
}
