package blindlap.benchmark;

import blindlap.desk.BundledProtocols;
import blindlap.plan.DayAnswer;
import blindlap.plan.DayAnswers;
import blindlap.plan.DayDivided;
import blindlap.plan.DayDivider;
import blindlap.plan.Division;
import blindlap.plan.Plan;
import blindlap.plan.Plans;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.Setup;

/**
 * Every division of a day of ten hours by every protocol, once the sets of orders are counted,
 * beside planning each division by itself. It may take 100 ms.
 */
public class DivideBenchmark extends InMilliseconds {
  private final DayAnswers answers =
      new DayAnswers(() -> List.copyOf(BundledProtocols.load().all()));
  private final Plan plan =
      Plans.with(
          """
          timetable: {start: "08:00", daylight_end: "18:00", lap: 2, climb: 4, swap: 5, scoring: 1,
            rest_every: 8, rest: 20}
          laps: {warm_up: 2, settling: 0, scored: 2}
          noise: {usual_difference: 0.72}
          """);

  /** Counts the sets. */
  @Setup
  public void count() {
    eachByItself();
  }

  /** All of them at once. */
  @Benchmark
  public DayDivided divided() {
    return answers.divider().divide(plan, DayDivider.typed(plan), (done, of) -> true);
  }

  /** Each planned by itself, as many as there are. */
  @Benchmark
  public List<Optional<DayAnswer>> eachByItself() {
    List<Optional<DayAnswer>> all = new ArrayList<>();
    for (Division division : divided().divisions()) {
      all.add(answers.quick(division.plan()));
    }
    return all;
  }

  /** Least of several rounds of both, in milliseconds. */
  public static void main(String[] arguments) {
    DivideBenchmark benchmark = new DivideBenchmark();
    benchmark.count();
    double all = Double.POSITIVE_INFINITY;
    double each = Double.POSITIVE_INFINITY;
    for (int round = 0; round < 15; round++) {
      long start = System.nanoTime();
      benchmark.divided();
      long between = System.nanoTime();
      benchmark.eachByItself();
      each = Math.min(each, (System.nanoTime() - between) / 1e6);
      all = Math.min(all, (between - start) / 1e6);
    }
    System.out.printf(
        "%d divisions: %.1f ms; each by itself %.1f ms; ratio %.1f%n",
        benchmark.divided().divisions().size(), all, each, each / all);
  }
}
