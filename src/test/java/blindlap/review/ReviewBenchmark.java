package blindlap.review;

import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plan.Rule;
import blindlap.stats.compare.Scale;
import blindlap.stats.order.Orders;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;

/**
 * How long a large review takes: 24 stints shuffled whole, 2.7 million orders, six measures. A
 * program that prints times: the verdict should come within 1 s, everything within 3 s.
 */
public final class ReviewBenchmark {
  private static final ThreadMXBean THREAD = ManagementFactory.getThreadMXBean();

  private ReviewBenchmark() {}

  /** The large day. */
  public static DayRecord day() {
    Rule rule = Rule.blocks(2, 24, 24);
    List<Measure> measures = new ArrayList<>();
    Map<String, double[]> values = new LinkedHashMap<>();
    Random random = new Random(24);
    String order = Days.order(rule, random);
    for (int i = 0; i < 6; i++) {
      boolean time = i == 0;
      measures.add(
          Days.measure(
              "measure " + i,
              time ? Measure.Kind.LAP_TIME : Measure.Kind.LINE_SCALE,
              time ? Measure.Role.PRIMARY : Measure.Role.SECONDARY,
              Measure.Better.LOWER,
              "1",
              Scale.RAW));
      double base = time ? 90 : 50;
      values.put(
          "measure " + i,
          Days.values(Orders.parse(order), base, new double[] {0, -0.8}, 1, 2, random));
    }
    Plan plan = Days.plan(rule, measures);
    return Days.day(plan, order, values);
  }

  /**
   * Prints the times of three runs in a fresh virtual machine; the first one counts. Beside the
   * wall clock stands the processor time of the thread, which other work on the machine leaves
   * alone.
   */
  public static void main(String[] arguments) {
    DayRecord day = day();
    for (int run = 0; run < 3; run++) {
      long start = System.nanoTime();
      long spent = THREAD.getCurrentThreadCpuTime();
      Analysis.verdictOnly(day);
      long verdict = System.nanoTime();
      long spentOnVerdict = THREAD.getCurrentThreadCpuTime();
      Analysis.of(day);
      System.out.printf(
          "wall: verdict %.2f s, everything %.2f s; processor: verdict %.2f s, everything %.2f s%n",
          (verdict - start) / 1e9,
          (System.nanoTime() - verdict) / 1e9,
          (spentOnVerdict - spent) / 1e9,
          (THREAD.getCurrentThreadCpuTime() - spentOnVerdict) / 1e9);
    }
  }
}
