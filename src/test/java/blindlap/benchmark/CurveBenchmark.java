package blindlap.benchmark;

import blindlap.stats.compare.ConfidenceCurve;
import blindlap.stats.compare.TwoSetups;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.Drift;
import blindlap.stats.order.Sampling;
import java.util.Arrays;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Setup;

/**
 * The whole confidence curve of a day, beside what it cannot do without: the bare walk over half
 * the orders with the same arithmetic, written out by hand, and a sort of as many numbers.
 */
public class CurveBenchmark extends InMilliseconds {
  /** Stints and block: 2^12, 2^16 and 2^20 orders in pairs, and 24 stints shuffled whole. */
  @Param({"24/2", "32/2", "40/2", "24/24"})
  public String day = "";

  private Assignments set = Assignments.rule(2, 2).build();
  private int[] order = {};
  private double[] values = {};
  private boolean[] valid = {};
  private double[] unsorted = {};
  private double[] buffer = {};
  private BareWalk bare = new BareWalk(2, 2);

  /** Makes a day. */
  @Setup
  public void make() {
    int stints = Integer.parseInt(day.substring(0, day.indexOf('/')));
    int block = Integer.parseInt(day.substring(day.indexOf('/') + 1));
    UniformRandomProvider source = RandomSource.XO_RO_SHI_RO_128_PP.create(1L);
    set = Assignments.rule(2, stints).block(block).build();
    order = set.random(source);
    values = source.doubles(stints).toArray();
    valid = new boolean[stints];
    Arrays.fill(valid, true);
    unsorted = curve().knots();
    for (int i = unsorted.length - 1; i > 0; i--) {
      int j = source.nextInt(i + 1);
      double swapped = unsorted[i];
      unsorted[i] = unsorted[j];
      unsorted[j] = swapped;
    }
    buffer = unsorted.clone();
    bare = new BareWalk(stints, block);
  }

  /** Mixes the numbers again. */
  @Setup(Level.Invocation)
  public void mix() {
    System.arraycopy(unsorted, 0, buffer, 0, buffer.length);
  }

  /** The product's curve: walk, knots, sort. */
  @Benchmark
  public ConfidenceCurve curve() {
    return TwoSetups.compare(set, order, values, valid, Drift.LINE, Sampling.PREFERRED).curve();
  }

  /** The same sums for the same orders, and nothing else. */
  @Benchmark
  public double bareWalk() {
    return bare.run();
  }

  /** A sort of as many doubles. */
  @Benchmark
  public double[] sort() {
    Arrays.sort(buffer);
    return buffer;
  }

  /** Blocks that hold both setups equally often, first stint on A; five running sums per order. */
  private static final class BareWalk {
    private final int n;
    private final int block;
    private final double[][] step;
    private double check;

    BareWalk(int n, int block) {
      this.n = n;
      this.block = block;
      this.step = new double[5][n];
      for (int sum = 0; sum < 5; sum++) {
        for (int i = 0; i < n; i++) {
          step[sum][i] = Math.sin(i * (sum + 1)) / 2;
        }
      }
    }

    double run() {
      check = 0;
      onA(0, 0, 0, 0, 0, 0, 0);
      return check;
    }

    private void walk(int i, int bs, double a, double b, double s0, double s1, double s2) {
      if (i == n) {
        check += a * b - s0 * s0 - s1 * s1 - s2 * s2;
        return;
      }
      int before = i % block == 0 ? 0 : bs;
      if (i % block - before < block / 2) {
        onA(i, before, a, b, s0, s1, s2);
      }
      if (before < block / 2) {
        walk(
            i + 1,
            before + 1,
            a + step[0][i],
            b + step[1][i],
            s0 + step[2][i],
            s1 + step[3][i],
            s2 + step[4][i]);
      }
    }

    private void onA(int i, int bs, double a, double b, double s0, double s1, double s2) {
      walk(
          i + 1,
          bs,
          a - step[0][i],
          b - step[1][i],
          s0 - step[2][i],
          s1 - step[3][i],
          s2 - step[4][i]);
    }
  }
}
