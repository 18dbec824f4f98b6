package blindlap.stats.order;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import blindlap.stats.SmallSets;
import java.util.HashSet;
import java.util.Set;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;

/** Orders as bits, drawn and summed by look-up. */
class OrderTableTest {
  private static int[] order(long bits, int stints) {
    int[] order = new int[stints];
    for (int i = 0; i < stints; i++) {
      order[i] = (int) (bits >>> i & 1);
    }
    return order;
  }

  @Test
  void everyOrderIsDrawnAndNoOther() {
    UniformRandomProvider source = RandomSource.XO_RO_SHI_RO_128_PP.create(1L);
    for (SmallSets.Plain rule : SmallSets.all()) {
      Assignments set = rule.assignments();
      if (set.setups() != 2 || !set.atMost(400)) {
        continue;
      }
      OrderTable table = OrderTable.of(set);
      Set<Long> drawn = new HashSet<>();
      for (int draw = 0; draw < 40 * set.count().intValue(); draw++) {
        long bits = table.random(source);
        assertThat(set.contains(order(bits, set.stints()))).isTrue();
        drawn.add(bits);
      }
      // A given order is missed with e^-40.
      assertThat(drawn).hasSize(set.count().intValue());
    }
  }

  @Test
  void sumsAreThoseOfTheStints() {
    UniformRandomProvider source = RandomSource.XO_RO_SHI_RO_128_PP.create(2L);
    for (int stints : new int[] {4, 8, 10, 16, 24}) {
      OrderTable table = OrderTable.of(Assignments.rule(2, stints).block(2).build());
      double[] x = source.doubles(stints, -1, 1).toArray();
      double[] sums = table.sums(x);
      for (int trial = 0; trial < 50; trial++) {
        long bits = table.random(source);
        double expected = 0;
        for (int i = 0; i < stints; i++) {
          expected += (bits >>> i & 1) == 1 ? x[i] : -x[i];
        }
        assertThat(table.sum(sums, bits)).isCloseTo(expected, within(1e-13));
      }
    }
  }

  @Test
  void largeSetsAndSeveralSetupsHaveNone() {
    assertThat(OrderTable.fits(Assignments.rule(2, 18).build())).isTrue();
    assertThat(OrderTable.fits(Assignments.rule(2, 20).build())).isFalse();
    assertThat(OrderTable.fits(Assignments.rule(3, 9).block(3).build())).isFalse();
    assertThat(Assignments.rule(2, 20).build().table()).isNull();
  }
}
