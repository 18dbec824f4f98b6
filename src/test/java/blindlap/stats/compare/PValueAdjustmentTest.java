package blindlap.stats.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class PValueAdjustmentTest {
  /** Closed testing: the largest p of all sets of hypotheses that contain this one. */
  private static double closed(double[] p, int wanted, boolean simes) {
    double largest = 0;
    for (int set = 1; set < 1 << p.length; set++) {
      if ((set >> wanted & 1) == 1) {
        int chosen = set;
        double[] members =
            java.util.stream.IntStream.range(0, p.length)
                .filter(i -> (chosen >> i & 1) == 1)
                .mapToDouble(i -> p[i])
                .sorted()
                .toArray();
        double joint = simes ? simes(members) : Math.min(1, members.length * members[0]);
        largest = Math.max(largest, joint);
      }
    }
    return largest;
  }

  private static double simes(double[] sorted) {
    double least = 1;
    for (int i = 0; i < sorted.length; i++) {
      least = Math.min(least, sorted.length * sorted[i] / (i + 1));
    }
    return least;
  }

  @Test
  void holmIsTheClosedTestBuiltFromBonferroni() {
    Random random = new Random(11);
    for (int round = 0; round < 50; round++) {
      double[] p = random.doubles(6).map(x -> x * x * x).toArray();
      double[] adjusted = PValueAdjustment.HOLM.adjust(p);
      for (int i = 0; i < p.length; i++) {
        assertThat(adjusted[i]).isCloseTo(closed(p, i, false), within(1e-15));
      }
    }
  }

  @Test
  void hochbergIsNeverBelowTheClosedTestBuiltFromSimesAndNeverAboveHolm() {
    Random random = new Random(12);
    for (int round = 0; round < 50; round++) {
      double[] p = random.doubles(6).map(x -> x * x * x).toArray();
      double[] adjusted = PValueAdjustment.HOCHBERG.adjust(p);
      double[] holm = PValueAdjustment.HOLM.adjust(p);
      for (int i = 0; i < p.length; i++) {
        assertThat(adjusted[i]).isBetween(closed(p, i, true) - 1e-15, holm[i] + 1e-15);
      }
    }
  }

  @Test
  void benjaminiHochbergRejectsUpToTheLastPBelowItsLine() {
    double[] p = {0.041, 0.001, 0.2, 0.012, 0.9};
    double[] adjusted = PValueAdjustment.BENJAMINI_HOCHBERG.adjust(p);
    // By hand: sorted .001 .012 .041 .2 .9 times 5/i, running minimum from the top.
    assertThat(adjusted)
        .containsExactly(new double[] {5 * 0.041 / 3, 0.005, 0.25, 0.03, 0.9}, within(1e-15));
  }

  @ParameterizedTest
  @EnumSource(PValueAdjustment.class)
  void adjustingKeepsOrderNeverShrinksAndIsCutAtOne(PValueAdjustment method) {
    double[] p = {0.5, 0.03, 0.03, 0.7, 0.0004, 1};
    double[] adjusted = method.adjust(p);
    for (int i = 0; i < p.length; i++) {
      assertThat(adjusted[i]).isBetween(p[i], 1.0);
    }
    assertThat(adjusted[1]).isEqualTo(adjusted[2]);
    double[] reversed = {1, 0.0004, 0.7, 0.03, 0.03, 0.5};
    double[] back = method.adjust(reversed);
    for (int i = 0; i < p.length; i++) {
      assertThat(back[p.length - 1 - i]).isEqualTo(adjusted[i]);
    }
    assertThat(method.adjust(0.3)).containsExactly(0.3);
  }

  @ParameterizedTest
  @EnumSource(PValueAdjustment.class)
  void whatIsNoProbabilityIsRefusedByPlace(PValueAdjustment method) {
    assertThatThrownBy(() -> method.adjust(0.5, 1.01)).hasMessageStartingWith("p[1]: must lie");
    assertThatThrownBy(() -> method.adjust(-0.1)).hasMessageStartingWith("p[0]:");
    assertThatThrownBy(() -> method.adjust(0.1, Double.NaN)).hasMessageStartingWith("p[1]:");
    assertThatThrownBy(method::adjust).hasMessageStartingWith("p: has 0 values");
    assertThat(Arrays.asList(PValueAdjustment.values())).hasSize(4);
  }
}
