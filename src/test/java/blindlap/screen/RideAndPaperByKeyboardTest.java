package blindlap.screen;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.RamFolder;
import blindlap.desk.TestDay;
import blindlap.screen.part.Deaf;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.LineScale;
import blindlap.screen.part.Look;
import blindlap.screen.ride.RideModel;
import blindlap.screen.ride.RidePage;
import blindlap.session.day.LapId;
import blindlap.session.day.LapState;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.Map;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.Labeled;
import javafx.scene.control.TextField;
import javafx.scene.control.ToggleButton;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.Pane;
import javafx.stage.Stage;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The Ride page in a window, by keyboard alone, with a second window on the same notebook. */
class RideAndPaperByKeyboardTest {
  private static final LapId FIRST = new LapId(1, 1);
  private static final String GRIP = "grip in the rocks";

  private @TempDir(factory = RamFolder.class) Path folder;
  private TestDay day;
  private RideModel ride;
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
    var riders = day.desk().riderDays();
    riders.handedOver(day.id(), 0);
    riders.warmUp(day.id());
    riders.handedOver(day.id(), 1);
    Window.run(this::show);
  }

  private void show() {
    Look look = new Look();
    ride = Models.ride(day);
    scene = new Scene(new RidePage(look, ride, () -> {}), 1280, 800);
    look.dress(scene);
    stage = new Stage();
    stage.setScene(scene);
    stage.show();
    stage.requestFocus();
    keys = new Keyboard(scene);
    heard();
  }

  /** The page hears nothing for a moment after it has changed. */
  private void heard() {
    day.clock().move(Deaf.FOR);
  }

  @AfterEach
  void close() {
    Window.run(stage::close);
    day.close();
  }

  private LapState lap() {
    return day.state().lap(FIRST).orElseThrow();
  }

  private <T extends Node> T node(Class<T> type, String accessible) {
    return scene.getRoot().lookupAll("*").stream()
        .filter(type::isInstance)
        .map(type::cast)
        .filter(n -> accessible.equals(n.getAccessibleText()))
        .findFirst()
        .orElseThrow(() -> new AssertionError("nothing is called " + accessible));
  }

  @Test
  void controlZTakesBackTheLastAnswerAndThePageShowsIt() {
    keys.goTo(GRIP);
    keys.press(KeyCode.RIGHT);
    keys.goTo("one more");
    keys.press(KeyCode.SPACE);
    keys.press(KeyCode.SPACE);
    assertThat(lap().values().get("feet off the pedals")).isEqualByComparingTo("2");
    heard();
    keys.press(KeyCode.CONTROL, KeyCode.Z);
    assertThat(lap().values().get("feet off the pedals")).isEqualByComparingTo("1");
    keys.press(KeyCode.CONTROL, KeyCode.Z);
    assertThat(lap().values().get("feet off the pedals"))
        .as("the same keys, held: one answer")
        .isEqualByComparingTo("1");
    heard();
    keys.press(KeyCode.CONTROL, KeyCode.Z);
    assertThat(lap().values()).containsOnlyKeys(GRIP);
    assertThat(Window.call(() -> counterShows())).isEqualTo("–");
    heard();
    keys.choose("Take back: " + GRIP);
    assertThat(lap().values()).isEmpty();
    assertThat(Window.call(() -> node(LineScale.class, GRIP + ": not marked"))).isNotNull();
  }

  private String counterShows() {
    return scene.getRoot().lookupAll(".counter .value").stream()
        .map(n -> ((Labeled) n).getText())
        .findFirst()
        .orElse("");
  }

  @Test
  void whatAnotherWindowSavesForTheOpenLapIsRedrawnAtTheNextLookWithoutMovingTheFocus() {
    keys.goTo("trust: none (1) to complete (9): 6");
    String focus = keys.here();
    var other = day.desk().riderDays();
    other.score(day.id(), FIRST, GRIP, BigDecimal.valueOf(70), false);
    other.score(day.id(), FIRST, "feet off the pedals", BigDecimal.valueOf(3), false);
    other.score(day.id(), FIRST, "trust", BigDecimal.valueOf(4), false);
    other.note(day.id(), FIRST, "wet roots");
    other.conditions(day.id(), FIRST, Map.of("wind", "strong"));
    Window.run(ride::tick);
    assertThat(Window.call(() -> node(LineScale.class, GRIP + ": nearer to all I could ask for")))
        .isNotNull();
    assertThat(Window.call(this::counterShows)).isEqualTo("3");
    String four = "trust: none (1) to complete (9): 4";
    assertThat(Window.call(() -> node(ToggleButton.class, four).isSelected())).isTrue();
    assertThat(Window.call(() -> node(TextField.class, "Note on this lap").getText()))
        .isEqualTo("wet roots");
    assertThat(Window.call(() -> node(ToggleButton.class, "wind: strong").isSelected())).isTrue();
    assertThat(keys.here()).isEqualTo(focus);
  }

  @Test
  void whatIsBeingTypedIsNotOverwrittenByAnotherWindow() {
    keys.goTo("Note on this lap");
    keys.type("loose");
    day.desk().riderDays().score(day.id(), FIRST, GRIP, BigDecimal.valueOf(70), false);
    day.desk().riderDays().note(day.id(), FIRST, "wet roots");
    Window.run(ride::tick);
    assertThat(Window.call(() -> node(TextField.class, "Note on this lap").getText()))
        .isEqualTo("loose");
    keys.press(KeyCode.TAB);
    assertThat(lap().note()).isEqualTo("loose");
  }

  private boolean says(String words) {
    return scene.getRoot().lookupAll(".label").stream()
        .anyMatch(n -> n instanceof Labeled label && words.equals(label.getText()));
  }

  private void typeRow(String grip) {
    keys.goTo("lap 1, lap time");
    keys.type("93.1");
    keys.press(KeyCode.ENTER);
    keys.type(grip);
    keys.press(KeyCode.ENTER);
    keys.type("55");
    keys.press(KeyCode.ENTER);
  }

  @Test
  void paperIsKeyedInTwiceSettledAndRecordedByKeyboardAndHalfOfItIsKept() {
    keys.choose("Key in from paper");
    heard();
    typeRow("62");
    // Called away: the page is left in the middle of a cell, and opened again.
    keys.goTo("lap 1, trust");
    keys.type("7");
    Window.run(
        () -> {
          scene.setRoot(new Pane());
          stage.close();
          show();
        });
    keys.choose("Key in from paper");
    heard();
    keys.goTo("lap 1, trust");
    assertThat(Window.call(() -> node(TextField.class, "lap 1, grip in the rocks").getText()))
        .isEqualTo("62");
    assertThat(Window.call(() -> node(TextField.class, "lap 1, trust").getText())).isEqualTo("7");
    heard();
    keys.choose("Typed to the end");
    heard();
    typeRow("26");
    keys.type("7");
    keys.choose("Typed to the end");
    heard();
    assertThat(day.state().lapsRidden()).isZero();
    keys.goTo("lap 1, " + GRIP);
    keys.type("62");
    keys.choose("Settled: record");
    assertThat(Window.call(() -> says("1 lap recorded."))).isTrue();
    assertThat(day.state().lapsRidden()).isEqualTo(1);
    assertThat(lap().values().get(GRIP)).isEqualByComparingTo("62");
    assertThat(lap().values().get("trust")).isEqualByComparingTo("7");
  }
}
