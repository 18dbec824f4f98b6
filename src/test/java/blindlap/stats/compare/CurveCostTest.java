package blindlap.stats.compare;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.stats.SmallSets;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.Drift;
import blindlap.stats.order.Sampling;
import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.util.Arrays;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;

/** What the largest curve of a day costs, and that its sort is a sort. */
class CurveCostTest {
  private static final long LIMIT = 100_000_000;

  @Test
  void theCurveOfTwentyFourStintsShuffledWholeTakesLessThanAHundredMegabytes() {
    Assignments set = SmallSets.Plain.blocks(2, 24, 24).assignments();
    UniformRandomProvider source = RandomSource.XO_RO_SHI_RO_128_PP.create(2L);
    double[] y = source.doubles(24).toArray();
    boolean[] all = new boolean[24];
    Arrays.fill(all, true);
    int[] order = set.random(source);
    ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
    long thread = Thread.currentThread().getId();
    long before = threads.getThreadAllocatedBytes(thread);
    ConfidenceCurve curve =
        TwoSetups.compare(set, order, y, all, Drift.LINE, Sampling.PREFERRED).curve();
    long allocated = threads.getThreadAllocatedBytes(thread) - before;
    assertThat(curve.total()).isEqualTo(2_704_156);
    // Everything allocated on the way, whether freed or not; the curve itself keeps 8 bytes an
    // order.
    assertThat(allocated).isLessThan(LIMIT).isGreaterThan(8L * 2_704_155);
  }

  @Test
  void dealingIntoBinsSortsAsAPlainSortDoes() {
    UniformRandomProvider source = RandomSource.XO_RO_SHI_RO_128_PP.create(3L);
    for (int size : new int[] {0, 1, 1000, 20_000, 300_000}) {
      double[] values = new double[size + 7];
      for (int i = 0; i < values.length; i++) {
        double u = source.nextDouble() - 0.5;
        values[i] = i % 50 == 0 ? 0 : i % 51 == 0 ? -0.0 : u / source.nextDouble() / 1e-3;
      }
      if (size > 1) {
        values[0] = Double.MAX_VALUE;
        values[1] = -Double.MIN_VALUE;
      }
      double[] expected = Arrays.copyOf(values, size);
      Arrays.sort(expected);
      assertThat(KnotSort.sorted(values, size)).isEqualTo(expected);
    }
  }
}
