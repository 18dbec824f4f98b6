package blindlap.screen.ride;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.RamFolder;
import blindlap.desk.TestDay;
import blindlap.ride.RideSheet;
import blindlap.screen.Keyboard;
import blindlap.screen.Models;
import blindlap.screen.OneRideDay;
import blindlap.screen.Outside;
import blindlap.screen.SceneText;
import blindlap.screen.Window;
import blindlap.screen.part.Background;
import blindlap.screen.part.Deaf;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.HoldButton;
import blindlap.screen.part.Look;
import blindlap.screen.part.PhonesDoor;
import blindlap.session.Fact;
import blindlap.session.day.DeviationKind;
import blindlap.session.day.LapId;
import blindlap.session.day.Step;
import blindlap.session.day.VoidEvent;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import javafx.beans.property.SimpleStringProperty;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.control.Labeled;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.ToggleButton;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.Pane;
import javafx.stage.Stage;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Where things stand on the Ride page, what it does not hear, and what is held. */
class RidePlacesTest {
  private static final int HIGH = 768;

  /** As wide as the screen that tests have. */
  private static final int SHOWN = 1280;

  private static final String TIME = "lap time";

  private @TempDir(factory = RamFolder.class) Path folder;
  private TestDay day;
  private RideModel ride;
  private Look look;
  private Stage stage;
  private Scene scene;
  private Keyboard keys;

  @BeforeAll
  static void window() throws InterruptedException {
    Window.start();
    Window.run(Fonts::load);
  }

  @BeforeEach
  void open() {
    day = new TestDay(folder, TestDay.EIGHT, 2);
    Window.run(
        () -> {
          look = new Look();
          ride = Models.ride(day);
          scene = new Scene(new RidePage(look, ride, () -> {}), SHOWN, HIGH);
          look.dress(scene);
          stage = new Stage();
          stage.setScene(scene);
          stage.show();
          stage.requestFocus();
          keys = new Keyboard(scene);
        });
  }

  @AfterEach
  void close() {
    Window.run(
        () -> {
          scene.setRoot(new Pane());
          stage.close();
        });
    day.close();
  }

  private void heard() {
    Window.run(() -> day.clock().move(Deaf.FOR));
  }

  private Button button(String words) {
    return scene.getRoot().lookupAll(".button").stream()
        .filter(n -> n instanceof Button b && b.isVisible() && b.getText().startsWith(words))
        .map(Button.class::cast)
        .findFirst()
        .orElseThrow(() -> new AssertionError("there is no button " + words));
  }

  private ToggleButton toggle(String words) {
    return scene.getRoot().lookupAll(".toggle-button").stream()
        .filter(n -> n instanceof ToggleButton b && b.getText().startsWith(words))
        .map(ToggleButton.class::cast)
        .findFirst()
        .orElseThrow(() -> new AssertionError("there is no box " + words));
  }

  private void look(String moment, Map<String, List<String>> wrong) {
    Window.run(
        () -> {
          Window.look(scene, "ride-" + (int) scene.getWidth() + "-" + moment.replace(' ', '-'));
          List<String> found = Outside.of(scene);
          if (!found.isEmpty()) {
            wrong.put(moment, found);
          }
        });
  }

  @ParameterizedTest
  @CsvSource({"1366,768", "1920,1080"})
  void nothingOfThePageLiesOutsideAWindowOf1366By768OrMoreInAnyStage(int width, int height) {
    Map<String, List<String>> wrong = new LinkedHashMap<>();
    Window.run(
        () -> {
          scene.setRoot(new Pane());
          PhonesDoor door =
              new PhonesDoor(new SimpleStringProperty("Phones: on, none connected …"), () -> {});
          RideWays ways = new RideWays(() -> {}, null, door);
          scene = new Scene(new RidePage(look, ride, null, () -> {}, ways), width, height);
          look.dress(scene);
        });
    look("wait", wrong);
    Window.run(ride::handedOver);
    look("warm-up", wrong);
    Window.run(ride::warmUpRidden);
    Window.run(ride::handedOver);
    look("ready and guess asked", wrong);
    Window.run(() -> ride.watches().timedBy("RIDER"));
    Window.run(() -> ride.watches().start(TIME));
    look("watch running", wrong);
    Window.run(() -> ride.done().press());
    look("done asked", wrong);
    Window.run(() -> ride.watches().stop(TIME));
    Window.run(() -> ride.answer("grip in the rocks", BigDecimal.TEN));
    look("watch stopped", wrong);
    Window.run(() -> button("Something happened").fire());
    look("events open", wrong);
    Window.run(() -> toggle("crash").fire());
    look("void asked", wrong);
    Window.run(() -> button("Keep it").fire());
    Window.run(() -> button("End the day early").fire());
    look("end asked", wrong);
    Window.run(() -> button("Ride on").fire());
    Window.run(() -> button("Back to the sheet").fire());
    Window.run(ride::lapDone);
    look("done", wrong);
    Window.run(ride::next);
    look("wait again", wrong);
    Window.run(ride::handedOver);
    look("next lap, the last may be opened again", wrong);
    Window.run(ride::lapDone);
    Window.run(ride::next);
    Window.run(() -> ride.events().cutShort("rain", "R. Lind", false));
    look("all ridden", wrong);
    Window.run(() -> button("Close the day").fire());
    look("close asked", wrong);
    assertThat(wrong).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(doubles = {1, 2})
  void aStepNeverStandsWhereTheStepBeforeItStood(double scale) {
    Window.run(() -> look.textScaleProperty().set(scale));
    List<Bounds> places = new ArrayList<>();
    Window.run(ride::handedOver);
    Window.run(ride::warmUpRidden);
    Window.run(ride::handedOver);
    places.add(place("Done with lap 1"));
    Window.run(ride.done()::press);
    Bounds asked = place("Done as it is");
    assertThat(asked.intersects(places.get(0))).isFalse();
    Window.run(ride::lapDone);
    places.add(place("On to the next lap"));
    assertThat(asked.intersects(places.get(1))).isFalse();
    Window.run(ride::next);
    places.add(place("Hold: the bike has been handed over"));
    Window.run(ride::handedOver);
    places.add(place("Done with lap 2"));
    for (int i = 1; i < places.size(); i++) {
      assertThat(places.get(i).intersects(places.get(i - 1))).as("step %d", i).isFalse();
    }
  }

  private Bounds place(String words) {
    return Window.call(
        () -> {
          scene.getRoot().applyCss();
          scene.getRoot().layout();
          Button button = button(words);
          return button.localToScene(button.getLayoutBounds());
        });
  }

  @Test
  void anythingPressedWithinEightTenthsOfASecondOfAChangeIsNotHeard() {
    Window.run(ride::handedOver);
    keys.goTo("Warm-up lap ridden");
    keys.press(KeyCode.SPACE);
    assertThat(day.state().warmUps()).isZero();
    Window.run(() -> day.clock().move(Deaf.FOR.minusMillis(1)));
    keys.press(KeyCode.SPACE);
    assertThat(day.state().warmUps()).isZero();
    Window.run(() -> day.clock().move(java.time.Duration.ofMillis(1)));
    keys.press(KeyCode.SPACE);
    assertThat(day.state().warmUps()).isEqualTo(1);
  }

  private void hold(KeyCode key, java.time.Duration time) {
    keys.hold(key, () -> day.clock().move(time));
  }

  @ParameterizedTest
  @ValueSource(strings = {"SPACE", "ENTER"})
  void theHandOverIsHeldForASecondByKeyAndAShorterPressSaysSo(String name) {
    KeyCode key = KeyCode.valueOf(name);
    heard();
    keys.goTo("Hold: the bike has been handed over");
    hold(key, HoldButton.LONG.minusMillis(1));
    assertThat(day.state().handedOver(0)).isFalse();
    hold(key, HoldButton.LONG);
    assertThat(day.state().handedOver(0)).isTrue();
  }

  @Test
  void takingTheLastAnswerBackLeavesNoButtonUnderTheKeyThatDidIt() {
    Window.run(ride::handedOver);
    Window.run(ride::warmUpRidden);
    Window.run(ride::handedOver);
    heard();
    keys.goTo("one more");
    keys.press(KeyCode.SPACE);
    keys.goTo("Take back: feet off the pedals");
    keys.press(KeyCode.SPACE);
    heard();
    keys.press(KeyCode.SPACE);
    keys.press(KeyCode.ENTER);
    assertThat(day.state().lap(new LapId(1, 1)).orElseThrow().values()).isEmpty();
    assertThat(ride.sheet().stage()).isEqualTo(RideSheet.Stage.SCORED);
  }

  private void handle(int stint) {
    Window.run(() -> new OneRideDay(day, ride, true, moment -> {}).handle(stint));
  }

  @Test
  void whereTheHelperUsesThePageTheRiderWaitsAndGoingOnAloneIsADeviation() {
    handle(0);
    Window.run(ride::warmUpRidden);
    assertThat(ride.sheet().helperHandsOver()).isTrue();
    Window.run(() -> assertThat(button("Hold: handed over without the helper's page")).isNotNull());
    day.clock().move(java.time.Duration.ofMinutes(8));
    handle(1);
    assertThat(ride.sheet().stage()).isEqualTo(RideSheet.Stage.SCORED);
    assertThat(day.state().deviations()).isEmpty();
    Window.run(ride::lapDone);
    Window.run(ride::next);
    day.clock().move(java.time.Duration.ofMinutes(8));
    Window.run(ride::handedOver);
    assertThat(day.state().deviations())
        .extracting(Fact.DeviationNoted::kind)
        .containsExactly(DeviationKind.WITHOUT_HAND_OVER);
    Window.run(ride::lapDone);
    Window.run(ride::next);
    day.clock().move(java.time.Duration.ofSeconds(252));
    Window.run(ride::handedOver);
    assertThat(day.state().deviations())
        .extracting(Fact.DeviationNoted::kind)
        .containsExactly(
            DeviationKind.WITHOUT_HAND_OVER,
            DeviationKind.WITHOUT_HAND_OVER,
            DeviationKind.EARLY_HAND_OVER);
    assertThat(day.state().deviations().get(2).what()).isEqualTo("252 s of 420 s");
    assertThat(Window.call(() -> scene.getRoot().lookupAll(".label").toString()))
        .doesNotContain("early");
  }

  @Test
  void voidAsksOnceAndAKeyThatBouncesKeepsTheLap() {
    Window.run(ride::handedOver);
    Window.run(ride::warmUpRidden);
    Window.run(ride::handedOver);
    heard();
    Window.run(() -> button("Something happened").fire());
    heard();
    LapId lap = new LapId(1, 1);
    for (int time = 0; time < 2; time++) {
      keys.goTo("crash");
      keys.press(KeyCode.SPACE);
      assertThat(shown()).contains("Lap 1 would be void: crash.");
      keys.press(time == 0 ? KeyCode.SPACE : KeyCode.ENTER);
      assertThat(day.state().lap(lap)).isEmpty();
      assertThat(shown()).as("not heard").contains("Lap 1 would be void: crash.");
      heard();
      keys.press(time == 0 ? KeyCode.SPACE : KeyCode.ENTER);
      assertThat(day.state().lap(lap)).isEmpty();
      heard();
    }
    keys.goTo("crash");
    keys.press(KeyCode.SPACE);
    heard();
    keys.goTo("Void lap 1");
    keys.press(KeyCode.SPACE);
    assertThat(day.state().lap(lap).orElseThrow().voided().orElseThrow().event())
        .isEqualTo(VoidEvent.CRASH);
    assertThat(Window.call(() -> button("Take back: the void of lap 1").isVisible())).isTrue();
    Window.run(ride::next);
    heard();
    Window.run(() -> button("Something happened").fire());
    assertThat(shown()).contains("Lap 1 is void: crash.");
    heard();
    keys.goTo("Take back: the void of lap 1");
    keys.press(KeyCode.SPACE);
    assertThat(day.state().lap(lap).orElseThrow().voided()).isEmpty();
    assertThat(shown()).doesNotContain("is void");
  }

  @Test
  void withLargeTextTheKeyThatMadeALapVoidHasNoButtonUnderItAfterwards() {
    Window.run(() -> look.textScaleProperty().set(2));
    toTheSheet();
    keys.choose("Something happened");
    heard();
    keys.choose("crash");
    heard();
    keys.choose("Void lap 1");
    heard();
    keys.press(KeyCode.SPACE); // Enter would be the page's next step, wherever the focus is
    assertThat(day.state().lap(new LapId(1, 1)).orElseThrow().voided()).isPresent();
    assertThat(keys.here()).contains("Scores, note and guess are saved.");
  }

  @Test
  void theDayIsEndedEarlyOnThePageWithItsReasonAfterItAskedOnce() {
    Window.run(ride::handedOver);
    Window.run(ride::warmUpRidden);
    Window.run(ride::handedOver);
    Window.run(ride::lapDone);
    heard();
    keys.choose("Something happened");
    heard();
    keys.goTo("Why? Dark");
    keys.type("rain");
    keys.press(KeyCode.ENTER);
    assertThat(keys.here()).startsWith("Who decided?");
    keys.type("R. Lind");
    keys.choose("End the day early");
    assertThat(shown()).contains("nothing brings the day back");
    keys.press(KeyCode.SPACE);
    assertThat(day.state().cutShort()).as("a second press on the same key").isEmpty();
    assertThat(shown()).as("not heard").contains("nothing brings the day back");
    heard();
    keys.press(KeyCode.SPACE);
    assertThat(day.state().cutShort()).as("kept by the button with the focus").isEmpty();
    heard();
    keys.choose("End the day early");
    heard();
    keys.choose("End the day early");
    Fact.DayCutShort cut = day.state().cutShort().orElseThrow();
    assertThat(List.of(cut.reason(), cut.decidedBy())).containsExactly("rain", "R. Lind");
    assertThat(cut.lastStint()).isEqualTo(1);
    assertThat(shown()).contains("The day ends after stint 1.");
    heard();
    keys.choose("Back to the sheet");
    heard();
    keys.choose("On to the end of the day");
    heard();
    assertThat(shown()).contains("Every lap is ridden.");
    keys.choose("Close the day");
    heard();
    keys.choose("Close the day");
    assertThat(day.state().step()).isEqualTo(Step.DAY_CLOSED);
  }

  /** The words of what is in view, of all that has the focus or may be pressed. */
  private List<String> hidden(String... words) {
    return Window.call(
        () -> {
          List<String> hidden = new ArrayList<>();
          for (String each : words) {
            Node node =
                scene.getRoot().lookupAll("*").stream()
                    .filter(n -> inside(n))
                    .filter(n -> n instanceof Labeled l && l.getText().startsWith(each))
                    .findFirst()
                    .orElseThrow(() -> new AssertionError("there is no " + each));
            if (!inView(node)) {
              hidden.add(each);
            }
          }
          return hidden;
        });
  }

  private static boolean inside(Node node) {
    for (Node up = node; up != null; up = up.getParent()) {
      if (!up.isVisible()) {
        return false;
      }
    }
    return true;
  }

  private static boolean inView(Node node) {
    Bounds at = node.localToScene(node.getLayoutBounds());
    for (Node up = node.getParent(); up != null; up = up.getParent()) {
      Bounds view = up.localToScene(up.getLayoutBounds());
      if (up instanceof ScrollPane
          && (at.getMinY() < view.getMinY() - 1 || at.getMaxY() > view.getMaxY() + 1)) {
        return false;
      }
    }
    return at.getMinY() >= -1 && at.getMaxY() <= HIGH + 1;
  }

  @Test
  void withLargeTextWhateverAPressOpensComesIntoViewWhole() {
    Window.run(() -> look.textScaleProperty().set(2));
    toTheSheet();
    keys.choose("Something happened");
    heard();
    keys.choose("crash");
    assertThat(hidden("Keep it", "Void lap 1", "Lap 1 would be void")).isEmpty();
    heard();
    keys.press(KeyCode.SPACE);
    heard();
    keys.choose("A cover came off");
    assertThat(hidden("A cover came off", "Say in a word")).isEmpty();
    heard();
    keys.choose("End the day early");
    assertThat(hidden("Ride on", "End the day early", "The day ends after")).isEmpty();
    heard();
    keys.press(KeyCode.SPACE);
    heard();
    keys.choose("Close the day");
    assertThat(hidden("Not yet", "Close the day", "8 laps are not recorded")).isEmpty();
  }

  private Bounds cell(String words) {
    return scene.getRoot().lookupAll(".text-field").stream()
        .filter(n -> words.equals(n.getAccessibleText()))
        .map(n -> n.localToScene(n.getLayoutBounds()))
        .findFirst()
        .orElseThrow(() -> new AssertionError("there is no " + words));
  }

  @Test
  void theTableToKeyInFitsAndWithLargeTextItsLapStaysInViewWhereItIsMovedSideways() {
    toTheSheet();
    keys.choose("Key in from paper");
    heard();
    Window.run(
        () -> {
          scene.getRoot().layout();
          assertThat(scene.getFocusOwner().getAccessibleText()).isEqualTo("lap 1, lap time");
          assertThat(cell("lap 1, lap time").getMinY())
              .as("from its beginning")
              .isBetween(0., 300.);
        });
    keys.goTo("lap 1, traffic");
    Window.run(
        () -> {
          Window.look(scene, "ride-1366-key-in");
          assertThat(cell("lap 1, lap time").getMinX()).isPositive();
          assertThat(cell("lap 1, traffic").getMaxX()).isLessThan(SHOWN);
          assertThat(cell("lap 1, traffic").getWidth()).isGreaterThan(60);
        });
    keys.choose("Back to the sheet");
    heard();
    Window.run(() -> look.textScaleProperty().set(2));
    keys.choose("Key in from paper");
    heard();
    keys.goTo("lap 1, traffic");
    Window.run(
        () -> {
          scene.getRoot().layout();
          Window.look(scene, "ride-1366-key-in-200");
          assertThat(cell("lap 1, lap time").getMinX()).as("moved sideways").isNegative();
          assertThat(cell("lap 1, traffic").getMaxX()).isLessThan(SHOWN);
          Labeled lap =
              scene.getRoot().lookupAll(".label").stream()
                  .map(Labeled.class::cast)
                  .filter(n -> n.getText().startsWith("Lap 1, code "))
                  .findFirst()
                  .orElseThrow();
          Bounds at = lap.localToScene(lap.getLayoutBounds());
          assertThat(at.getMinX()).isBetween(0.0, SHOWN / 2.0);
        });
  }

  /** The table comes from the notebook a moment after the press, when the page is laid out. */
  @ParameterizedTest
  @ValueSource(doubles = {1, 2})
  void paperIsKeyedInFromItsFirstCellBeforeTheFirstHandOver(double scale) {
    Deque<Runnable> waiting = new ArrayDeque<>();
    Window.run(
        () -> {
          ride = Models.ride(day, Background.by(waiting::add));
          runAll(waiting);
          look.textScaleProperty().set(scale);
          scene.setRoot(new RidePage(look, ride, () -> {}));
        });
    heard();
    keys.choose("Key in from paper");
    Window.run(
        () -> {
          Window.look(scene, "ride-key-in-waited-for");
          runAll(waiting);
          assertThat(scene.getFocusOwner().getAccessibleText()).isEqualTo("lap 1, lap time");
          Window.look(scene, "ride-key-in-from-its-first-cell");
          Labeled words =
              scene.getRoot().lookupAll(".lead").stream()
                  .map(Labeled.class::cast)
                  .filter(n -> n.getText().startsWith("Type"))
                  .findFirst()
                  .orElseThrow();
          assertThat(words.localToScene(words.getLayoutBounds()).getMinY())
              .as("what to type stands above, in view")
              .isBetween(0., 60.);
          assertThat(cell("lap 1, lap time").getMaxY()).isLessThan(HIGH);
          Node table = scene.getRoot().lookup(".ride .scroll-pane .scroll-pane");
          assertThat(cell("lap 8, lap time").getMaxY())
              .as("the last lap is whole")
              .isLessThanOrEqualTo(table.localToScene(table.getLayoutBounds()).getMaxY());
        });
  }

  private static void runAll(Deque<Runnable> waiting) {
    while (!waiting.isEmpty()) {
      waiting.remove().run();
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {1.5, 2})
  void withLargeTextTheFieldThatTabComesToIsWholeInView(double scale) {
    Window.run(() -> look.textScaleProperty().set(scale));
    toTheSheet();
    for (String page : List.of("sheet", "events")) {
      List<String> wrong = new ArrayList<>();
      Set<String> met = new LinkedHashSet<>();
      for (int i = 0; i < 40; i++) {
        keys.press(KeyCode.TAB);
        met.add(keys.here());
        if (!Window.call(() -> inView(scene.getFocusOwner()))) {
          wrong.add(keys.here());
        }
      }
      assertThat(met).as(page).hasSizeGreaterThan(10).doesNotContain("nothing");
      assertThat(wrong).as(page).isEmpty();
      if (page.equals("sheet")) {
        keys.choose("Something happened");
      }
    }
  }

  private void toTheSheet() {
    Window.run(ride::handedOver);
    Window.run(ride::warmUpRidden);
    Window.run(ride::handedOver);
    heard();
  }

  private String shown() {
    return Window.call(() -> SceneText.of(scene));
  }
}
