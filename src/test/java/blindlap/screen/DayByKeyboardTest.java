package blindlap.screen;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.HelperDay;
import blindlap.desk.TestDay;
import blindlap.plan.Setting;
import blindlap.screen.part.Deaf;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import blindlap.screen.part.Shell;
import blindlap.screen.ride.RideModel;
import blindlap.screen.ride.RidePage;
import blindlap.screen.swap.SwapModel;
import blindlap.screen.swap.SwapPage;
import blindlap.screen.swap.SwapPageTest;
import blindlap.session.SafetyCheck;
import blindlap.session.day.LapId;
import blindlap.session.day.Step;
import blindlap.timing.TimeRecord;
import blindlap.wording.SwapWords;
import java.nio.file.Path;
import java.time.Duration;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.Pane;
import javafx.stage.Stage;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Helper and rider take turns at one window and one keyboard, from the phrase to the closed day.
 */
class DayByKeyboardTest {
  private static final String PIN = "4711";

  private @TempDir Path folder;
  private TestDay day;
  private SwapModel swap;
  private RideModel ride;
  private Stage stage;
  private Shell shell;
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
          Look look = new Look();
          shell = new Shell();
          swap = SwapPageTest.model(day);
          ride = Models.ride(day);
          Map<Shell.Page, Supplier<? extends Node>> makers = new EnumMap<>(Shell.Page.class);
          makers.put(
              Shell.Page.SWAP,
              () ->
                  new SwapPage(
                      look,
                      swap,
                      () -> shell.go(Shell.Page.RIDE),
                      () -> shell.go(Shell.Page.RIDE),
                      () -> shell.go(Shell.Page.REVIEW)));
          makers.put(
              Shell.Page.RIDE,
              () ->
                  new RidePage(
                      look,
                      ride,
                      () -> shell.go(Shell.Page.SWAP),
                      () -> shell.go(Shell.Page.REVIEW)));
          makers.put(Shell.Page.REVIEW, Pane::new);
          shell.open(Shell.Page.SWAP, day.id());
          Scene scene = new Scene(new ShellView(look, shell, makers, List.of()), 1280, 800);
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
    Window.run(stage::close);
    day.close();
  }

  @Test
  void theWholeDayIsRecordedWithoutTouchingAMouse() {
    keys.goTo("Helper phrase");
    keys.type(day.phrase());
    keys.press(KeyCode.ENTER);
    pin();
    HelperDay helper = day.helper();
    for (int stint = 0; stint <= 8; stint++) {
      if (stint > 0) {
        keys.press(KeyCode.CONTROL, KeyCode.DIGIT3);
        heard();
        keys.choose("The bike is back");
        pin();
      }
      handle(helper.work(stint));
      keys.press(KeyCode.CONTROL, KeyCode.DIGIT4);
      Window.run(ride::tick);
      heard();
      if (stint == 0) {
        keys.choose("Warm-up lap ridden");
      } else {
        lap(stint);
      }
    }
    heard();
    keys.choose("Close the day");
    assertThat(day.state().step()).as("asked first").isEqualTo(Step.RIDING);
    heard();
    keys.choose("Close the day");
    assertThat(day.state().step()).isEqualTo(Step.DAY_CLOSED);
    assertThat(day.state().lapsRidden()).isEqualTo(8);
    onToTheReviewFromBothPages();
    assertThat(day.state().helperRecords()).as("stints, warm-up and one").hasSize(10);
    assertThat(day.state().guesses()).hasSize(8);
    for (int stint = 1; stint <= 8; stint++) {
      var lap = day.state().lap(new LapId(stint, 1)).orElseThrow();
      assertThat(lap.values()).hasSize(5);
      TimeRecord time = lap.times().get("lap time");
      assertThat(time).isNotNull();
      assertThat(time.seconds()).isEqualByComparingTo("93");
    }
    assertThat(day.desk().notebook().verify().sound()).isTrue();
  }

  private void onToTheReviewFromBothPages() {
    Window.run(swap::tick);
    heard();
    keys.choose("On to the review");
    assertThat(shell.pageProperty().get()).isEqualTo(Shell.Page.REVIEW);
    keys.press(KeyCode.CONTROL, KeyCode.DIGIT3);
    keys.choose("On to the review");
    assertThat(shell.pageProperty().get()).isEqualTo(Shell.Page.REVIEW);
  }

  private void pin() {
    keys.goTo("Day PIN");
    keys.type(PIN);
    keys.press(KeyCode.ENTER);
    assertThat(swap.phaseProperty().get()).isEqualTo(SwapModel.Phase.OPEN);
  }

  private void handle(HelperDay.Work work) {
    heard();
    keys.choose("Begin");
    for (Setting setting : work.settings()) {
      keys.goTo(setting.name() + ", measured");
      keys.type(setting.value());
      keys.press(KeyCode.ENTER);
    }
    for (SafetyCheck check : SafetyCheck.values()) {
      keys.choose(SwapWords.say("check." + check));
    }
    if (work.stint() > 0) {
      keys.choose("Is the rider fit to go on?: yes");
    }
    // The helper works at the bike meanwhile: the page closes itself.
    Window.run(
        () -> {
          day.clock().move(Duration.ofMinutes(8));
          swap.tick();
        });
    assertThat(swap.phaseProperty().get()).isEqualTo(SwapModel.Phase.BLANK);
    pin();
    heard();
    if (swap.work().overrunProperty().get()) {
      keys.choose("Longer than planned: was there a mishap?: no");
    }
    keys.choose("Safe: ");
    assertThat(swap.work().troubleProperty().get()).isEmpty();
    assertThat(day.state().handedOver(work.stint())).isTrue();
  }

  private void lap(int stint) {
    if (stint == 1) {
      keys.choose("Who holds the watch?: starter");
    }
    heard();
    keys.choose("lap time: Start");
    assertThat(ride.troubleProperty().get()).isEmpty();
    Window.run(() -> day.clock().move(Duration.ofSeconds(93)));
    keys.choose("lap time: Stop");
    for (String scale : List.of("grip in the rocks", "harshness at the hands")) {
      keys.goTo(scale);
      keys.press(KeyCode.RIGHT);
      keys.press(KeyCode.LEFT);
    }
    keys.choose("trust: none (1) to complete (9): 6");
    keys.goTo("one more");
    keys.press(KeyCode.SPACE);
    keys.choose("Your guess: Shock K");
    keys.choose("How sure?: a hunch");
    keys.choose("Done with lap " + stint);
    assertThat(ride.troubleProperty().get()).isEmpty();
    heard();
    keys.choose(stint == 8 ? "On to the end of the day" : "On to the next lap");
  }

  /** The page hears nothing for a moment after it has changed. */
  private void heard() {
    Window.run(() -> day.clock().move(Deaf.FOR));
  }
}
