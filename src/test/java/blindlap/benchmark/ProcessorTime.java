package blindlap.benchmark;

import java.io.PrintStream;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.Locale;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * The benchmarks of this package once more, as processor time of their thread: the least of several
 * rounds. Unlike wall-clock time it says something on a machine that is busy with other work.
 */
public final class ProcessorTime {
  private static final int ROUNDS = 15;
  private static final double LONG_ENOUGH_MS = 50;

  private final ThreadMXBean threads = ManagementFactory.getThreadMXBean();
  private final PrintStream out;
  private @Nullable Object kept;

  private ProcessorTime(PrintStream out) {
    this.out = out;
  }

  /** Prints a table. */
  public static void main(String[] arguments) {
    new ProcessorTime(System.out).run();
  }

  private void run() {
    out.println("| calculation | ms |");
    out.println("| --- | ---: |");
    PlanBenchmark plan = new PlanBenchmark();
    plan.make();
    row("planning formula from the rule", plan::planningFormula);
    row("planning formula, day known", plan::planningFormulaPrepared);
    row("verdict odds by formula", plan::verdictOddsFormula);
    row("2,000 simulated days, 16 stints", plan::simulatedDays);
    row("compare-many, 3 setups, 18 stints", plan::compareMany);
    row("compare-measures, 5 measures, 16 stints", plan::compareMeasures);
    for (String day : new String[] {"24/2", "32/2", "40/2", "24/24"}) {
      CurveBenchmark curve = new CurveBenchmark();
      curve.day = day;
      curve.make();
      row("curve " + day, curve::curve);
      row("bare walk " + day, curve::bareWalk);
      row(
          "sort " + day,
          () -> {
            curve.mix();
            return curve.sort();
          });
      out.println("| orders " + day + " | " + curve.curve().total() + " |");
    }
    if (kept == null) {
      throw new IllegalStateException("nothing was computed");
    }
  }

  private void row(String name, Supplier<Object> call) {
    // Long enough for the compiler to have finished with it.
    time(call, 1);
    double once = time(call, 3);
    time(call, (int) Math.max(3, Math.min(3000, 500 / Math.max(1e-3, once))));
    once = time(call, 3);
    int repetitions = (int) Math.max(1, Math.min(1000, LONG_ENOUGH_MS / Math.max(1e-3, once)));
    double least = Double.POSITIVE_INFINITY;
    for (int round = 0; round < ROUNDS; round++) {
      least = Math.min(least, time(call, repetitions));
    }
    out.println("| " + name + " | " + String.format(Locale.ROOT, "%.3f", least) + " |");
  }

  private double time(Supplier<Object> call, int repetitions) {
    long start = threads.getCurrentThreadCpuTime();
    for (int i = 0; i < repetitions; i++) {
      kept = call.get();
    }
    return (threads.getCurrentThreadCpuTime() - start) / 1e6 / repetitions;
  }
}
