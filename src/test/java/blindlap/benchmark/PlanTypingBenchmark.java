package blindlap.benchmark;

import blindlap.desk.Desk;
import blindlap.screen.Models;
import blindlap.screen.NoDialogs;
import blindlap.screen.Window;
import blindlap.screen.part.Background;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import blindlap.screen.part.Shell;
import blindlap.screen.plan.PlanDesk;
import blindlap.screen.plan.PlanModel;
import blindlap.screen.plan.PlanPage;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import java.util.concurrent.CountDownLatch;
import javafx.application.Platform;
import javafx.scene.Scene;
import javafx.stage.Stage;

/**
 * What a letter costs that is typed on the whole Plan page: processor time of styles and layout in
 * the pulse after it, beside that of a pulse in which all of the page is laid out for another
 * width. The two are of one run: what the machine does besides falls on both.
 */
public final class PlanTypingBenchmark {
  private static final int WARM = 10;
  private static final int ROUNDS = 30;

  private final PlanModel model;
  private final Stage stage;
  private final Scene scene;

  private PlanTypingBenchmark(Desk desk) {
    model = Window.call(() -> Models.plan(desk, new Shell(), Background.immediate(), 0));
    Window.run(
        () -> model.startFromFile(Path.of("sample-sessions/shocks-on-quarry-loop/plan.yaml")));
    stage = Window.call(Stage::new);
    scene =
        Window.call(
            () -> {
              Look look = new Look();
              Scene made = new Scene(new PlanPage(look, model, new NoDialogs()), 1000, 700);
              look.dress(made);
              stage.setScene(made);
              stage.show();
              return made;
            });
  }

  /** Prints the middle of several rounds, milliseconds. */
  public static void main(String[] arguments) throws IOException, InterruptedException {
    Window.start();
    Window.run(Fonts::load);
    Desk desk = PlanDesk.open(Files.createTempDirectory("plan-typing"), 1);
    PlanTypingBenchmark bench = new PlanTypingBenchmark(desk);
    String[] words = {"R. Lind", "R. Linda"};
    String[] minutes = {"2.5", "3"};
    String[] seconds = {"0.5", "0.6"};
    double whole = bench.middle(turn -> bench.stage.setWidth(1000 + turn));
    print("another width", whole, whole);
    print("rider", bench.middle(turn -> bench.model.form().field("rider").set(words[turn])), whole);
    print(
        "minutes of a lap",
        bench.middle(turn -> bench.model.form().part("timetable").field("lap").set(minutes[turn])),
        whole);
    print(
        "worthwhile difference",
        bench.middle(
            turn -> bench.model.primary().orElseThrow().field("worthwhile").set(seconds[turn])),
        whole);
    System.out.flush();
    Runtime.getRuntime().halt(0);
  }

  private static void print(String what, double took, double whole) {
    System.out.printf(Locale.ROOT, "| %s | %.1f | %.2f |%n", what, took, took / whole);
  }

  private interface Change {
    void make(int turn);
  }

  private double middle(Change change) throws InterruptedException {
    double[] took = new double[ROUNDS];
    for (int round = -WARM; round < ROUNDS; round++) {
      double one = pulse(change, Math.floorMod(round, 2));
      if (round >= 0) {
        took[round] = one;
      }
    }
    Arrays.sort(took);
    return took[ROUNDS / 2];
  }

  private double pulse(Change change, int turn) throws InterruptedException {
    CountDownLatch done = new CountDownLatch(1);
    long[] at = new long[2];
    Runnable before = () -> at[0] = now();
    Runnable after =
        () -> {
          if (at[0] != 0 && at[1] == 0) {
            at[1] = now();
            done.countDown();
          }
        };
    Window.run(
        () -> {
          change.make(turn);
          scene.addPreLayoutPulseListener(before);
          scene.addPostLayoutPulseListener(after);
          Platform.requestNextPulse();
        });
    done.await();
    Window.run(
        () -> {
          scene.removePreLayoutPulseListener(before);
          scene.removePostLayoutPulseListener(after);
        });
    return (at[1] - at[0]) / 1e6;
  }

  private static long now() {
    return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
  }
}
