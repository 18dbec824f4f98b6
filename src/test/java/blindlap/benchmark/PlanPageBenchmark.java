package blindlap.benchmark;

import blindlap.desk.Desk;
import blindlap.plan.Plans;
import blindlap.screen.Models;
import blindlap.screen.part.Background;
import blindlap.screen.part.Shell;
import blindlap.screen.plan.PlanAnswerModel;
import blindlap.screen.plan.PlanDesk;
import blindlap.screen.plan.PlanModel;
import java.io.IOException;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;

/**
 * What the Plan page does when a knob is turned, with the page's own model and a notebook: the
 * draft is read and judged, the answer by formula with its curve is shown, then what is left of a
 * day cut short and the simulated days, chunk by chunk, each shown. All on one thread, so that the
 * whole work counts; in the window only the formula is worked out on the interface thread.
 *
 * <p>The whole may take 1 s up to 16 stints and 10 s at 24. Beside JMH's wall clock, {@link #main}
 * prints processor times, which say something on a busy machine.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 2, time = 2)
@Measurement(iterations = 3, time = 2)
@Fork(1)
public class PlanPageBenchmark {
  private static final int ROUNDS = 5;
  private static final int USUAL = -1;

  private static final String[] KNOBS = {
    "eight-stints/8", "blocks-of-four/12", "blocks-of-four/16", "pairs/16", "limited-runs/16",
    "whole-day/16", "three-setups/12", "three-setups/15", "three-setups/18", "four-setups/16",
    "blocks-of-four/24", "pairs/24", "limited-runs/24", "whole-day/24", "three-setups/24",
    "four-setups/24"
  };

  /** Rule and stints. */
  @Param({
    "blocks-of-four/16",
    "whole-day/16",
    "three-setups/15",
    "four-setups/16",
    "blocks-of-four/24",
    "whole-day/24",
    "three-setups/24",
    "four-setups/24"
  })
  public String knob = "";

  private Path folder = Path.of("");
  private Desk desk = PlanDesk.open(temporary(), 1);
  private PlanModel page = Models.plan(desk, new Shell(), Background.immediate(), 0);
  private String draft = "";
  private int turned;

  private static Path temporary() {
    try {
      return Files.createTempDirectory("plan-page");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Types the draft. */
  @Setup
  public void type() throws IOException {
    String[] parts = knob.split("/", 2);
    String setups =
        parts[0].startsWith("three")
            ? "setups: [{name: K}, {name: L}, {name: M}]\n"
            : parts[0].startsWith("four")
                ? "setups: [{name: K}, {name: L}, {name: M}, {name: N}]\n"
                : "";
    folder = temporary();
    draft = Plans.text(setups + "protocol: " + parts[0] + "\nstints: " + parts[1] + "\n");
    Path file = Files.writeString(folder.resolve("plan.yaml"), draft);
    page.answer().simulate(0);
    page.startFromFile(file);
  }

  /** Closes the notebook. */
  @TearDown
  public void close() {
    desk.close();
  }

  /** The worthwhile difference is turned: until the formula has answered. */
  @Benchmark
  public PlanAnswerModel.Shown formula() {
    page.answer().simulate(0);
    return turn();
  }

  /** The same until every simulated day is in. */
  @Benchmark
  public PlanAnswerModel.Shown simulation() {
    page.answer().simulate(USUAL);
    return turn();
  }

  private PlanAnswerModel.Shown turn() {
    turned++;
    String worthwhile = turned % 2 == 0 ? "0.5" : "0.6";
    page.primary().orElseThrow().field("worthwhile").set(worthwhile);
    return page.answer().shownProperty().get();
  }

  /** Prints processor times of every rule, the least of several rounds. */
  public static void main(String[] arguments) throws IOException {
    ThreadMXBean threads = ManagementFactory.getThreadMXBean();
    PrintStream out = System.out;
    out.println(
        "| rule, stints | formula, ms | a rule not seen before, ms | with simulation, ms |");
    out.println("| --- | ---: | ---: | ---: |");
    PlanPageBenchmark bench = new PlanPageBenchmark();
    for (String knob : KNOBS) {
      bench.knob = knob;
      bench.type();
      double formula = least(threads, bench::formula);
      double whole = least(threads, bench::simulation);
      KnobBenchmark fresh = new KnobBenchmark();
      fresh.draft(bench.draft);
      double unseen = least(threads, fresh::newRule);
      out.printf(
          Locale.ROOT,
          "| %s | %.0f | %.0f | %.0f |%n",
          knob.replace('/', ' '),
          formula,
          unseen,
          whole);
    }
    bench.close();
  }

  private static double least(ThreadMXBean threads, Runnable work) {
    double least = Double.POSITIVE_INFINITY;
    for (int round = 0; round < ROUNDS; round++) {
      long start = threads.getCurrentThreadCpuTime();
      work.run();
      least = Math.min(least, (threads.getCurrentThreadCpuTime() - start) / 1e6);
    }
    return least;
  }
}
