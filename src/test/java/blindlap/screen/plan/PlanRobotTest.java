package blindlap.screen.plan;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.RamFolder;
import blindlap.desk.Desk;
import blindlap.screen.Models;
import blindlap.screen.NoDialogs;
import blindlap.screen.Window;
import blindlap.screen.part.Background;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import blindlap.screen.part.Shell;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeSet;
import java.util.stream.Collectors;
import javafx.geometry.Bounds;
import javafx.geometry.Point2D;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.Scene;
import javafx.scene.control.ButtonBase;
import javafx.scene.control.ComboBoxBase;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextInputControl;
import javafx.scene.input.KeyCode;
import javafx.scene.input.MouseButton;
import javafx.scene.robot.Robot;
import javafx.stage.Stage;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Somebody who presses and types at random on Plan, as often on every machine; longer with {@code
 * -Drobots=200}, the number of seeds, and {@code -Dacts=400}, how much each does.
 */
class PlanRobotTest {
  private static final int SEEDS = Integer.getInteger("robots", 12);
  private static final int ACTS = Integer.getInteger("acts", 40);
  private static final KeyCode[] KEYS = {
    KeyCode.DIGIT0,
    KeyCode.DIGIT1,
    KeyCode.DIGIT7,
    KeyCode.PERIOD,
    KeyCode.MINUS,
    KeyCode.SPACE,
    KeyCode.K,
    KeyCode.S,
    KeyCode.BACK_SPACE,
    KeyCode.DELETE,
    KeyCode.HOME,
    KeyCode.END,
    KeyCode.DOWN,
    KeyCode.UP,
    KeyCode.ENTER
  };

  @TempDir(factory = RamFolder.class)
  Path folder;

  private final List<Throwable> thrown = Collections.synchronizedList(new ArrayList<>());
  private int presses;
  private int undone;

  @BeforeAll
  static void startWindowSystem() throws InterruptedException {
    Window.start();
    Window.run(Fonts::load);
  }

  @Test
  void whateverIsPressedNothingBreaksUndoBringsEveryStateBackAndNoDraftIsLost() throws Exception {
    Window.run(() -> Thread.currentThread().setUncaughtExceptionHandler((t, e) -> thrown.add(e)));
    for (int seed = 1; seed <= SEEDS; seed++) {
      Path own = Files.createDirectory(folder.resolve("seed" + seed));
      try (Desk desk = PlanDesk.open(own, seed)) {
        new Run(desk, seed).go();
      }
      assertThat(thrown.stream().map(PlanRobotTest::told)).as("seed %d", seed).isEmpty();
    }
    // Two in five acts press, where something is in sight.
    assertThat(presses).isGreaterThan(ACTS * SEEDS / 5);
    assertThat(undone).isPositive();
  }

  /** What was thrown, where, and which calls it came by most often: of a circle, its members. */
  private static String told(Throwable thrown) {
    List<StackTraceElement> calls = List.of(thrown.getStackTrace());
    Map<StackTraceElement, Long> often =
        calls.stream().collect(Collectors.groupingBy(call -> call, Collectors.counting()));
    return thrown
        + "\n  at "
        + calls.stream().limit(30).map(String::valueOf).collect(Collectors.joining("\n  at "))
        + "\n  of "
        + calls.size()
        + " calls, most often "
        + often.entrySet().stream()
            .sorted(Map.Entry.<StackTraceElement, Long>comparingByValue().reversed())
            .limit(40)
            .map(each -> each.getValue() + " x " + each.getKey())
            .collect(Collectors.joining("\n  "));
  }

  /** One seed. */
  private final class Run {
    private final Desk desk;
    private final Random random;
    private final String name;
    private final PlanModel model;
    private final Stage stage;
    private final Scene scene;

    /** States of every draft at which nothing was half typed, but those that were taken back. */
    private final Map<String, List<Map<String, Object>>> rests = new HashMap<>();

    private final TreeSet<String> kept = new TreeSet<>();

    Run(Desk desk, int seed) {
      this.desk = desk;
      this.random = new Random(seed);
      this.name = "seed " + seed;
      this.model = Window.call(() -> Models.plan(desk, new Shell(), Background.immediate(), 0));
      if (seed % 2 == 0) {
        Window.run(() -> model.startFromFile(PlanStates.SAMPLE));
      }
      this.stage = Window.call(Stage::new);
      this.scene =
          Window.call(
              () -> {
                Look look = new Look();
                Scene made = new Scene(new PlanPage(look, model, new NoDialogs()), 1000, 700);
                look.dress(made);
                stage.setScene(made);
                stage.show();
                stage.requestFocus();
                return made;
              });
    }

    void go() {
      Window.run(this::rest);
      for (int act = 0; act < ACTS && thrown.isEmpty(); act++) {
        Window.run(this::act);
        Window.run(this::after);
      }
      Window.run(this::takeAllBack);
      Window.run(this::bringAllBack);
      Window.run(stage::hide);
    }

    private void act() {
      int what = random.nextInt(100);
      if (what < 40) {
        press();
      } else if (what < 75) {
        for (int i = random.nextInt(4); i >= 0; i--) {
          key(KEYS[random.nextInt(KEYS.length)]);
        }
      } else if (what < 85) {
        key(KeyCode.TAB);
      } else if (what < 90) {
        ((ScrollPane) scene.lookup(".scroll-pane")).setVvalue(random.nextDouble());
      } else if (what < 97) {
        takeBack();
      } else {
        doAgain();
      }
    }

    private void key(KeyCode code) {
      if (code != KeyCode.TAB && takesBack(scene.getFocusOwner())) {
        return;
      }
      Robot robot = new Robot();
      robot.keyPress(code);
      robot.keyRelease(code);
    }

    private void press() {
      List<Node> targets = new ArrayList<>();
      Node bar = scene.lookup(".plan-bar");
      targets(scene.getRoot(), bar, lowerEdge(bar), targets);
      if (targets.isEmpty()) {
        return;
      }
      Node target = targets.get(random.nextInt(targets.size()));
      Bounds at = target.localToScreen(target.getLayoutBounds());
      Robot robot = new Robot();
      robot.mouseMove(new Point2D(at.getCenterX(), at.getCenterY()));
      robot.mousePress(MouseButton.PRIMARY);
      robot.mouseRelease(MouseButton.PRIMARY);
      presses++;
    }

    /**
     * @param edge what is scrolled under the bar is not pressed there: the bar is
     */
    private void targets(Node node, @Nullable Node bar, double edge, List<Node> targets) {
      if (!node.isVisible() || node.isDisabled()) {
        return;
      }
      boolean pressed =
          node instanceof ButtonBase
              || node instanceof ComboBoxBase
              || node instanceof TextInputControl
              || node.getStyleClass().contains("title");
      Bounds at = node.localToScene(node.getLayoutBounds());
      boolean inWindow = at.getCenterY() > 0 && at.getCenterY() < edge;
      if (pressed && inWindow && !takesBack(node)) {
        targets.add(node);
      } else if (node instanceof Parent parent) {
        double own = node == bar ? scene.getHeight() : edge;
        parent.getChildrenUnmodifiable().forEach(child -> targets(child, bar, own, targets));
      }
    }

    private double lowerEdge(@Nullable Node bar) {
      return bar == null ? scene.getHeight() : bar.localToScene(bar.getLayoutBounds()).getMinY();
    }

    /** The robot takes back by itself, so that it knows what went. */
    private static boolean takesBack(@Nullable Node node) {
      return node != null && ("take-back".equals(node.getId()) || "do-again".equals(node.getId()));
    }

    private void after() {
      if (model.commit().stepProperty().get() != CommitModel.Step.EDITING) {
        model.commit().back();
      }
      rest();
      kept.addAll(desk.planning().drafts().keySet());
    }

    private void rest() {
      if (model.undo().open()) {
        return;
      }
      List<Map<String, Object>> states =
          rests.computeIfAbsent(model.draft(), draft -> new ArrayList<>());
      Map<String, Object> now = model.form().tree();
      if (states.isEmpty() || !states.get(states.size() - 1).equals(now)) {
        states.add(now);
      }
    }

    /** Taking back comes to a state that was there before. */
    private void takeBack() {
      model.keep();
      rest();
      if (model.undo().takeBack().isPresent()) {
        undone++;
        List<Map<String, Object>> states = rests.get(model.draft());
        Map<String, Object> now = model.form().tree();
        while (!states.isEmpty() && !states.get(states.size() - 1).equals(now)) {
          states.remove(states.size() - 1);
        }
        if (states.isEmpty()) {
          // A step of a few at one press: it was passed, not rested at.
          states.add(now);
        }
      }
    }

    /** Doing again comes to a state that was taken back. */
    private void doAgain() {
      if (model.undo().doAgain().isPresent()) {
        rests.get(model.draft()).add(model.form().tree());
      }
    }

    private void takeAllBack() {
      model.keep();
      rest();
      List<Map<String, Object>> states = rests.get(model.draft());
      int wanted = states.size() - 1;
      int taken = 0;
      while (wanted >= 0) {
        if (model.form().tree().equals(states.get(wanted))) {
          wanted--;
        } else if (model.undo().takeBack().isEmpty()) {
          break;
        } else {
          taken++;
        }
      }
      assertThat(wanted).as("%s: states that undo does not bring back", name).isEqualTo(-1);
      for (int i = 0; i < taken; i++) {
        model.undo().doAgain();
      }
      assertThat(model.form().tree()).as(name).isEqualTo(states.get(states.size() - 1));
    }

    private void bringAllBack() {
      model.keep();
      while (!model.deleted().isEmpty()) {
        model.bringBack();
      }
      assertThat(desk.planning().drafts().keySet()).as(name).containsAll(kept);
    }
  }
}
