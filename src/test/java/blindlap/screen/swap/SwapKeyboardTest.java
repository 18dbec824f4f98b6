package blindlap.screen.swap;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.RamFolder;
import blindlap.desk.TestDay;
import blindlap.screen.Keyboard;
import blindlap.screen.Models;
import blindlap.screen.Window;
import blindlap.screen.part.Deaf;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import blindlap.session.SafetyCheck;
import blindlap.wording.day.SafetyRow;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Objects;
import javafx.scene.Scene;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.Pane;
import javafx.stage.Stage;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The Swap page by keys alone: the focus is where something is needed, Enter goes on. */
class SwapKeyboardTest {
  private @TempDir(factory = RamFolder.class) Path folder;
  private TestDay day;
  private SwapModel swap;
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
          swap = Models.swap(day);
          scene = new Scene(new SwapPage(look, swap, () -> {}), 1280, 768);
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

  private void begun() {
    opened();
    keys.choose("Begin");
  }

  private void opened() {
    keys.press(KeyCode.SHIFT);
    keys.type(day.phrase());
    keys.press(KeyCode.ENTER);
    keys.press(KeyCode.SHIFT);
    keys.type("4711");
    keys.press(KeyCode.ENTER);
    assertThat(swap.phaseProperty().get()).isEqualTo(SwapModel.Phase.OPEN);
    Window.run(() -> day.clock().move(Deaf.FOR));
  }

  private SwapSheet sheet() {
    return Objects.requireNonNull(swap.work().sheetProperty().get());
  }

  @Test
  void fromThePhraseToTheGateNothingHasToBeLookedFor() {
    begun();
    for (var setting : day.helper().work(0).settings()) {
      assertThat(keys.here()).contains(setting.name() + ", measured");
      keys.type(setting.value());
      keys.press(KeyCode.ENTER);
    }
    for (int i = 0; i < SafetyCheck.values().length; i++) {
      assertThat(keys.here()).contains("key " + sheet().confirmed().get(i).letter());
      keys.press(KeyCode.ENTER);
    }
    assertThat(sheet().confirmed()).allMatch(SafetyRow::yes);
    assertThat(keys.here()).as("words, which no key presses").contains("Warm-up laps");
    Window.run(
        () -> {
          day.clock().move(Duration.ofMinutes(7));
          swap.touch();
          swap.tick();
        });
    keys.choose("Safe: ");
    assertThat(day.state().handedOver(0)).isTrue();
    assertThat(keys.here()).contains("The bike is back");
  }

  @ParameterizedTest
  @ValueSource(doubles = {1, 2})
  void tabLeadsToTheBeginningAtOnceAndPastItToAllThatIsOnThePage(double scale) {
    Window.run(() -> look.textScaleProperty().set(scale));
    opened();
    assertThat(keys.here()).contains("Warm-up laps");
    keys.press(KeyCode.TAB);
    assertThat(keys.here()).contains("Begin");
    keys.goTo("compression, measured");
    keys.goTo("Something happened");
    keys.goTo("Hide now");
    assertThat(sheet().begun()).isFalse();
  }

  @Test
  void withLargeTextTheKeyThatOpensTheEventsHasNoButtonUnderItAfterwards() {
    Window.run(() -> look.textScaleProperty().set(2));
    begun();
    Window.run(() -> day.clock().move(Deaf.FOR));
    keys.choose("Something happened");
    assertThat(keys.here()).contains("Warm-up laps");
    Window.run(() -> day.clock().move(Deaf.FOR));
    keys.press(KeyCode.SPACE);
    assertThat(swap.phaseProperty().get()).as("not hidden").isEqualTo(SwapModel.Phase.OPEN);
    Window.run(() -> day.clock().move(Deaf.FOR));
    keys.choose("Back to the stint");
    assertThat(keys.here()).contains("compression, measured");
  }

  @Test
  void oneKeyForEachTickAndInAFieldOnlyWithAlt() {
    begun();
    assertThat(keys.here()).contains("compression, measured");
    keys.type("b2");
    assertThat(sheet().confirmed()).noneMatch(SafetyRow::yes);
    assertThat(sheet().stepsDone()).isEmpty();
    keys.press(KeyCode.ALT, KeyCode.B);
    keys.press(KeyCode.ALT, KeyCode.DIGIT2);
    assertThat(ticked()).containsExactly("BRAKES");
    assertThat(sheet().stepsDone()).containsExactly(1);
    assertThat(keys.here()).contains("compression, measured");
    keys.goTo("Axles");
    assertThat(sheet().settings().get(0).measured()).isEqualTo("b2");
    for (String key : List.of("A", "P", "S", "R", "W", "L")) {
      keys.press(KeyCode.valueOf(key));
    }
    assertThat(sheet().confirmed()).allMatch(SafetyRow::yes);
    keys.press(KeyCode.A);
    assertThat(ticked()).doesNotContain("AXLES").hasSize(6);
    keys.press(KeyCode.DIGIT1);
    assertThat(sheet().stepsDone()).containsExactlyInAnyOrder(0, 1);
  }

  private List<String> ticked() {
    return sheet().confirmed().stream().filter(SafetyRow::yes).map(SafetyRow::key).toList();
  }
}
