package blindlap.stats.pool;

import blindlap.stats.order.Assignments;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.apache.commons.rng.UniformRandomProvider;
import org.jspecify.annotations.Nullable;

/**
 * The sums a = z'Wy/s₀² and c = z'Wz/s₀² of every measure of one session, two numbers a measure; 0
 * for a measure of which the session has nothing to say.
 */
final class MeasuresOfDay {
  private final PooledSession any;
  private final @Nullable SessionSums[] sums;
  private final boolean sameStints;
  private final int[] drawn;

  private MeasuresOfDay(PooledSession any, @Nullable SessionSums[] sums, boolean sameStints) {
    this.any = any;
    this.sums = sums;
    this.sameStints = sameStints;
    this.drawn = new int[any.set().stints()];
  }

  /**
   * @param measures of one session, at least one present
   */
  static MeasuresOfDay of(List<Optional<PooledSession>> measures) {
    PooledSession any = measures.stream().flatMap(Optional::stream).findFirst().orElseThrow();
    @Nullable SessionSums[] sums = new SessionSums[measures.size()];
    boolean same = true;
    boolean[] first = any.used();
    for (int m = 0; m < sums.length; m++) {
      if (measures.get(m).isPresent()) {
        PooledSession session = measures.get(m).get();
        SessionSums of = SessionSums.of(session);
        of.settle(0);
        sums[m] = of;
        same &= Arrays.equals(first, session.used());
      }
    }
    return new MeasuresOfDay(any, sums, same);
  }

  Assignments set() {
    return any.set();
  }

  /** True if its measures are known on the same stints, so that the orders act on them jointly. */
  boolean sameStints() {
    return sameStints;
  }

  void addObserved(double[] to) {
    add(any.order(), to);
  }

  void addRandom(UniformRandomProvider source, double[] to) {
    any.set().random(source, drawn);
    add(drawn, to);
  }

  private void add(int[] order, double[] to) {
    for (int m = 0; m < sums.length; m++) {
      SessionSums of = sums[m];
      if (of != null) {
        to[2 * m] += of.a(order);
        to[2 * m + 1] += of.c(order);
      }
    }
  }

  /**
   * The sums of every order, one row of all measures after the other.
   *
   * @param half without the mirror images
   */
  double[] list(boolean half) {
    int orders = any.set().count().intValueExact() / (half ? 2 : 1);
    double[] rows = new double[2 * sums.length * orders];
    for (int m = 0; m < sums.length; m++) {
      SessionSums of = sums[m];
      if (of != null) {
        double[] own = of.list(half);
        for (int order = 0; order < orders; order++) {
          rows[2 * (order * sums.length + m)] = own[3 * order];
          rows[2 * (order * sums.length + m) + 1] = own[3 * order + 2];
        }
      }
    }
    return rows;
  }
}
