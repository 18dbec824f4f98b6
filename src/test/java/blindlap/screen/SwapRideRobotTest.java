package blindlap.screen;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.RamFolder;
import blindlap.desk.MistakeLog;
import blindlap.desk.TestDay;
import blindlap.ride.RideSheet;
import blindlap.screen.part.Background;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.HoldButton;
import blindlap.screen.part.LineScale;
import blindlap.screen.part.Look;
import blindlap.screen.part.Shell;
import blindlap.screen.ride.RideModel;
import blindlap.screen.ride.RidePage;
import blindlap.screen.swap.SwapModel;
import blindlap.screen.swap.SwapPage;
import blindlap.screen.swap.SwapSheet;
import blindlap.session.Fact;
import blindlap.session.HelperEntry;
import blindlap.session.StoredEntry;
import blindlap.session.day.DeviationKind;
import blindlap.session.day.LapId;
import blindlap.session.day.Source;
import blindlap.store.SqliteNotebook;
import blindlap.wording.day.SafetyRow;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeSet;
import java.util.function.Supplier;
import javafx.event.Event;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.control.ButtonBase;
import javafx.scene.control.TextInputControl;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.Pane;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Somebody presses and types at random on Swap and Ride, in one window and by one clock. Whatever
 * is pressed: nothing is thrown, nothing that was called saved is lost, no stint is ridden without
 * a record of how it came about, and no rider's page holds anything of the key. The property robot
 * gives seeds and seconds, such as -Drobot=200,30.
 */
class SwapRideRobotTest {
  private static final int LEAST = 60;

  private static final String PIN = "4711";
  private static final List<String> TYPED =
      List.of("26", "9", "6", "1.55", "24,5", "1,2.3", "", "soft", "x y", "1:33.1", "−3", "7");
  private static final List<String> KEY =
      List.of("Real swap", "Dummy swap", "comes off", "Next swaps");
  private static final KeyCode[] KEYS = {
    KeyCode.A,
    KeyCode.B,
    KeyCode.L,
    KeyCode.P,
    KeyCode.R,
    KeyCode.S,
    KeyCode.W,
    KeyCode.Y,
    KeyCode.N,
    KeyCode.DIGIT1,
    KeyCode.DIGIT2,
    KeyCode.DIGIT9,
    KeyCode.ENTER,
    KeyCode.SPACE,
    KeyCode.TAB,
    KeyCode.RIGHT,
    KeyCode.LEFT,
    KeyCode.ESCAPE
  };

  private static final int[] WANTED = wanted();

  private @TempDir(factory = RamFolder.class) Path folder;

  private static int[] wanted() {
    String[] parts = System.getProperty("robot", "12,3").split(",");
    return new int[] {Integer.parseInt(parts[0]), Integer.parseInt(parts[1])};
  }

  @BeforeAll
  static void window() throws InterruptedException {
    Window.start();
    Window.run(Fonts::load);
  }

  /** One robot at one window. */
  private final class Robot {
    private final SplittableRandom random;
    private final TestDay day;
    private final Path file;
    private final Path log;
    private final Shell shell = new Shell();
    private final SwapModel swap;
    private final RideModel ride;
    private final Scene scene;
    private final Set<String> acknowledged = new TreeSet<>();
    private int presses;

    Robot(long seed) {
      random = new SplittableRandom(seed);
      file = folder.resolve("robot-" + seed + ".blindlap");
      day = new TestDay(file, TestDay.EIGHT, 1 + seed % 7, Optional.empty());
      log = folder.resolve("mistakes-" + seed + ".log");
      MistakeLog mistakes = new MistakeLog(log, day.clock(), "test");
      Background background = Background.by(Runnable::run);
      Mistakes.catchAll(mistakes, background, said -> {});
      swap = Models.swap(day);
      ride = Models.ride(day);
      Look look = new Look();
      Map<Shell.Page, Supplier<? extends Node>> makers = new EnumMap<>(Shell.Page.class);
      makers.put(
          Shell.Page.SWAP,
          () ->
              new SwapPage(
                  look,
                  swap,
                  () -> shell.go(Shell.Page.RIDE),
                  () -> shell.go(Shell.Page.RIDE),
                  () -> shell.go(Shell.Page.RIDE)));
      makers.put(Shell.Page.RIDE, () -> new RidePage(look, ride, () -> shell.go(Shell.Page.SWAP)));
      shell.open(Shell.Page.SWAP, day.id());
      scene = new Scene(new ShellView(look, shell, makers, List.of()), 1366, 768);
      look.dress(scene);
      ride.savedProperty().addListener((o, before, now) -> remember(now));
      swap.events().saidProperty().addListener((o, before, now) -> remember(now));
    }

    /** What stands in the notebook at a moment when the page says that it does. */
    private void remember(String said) {
      if (!said.isEmpty()) {
        day.desk().notebook().entries(day.id()).forEach(e -> acknowledged.add(e.hash().hex()));
      }
    }

    void press(Duration time) {
      long until = System.nanoTime() + time.toNanos();
      // However slow the machine, so many at least.
      while (System.nanoTime() < until || presses < LEAST) {
        Window.run(this::once);
      }
    }

    private void once() {
      for (int i = 0; i < 20; i++) {
        scene.getRoot().applyCss();
        scene.getRoot().layout();
        one();
        presses++;
        if (shell.pageProperty().get() == Shell.Page.RIDE) {
          assertThat(SceneText.of(scene)).doesNotContain(KEY);
        }
      }
    }

    private void one() {
      switch (random.nextInt(13)) {
        case 0, 1, 2, 3 -> button();
        case 4, 5 -> type();
        case 6 -> key();
        case 7 -> time(Duration.ofMillis(random.nextInt(3_000)));
        case 8 -> time(Duration.ofMinutes(random.nextInt(4)));
        case 9 -> handling();
        case 10 -> door();
        case 11 -> riding();
        default -> shell.go(random.nextBoolean() ? Shell.Page.SWAP : Shell.Page.RIDE);
      }
    }

    /** As a rider would: a lap's time goes by, and what leads on is said. */
    private void riding() {
      shell.go(Shell.Page.RIDE);
      time(Duration.ofSeconds(60 + random.nextInt(200)));
      RideSheet sheet = ride.sheetProperty().get();
      switch (sheet.stage()) {
        case WARM_UP -> ride.warmUpRidden();
        case SETTLING, SCORED -> ride.lapDone();
        case DONE -> ride.next();
        case HAND_OVER, NO_SESSION, CAP, ALL_RIDDEN, OVER -> {}
      }
    }

    private void time(Duration by) {
      day.clock().move(by);
      if (random.nextInt(3) > 0) {
        swap.touch();
      }
      swap.tick();
      ride.tick();
    }

    private <T> List<T> shown(Class<T> kind) {
      List<T> found = new ArrayList<>();
      for (Node node : scene.getRoot().lookupAll("*")) {
        if (kind.isInstance(node) && !node.isDisabled() && visible(node)) {
          found.add(kind.cast(node));
        }
      }
      return found;
    }

    private static boolean visible(Node node) {
      for (Node at = node; at != null; at = at.getParent()) {
        if (!at.isVisible()) {
          return false;
        }
      }
      return true;
    }

    private void button() {
      List<ButtonBase> buttons = shown(ButtonBase.class);
      if (buttons.isEmpty()) {
        return;
      }
      ButtonBase button = buttons.get(random.nextInt(buttons.size()));
      boolean ends = button instanceof Button b && b.getText().matches("(Close|End) the day.*");
      if (ends && random.nextInt(60) > 0) {
        return;
      }
      if (button instanceof HoldButton) {
        button.arm();
        day.clock().move(Duration.ofMillis(random.nextInt(2_000)));
      }
      button.fire();
      if (button instanceof HoldButton) {
        button.disarm();
      }
    }

    private void type() {
      List<TextInputControl> fields = shown(TextInputControl.class);
      if (fields.isEmpty()) {
        return;
      }
      TextInputControl field = fields.get(random.nextInt(fields.size()));
      field.requestFocus();
      field.setText(TYPED.get(random.nextInt(TYPED.size())));
      if (random.nextBoolean()) {
        fire(KeyCode.ENTER, false);
      }
    }

    private void key() {
      fire(KEYS[random.nextInt(KEYS.length)], random.nextInt(4) == 0);
      List<LineScale> lines = shown(LineScale.class);
      if (!lines.isEmpty()) {
        lines.get(random.nextInt(lines.size())).requestFocus();
      }
    }

    private void fire(KeyCode code, boolean alt) {
      Node target = scene.getFocusOwner() == null ? scene.getRoot() : scene.getFocusOwner();
      for (var type : List.of(KeyEvent.KEY_PRESSED, KeyEvent.KEY_RELEASED)) {
        Event.fireEvent(
            target, new KeyEvent(type, "", code.getName(), code, false, false, alt, false));
      }
    }

    /** Now and then somebody knows what to do, so that the robot gets through a day. */
    private void door() {
      switch (swap.phaseProperty().get()) {
        case PHRASE -> swap.phrase(random.nextInt(4) == 0 ? "wrong words" : day.phrase());
        case CHOOSE_PIN -> swap.choosePin(PIN);
        case BLANK -> swap.reopen(random.nextInt(9) == 0 ? "0000" : PIN);
        case SAFE, OPEN, ALL_DONE, NO_SESSION, OVER -> {}
      }
    }

    private void handling() {
      if (swap.phaseProperty().get() != SwapModel.Phase.OPEN) {
        return;
      }
      var sheet = Objects.requireNonNull(swap.work().sheetProperty().get());
      swap.work().begin();
      day.helper()
          .settings(sheet.stint(), sheet.fitted())
          .forEach(s -> swap.work().measured(s.name(), s.value()));
      sheet.confirmed().forEach(c -> swap.work().confirm(c.key(), true));
      if (sheet.fitAsked()) {
        swap.work().riderFit(true);
      }
      time(Duration.ofMinutes(7));
      if (swap.work().overrunProperty().get()) {
        swap.work().mishap(random.nextBoolean(), "");
      }
      swap.work().handOver();
    }

    void judge() {
      boolean open = swap.phaseProperty().get() == SwapModel.Phase.OPEN;
      Window.run(
          () -> {
            swap.closing();
            if (open) {
              draft();
            }
            scene.setRoot(new Pane());
          });
      assertThat(log).as("nothing was thrown").doesNotExist();
      day.close();
      try (SqliteNotebook notebook =
          SqliteNotebook.open(file, new byte[16], day.clock().instant())) {
        List<StoredEntry> entries = notebook.entries(day.id());
        assertThat(entries.stream().map(e -> e.hash().hex()).toList())
            .as("what was called saved")
            .containsAll(acknowledged);
        stints(entries);
        assertThat(notebook.verify().sound()).isTrue();
      }
    }

    /** What the helper has in hand when the window closes is found again. */
    private void draft() {
      SwapSheet sheet = Objects.requireNonNull(swap.work().sheetProperty().get());
      HelperEntry kept = day.helper().unfinished(sheet.stint()).orElseThrow().entry();
      assertThat(kept.note()).isEqualTo(sheet.note());
      assertThat(kept.fitted()).isEqualTo(sheet.fitted());
      sheet.settings().stream()
          .filter(row -> !row.measured().isEmpty())
          .forEach(row -> assertThat(kept.measured()).containsKey(row.name()));
      assertThat(kept.confirmed())
          .hasSize((int) sheet.confirmed().stream().filter(SafetyRow::yes).count());
    }

    /**
     * Every stint that was ridden was handed over, and whoever went without the helper is named.
     */
    private void stints(List<StoredEntry> entries) {
      Set<Integer> handled = new TreeSet<>();
      Set<Integer> out = new TreeSet<>();
      List<LapId> ridden = new ArrayList<>();
      for (int i = 0; i < entries.size(); i++) {
        Fact fact = entries.get(i).entry().fact();
        if (fact instanceof Fact.StintHandled done) {
          handled.add(done.stint());
        } else if (fact instanceof Fact.BikeHandedOver given) {
          out.add(given.stint());
          boolean named =
              i + 1 < entries.size()
                  && entries.get(i + 1).entry().fact() instanceof Fact.DeviationNoted noted
                  && noted.stint() == given.stint()
                  && noted.kind() == DeviationKind.WITHOUT_HAND_OVER;
          assertThat(handled.isEmpty() || handled.contains(given.stint()) || named)
              .as("stint %d is handed over by somebody", given.stint())
              .isTrue();
        } else if (fact instanceof Fact.LapRidden lap && lap.source() == Source.SCREEN) {
          ridden.add(lap.lap());
          assertThat(out).as("handed over before it was ridden").contains(lap.lap().stint());
        }
      }
      for (int i = 0; i < ridden.size(); i++) {
        assertThat(ridden.get(i)).isEqualTo(new LapId(i + 1, 1));
      }
      stintsSeen = Math.max(stintsSeen, ridden.size());
      handledSeen = Math.max(handledSeen, handled.size());
    }
  }

  private int stintsSeen;
  private int handledSeen;

  @Test
  void whateverIsPressedNothingSavedIsLostAndNoStintIsSkipped() {
    for (long seed = 1; seed <= WANTED[0]; seed++) {
      long each = seed;
      Robot robot = Window.call(() -> new Robot(each));
      try {
        robot.press(Duration.ofSeconds(WANTED[1]));
        robot.judge();
      } catch (AssertionError e) {
        throw new AssertionError("seed " + seed, e);
      }
    }
    assertThat(handledSeen).as("the helper got somewhere").isGreaterThan(1);
    assertThat(stintsSeen).as("the rider got somewhere").isPositive();
  }
}
