package blindlap.phone;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.LongSupplier;

/** How many may come: a store for each who asks that fills up again evenly. */
final class Rates {
  /** Who asked longest ago is forgotten, and has a full store again. */
  private static final int MOST = 1_000;

  private static final double SECOND = 1e9;

  /** What is left of a store, and when. */
  private record Left(double count, long nanos) {}

  private final double most;
  private final double aSecond;
  private final LongSupplier nanos;
  private final Map<String, Left> left = new LinkedHashMap<>(16, 0.75f, true);

  /**
   * A rate.
   *
   * @param most at once
   * @param aSecond so many more each second
   */
  Rates(int most, double aSecond, LongSupplier nanos) {
    this.most = most;
    this.aSecond = aSecond;
    this.nanos = nanos;
  }

  /** True if one more may come. */
  synchronized boolean admits(String who) {
    long now = nanos.getAsLong();
    Left before = left.getOrDefault(who, new Left(most, now));
    double count = Math.min(most, before.count() + (now - before.nanos()) / SECOND * aSecond);
    boolean admitted = count >= 1;
    left.put(who, new Left(admitted ? count - 1 : count, now));
    if (left.size() > MOST) {
      left.remove(left.keySet().iterator().next());
    }
    return admitted;
  }
}
