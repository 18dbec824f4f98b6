package blindlap.screen;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.TestDay;
import blindlap.plan.Setting;
import blindlap.screen.cover.Idling;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import blindlap.screen.part.Theme;
import blindlap.screen.ride.RideModel;
import blindlap.screen.ride.RidePage;
import blindlap.screen.swap.SwapModel;
import blindlap.screen.swap.SwapPage;
import blindlap.screen.swap.SwapPageTest;
import blindlap.session.SafetyCheck;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.Scene;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.ToggleButton;
import javafx.scene.layout.Pane;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Swap and Ride as they are met on the day: sizes to touch, what a blank page holds, pictures. */
class SwapDayPagesTest {
  /** 12 mm at 96 dots an inch. */
  private static final double TWELVE_MILLIMETRES = 12 / 25.4 * 96;

  private @TempDir Path folder;
  private final List<String> small = new ArrayList<>();
  private int targets;

  @BeforeAll
  static void window() throws InterruptedException {
    Window.start();
    Window.run(Fonts::load);
  }

  /** What is called so and can be seen. */
  private static List<Node> inView(Scene scene, String name) {
    scene.getRoot().applyCss();
    scene.getRoot().layout();
    return scene.getRoot().lookupAll("*").stream()
        .filter(node -> name.equals(node.getAccessibleText()))
        .filter(
            node -> Stream.iterate(node, n -> n != null, Node::getParent).allMatch(Node::isVisible))
        .toList();
  }

  private void measure(Scene scene, String moment) {
    scene.getRoot().applyCss();
    scene.getRoot().layout();
    measure(scene.getRoot(), moment);
  }

  private void measure(Node node, String moment) {
    if (!node.isVisible()) {
      return;
    }
    if (node.isFocusTraversable() && !(node instanceof ScrollPane)) {
      targets++;
      Bounds size = node.getLayoutBounds();
      if (Math.min(size.getWidth(), size.getHeight()) < TWELVE_MILLIMETRES) {
        small.add(
            String.format(
                Locale.ROOT,
                "%s: %s %.0f x %.0f",
                moment,
                node.getAccessibleText() == null ? node : node.getAccessibleText(),
                size.getWidth(),
                size.getHeight()));
      }
      return;
    }
    if (node instanceof Parent parent) {
      parent.getChildrenUnmodifiable().forEach(child -> measure(child, moment));
    }
  }

  private static Look look(Theme theme) {
    Look look = new Look();
    look.themeProperty().set(theme);
    return look;
  }

  private static Scene scene(Look look, Parent page, int height) {
    Scene scene = new Scene(page, 1280, height);
    look.dress(scene);
    return scene;
  }

  private static void unlock(TestDay day, SwapModel swap) {
    swap.phrase(day.phrase());
    swap.choosePin("4711");
  }

  private static void workAtTheBike(TestDay day, SwapModel swap, int stint) {
    swap.work().begin();
    for (Setting setting : day.helper().work(stint).settings()) {
      swap.work().measured(setting.name(), setting.value());
    }
    for (SafetyCheck check : SafetyCheck.values()) {
      swap.work().confirm(check.name(), true);
    }
    if (stint > 0) {
      swap.work().riderFit(true);
    }
    day.clock().move(Duration.ofMinutes(7));
    swap.touch();
    swap.tick();
  }

  private static void handle(TestDay day, SwapModel swap, int stint) {
    workAtTheBike(day, swap, stint);
    swap.work().handOver();
  }

  private static void bikeIsBack(SwapModel swap) {
    swap.bikeReturned();
    swap.reopen("4711");
  }

  @Test
  void everythingToTouchOnSwapIsTwelveMillimetresOrMore() {
    try (TestDay day = new TestDay(folder, TestDay.EIGHT, 1)) {
      Window.run(
          () -> {
            Look look = look(Theme.SUNLIGHT);
            SwapModel swap = SwapPageTest.model(day);
            Scene scene = scene(look, new SwapPage(look, swap, () -> {}), 1300);
            measure(scene, "phrase");
            swap.phrase(day.phrase());
            measure(scene, "PIN");
            swap.choosePin("4711");
            measure(scene, "not begun");
            swap.work().begin();
            swap.work().measured("sag", "20");
            measure(scene, "outside tolerance");
            handle(day, swap, 0);
            measure(scene, "safe");
            bikeIsBack(swap);
            measure(scene, "first stint");
            workAtTheBike(day, swap, 1);
            day.clock().move(Duration.ofMinutes(1));
            swap.touch();
            swap.tick();
            assertThat(swap.work().overrunProperty().get()).isTrue();
            measure(scene, "overrun");
            assertThat(inView(scene, "What happened? Sealed until the end.")).isEmpty();
            Node yes = inView(scene, "Longer than planned: was there a mishap?: yes").get(0);
            ((ToggleButton) yes).fire();
            assertThat(inView(scene, "What happened? Sealed until the end.")).hasSize(1);
            measure(scene, "mishap");
            Window.picture(scene, "swap-mishap");
            swap.hide();
            measure(scene, "blank");
            scene.setRoot(new Pane());
          });
      assertThat(targets).isGreaterThan(40);
      assertThat(small).isEmpty();
    }
  }

  @Test
  void everythingToTouchOnRideIsTwelveMillimetresOrMore() {
    try (TestDay day = new TestDay(folder, TestDay.EIGHT, 1)) {
      Window.run(
          () -> {
            Look look = look(Theme.SUNLIGHT);
            RideModel ride = Models.ride(day);
            Scene scene = scene(look, new RidePage(look, ride, () -> {}), 1300);
            measure(scene, "waiting");
            ride.handedOver();
            measure(scene, "warm-up");
            ride.warmUpRidden();
            ride.handedOver();
            measure(scene, "sheet");
            ride.watches().timedBy("RIDER");
            ride.watches().start("lap time");
            measure(scene, "watch running");
            ride.watches().stop("lap time");
            measure(scene, "watch stopped");
            ride.lapDone();
            measure(scene, "done");
            scene.setRoot(new Pane());
          });
      assertThat(targets).isGreaterThan(60);
      assertThat(small).isEmpty();
    }
  }

  @Test
  void aBlankPageHoldsNothingOfTheKeyNotEvenHidden() {
    try (TestDay day = new TestDay(folder, TestDay.EIGHT, 1)) {
      List<String> seen = new ArrayList<>();
      Window.run(
          () -> {
            Look look = look(Theme.PAPER);
            SwapModel swap = SwapPageTest.model(day);
            SwapPage page = new SwapPage(look, swap, () -> {});
            Scene scene = scene(look, page, 1000);
            unlock(day, swap);
            handle(day, swap, 0);
            bikeIsBack(swap);
            swap.work().begin();
            seen.add(SceneText.of(scene));
            swap.hide();
            seen.add(SceneText.of(scene));
            swap.reopen("4711");
            seen.add(SceneText.of(scene));
            day.clock().move(Idling.LIMIT);
            swap.tick();
            seen.add(SceneText.of(scene));
            scene.setRoot(new Pane());
          });
      String code = "code " + day.state().code(1);
      for (int open : new int[] {0, 2}) {
        assertThat(seen.get(open)).contains("Shock", code, "Real swap");
      }
      for (int blank : new int[] {1, 3}) {
        assertThat(seen.get(blank))
            .contains("Helper", "look away", "Day PIN")
            .doesNotContain("Shock", code, "swap.", "ummy", "compression");
      }
      assertThat(seen.get(3)).isEqualTo(seen.get(1));
    }
  }

  @Test
  void leavingThePageClosesIt() {
    try (TestDay day = new TestDay(folder, TestDay.EIGHT, 1)) {
      SwapModel swap = SwapPageTest.model(day);
      Window.run(
          () -> {
            Look look = look(Theme.PAPER);
            Scene scene = scene(look, new SwapPage(look, swap, () -> {}), 1000);
            unlock(day, swap);
            scene.setRoot(new Pane());
          });
      assertThat(swap.phaseProperty().get()).isEqualTo(SwapModel.Phase.BLANK);
    }
  }

  @Test
  void picturesForTheManualAreTakenInEveryTheme() {
    for (Theme theme : Theme.values()) {
      String name = theme.name().toLowerCase(Locale.ROOT);
      try (TestDay day = new TestDay(folder, TestDay.SIXTEEN, 40 + theme.ordinal())) {
        Window.run(() -> take(day, theme, name));
      }
    }
    assertThat(Path.of("target", "pictures", "swap-dark.png")).isNotEmptyFile();
    assertThat(Path.of("target", "pictures", "ride-dark.png")).isNotEmptyFile();
  }

  private void take(TestDay day, Theme theme, String name) {
    Look look = look(theme);
    SwapModel swap = SwapPageTest.model(day);
    RideModel ride = Models.ride(day);
    unlock(day, swap);
    handle(day, swap, 0);
    ride.tick();
    ride.warmUpRidden();
    bikeIsBack(swap);
    swap.work().begin();
    swap.work().measured("compression", day.helper().work(1).settings().get(0).value());
    swap.work().measured("sag", "24.5");
    swap.work().confirm("AXLES", true);
    swap.work().confirm("BRAKES", true);
    day.clock().move(Duration.ofSeconds(192));
    swap.touch();
    swap.tick();
    // Made only now, so that the fields hold what was entered.
    Scene helper = scene(look, new SwapPage(look, swap, () -> {}), 800);
    Window.picture(helper, "swap-" + name);
    swap.hide();
    Window.picture(helper, "swap-blank-" + name);
    swap.reopen("4711");
    handle(day, swap, 1);
    ride.tick();
    ride.watches().timedBy("STARTER");
    ride.watches().start("lap time");
    day.clock().move(Duration.ofSeconds(93));
    ride.watches().stop("lap time");
    ride.answer("grip in the rocks", BigDecimal.valueOf(62));
    ride.answer("feet off the pedals", BigDecimal.ONE);
    Scene rider = scene(look, new RidePage(look, ride, () -> {}), 1000);
    Window.picture(rider, "ride-" + name);
    helper.setRoot(new Pane());
    rider.setRoot(new Pane());
  }
}
