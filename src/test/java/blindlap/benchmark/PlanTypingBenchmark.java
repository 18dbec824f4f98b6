package blindlap.benchmark;

import blindlap.desk.Desk;
import blindlap.screen.Models;
import blindlap.screen.NoDialogs;
import blindlap.screen.Window;
import blindlap.screen.part.Background;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import blindlap.screen.part.Shell;
import blindlap.screen.part.TypedForm;
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
import java.util.concurrent.TimeUnit;
import javafx.application.Platform;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.TextField;
import javafx.scene.layout.StackPane;
import javafx.stage.Stage;

/**
 * What a letter costs that is typed on the whole Plan page: processor time of styles and layout in
 * the pulse after it, beside that of a letter in a bare text field alone in its window, and beside
 * that of a pulse in which all of the page is laid out for another width. All are of one run: what
 * the machine does besides falls on each.
 */
public final class PlanTypingBenchmark {
  private static final int WARM = 10;
  private static final int ROUNDS = 30;

  /** A pulse that has not come by then never comes: the change was none. */
  private static final int PATIENCE_SECONDS = 20;

  private final PlanModel model;
  private final PlanPage page;
  private final Scene scene;
  private final TextField bare = new TextField();
  private final Scene bareScene;

  private PlanTypingBenchmark(Desk desk) {
    model = Window.call(() -> Models.plan(desk, new Shell(), Background.immediate(), 0));
    Window.run(
        () -> model.startFromFile(Path.of("sample-sessions/shocks-on-quarry-loop/plan.yaml")));
    Look look = new Look();
    page = Window.call(() -> new PlanPage(look, model, new NoDialogs()));
    // The page is narrowed, not the window: without a screen a window that changes its size is
    // drawn into a picture of the former size, and the toolkit complains at each.
    scene = Window.call(() -> shown(look, page));
    bareScene = Window.call(() -> shown(new Look(), bare));
  }

  private static Scene shown(Look look, Node part) {
    Scene made = new Scene(new StackPane(part), 1000, 700);
    look.dress(made);
    Stage stage = new Stage();
    stage.setScene(made);
    stage.show();
    return made;
  }

  /** Prints the middle of several rounds, milliseconds, each as soon as it is known. */
  public static void main(String[] arguments) throws IOException, InterruptedException {
    Window.start();
    Window.run(Fonts::load);
    Desk desk = PlanDesk.open(Files.createTempDirectory("plan-typing"), 1);
    PlanTypingBenchmark bench = new PlanTypingBenchmark(desk);
    String[] words = {"R. Lind", "R. Linda"};
    String[] minutes = {"2.5", "3"};
    String[] seconds = {"0.5", "0.6"};
    System.out.println("| typed in | ms | of a bare field | of the whole page |");
    double letter = bench.middle(bench.bareScene, turn -> bench.bare.setText(words[turn]));
    double whole = bench.middle(bench.scene, turn -> bench.page.setMaxWidth(1000 - 8 * turn));
    print("a bare text field", letter, letter, whole);
    print("nothing: another width", whole, letter, whole);
    print("rider", bench.letters(turn -> bench.rider().set(words[turn])), letter, whole);
    print("minutes of a lap", bench.letters(turn -> bench.lap().set(minutes[turn])), letter, whole);
    print(
        "worthwhile difference",
        bench.letters(turn -> bench.worthwhile().set(seconds[turn])),
        letter,
        whole);
    Runtime.getRuntime().halt(0);
  }

  private TypedForm.Entry rider() {
    return model.form().field("rider");
  }

  private TypedForm.Entry lap() {
    return model.form().part("timetable").field("lap");
  }

  private TypedForm.Entry worthwhile() {
    return model.primary().orElseThrow().field("worthwhile");
  }

  private static void print(String what, double took, double letter, double whole) {
    System.out.printf(
        Locale.ROOT, "| %s | %.2f | %.1f | %.2f |%n", what, took, took / letter, took / whole);
    System.out.flush();
  }

  private interface Change {
    void make(int turn);
  }

  private double letters(Change change) throws InterruptedException {
    return middle(scene, change);
  }

  private double middle(Scene where, Change change) throws InterruptedException {
    double[] took = new double[ROUNDS];
    for (int round = -WARM; round < ROUNDS; round++) {
      double one = pulse(where, change, Math.floorMod(round, 2));
      if (round >= 0) {
        took[round] = one;
      }
    }
    Arrays.sort(took);
    return took[ROUNDS / 2];
  }

  private double pulse(Scene where, Change change, int turn) throws InterruptedException {
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
          where.addPreLayoutPulseListener(before);
          where.addPostLayoutPulseListener(after);
          Platform.requestNextPulse();
        });
    if (!done.await(PATIENCE_SECONDS, TimeUnit.SECONDS)) {
      throw new IllegalStateException("no pulse came within " + PATIENCE_SECONDS + " s");
    }
    Window.run(
        () -> {
          where.removePreLayoutPulseListener(before);
          where.removePostLayoutPulseListener(after);
        });
    return (at[1] - at[0]) / 1e6;
  }

  private static long now() {
    return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
  }
}
