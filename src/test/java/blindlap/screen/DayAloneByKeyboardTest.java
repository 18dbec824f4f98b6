package blindlap.screen;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.AloneDay;
import blindlap.desk.MeasuredValues;
import blindlap.desk.PreparedUnits;
import blindlap.desk.Sessions;
import blindlap.desk.TestDay;
import blindlap.plan.Setting;
import blindlap.screen.alone.AloneModel;
import blindlap.screen.alone.AloneView;
import blindlap.screen.part.Deaf;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import blindlap.screen.part.Shell;
import blindlap.screen.part.Theme;
import blindlap.screen.ride.RideModel;
import blindlap.screen.ride.RidePage;
import blindlap.screen.ride.RideWays;
import blindlap.session.HelperEntry;
import blindlap.session.SafetyCheck;
import blindlap.session.day.LapId;
import blindlap.session.day.Step;
import blindlap.wording.AloneWords;
import blindlap.wording.SwapWords;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Supplier;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.Pane;
import javafx.stage.Stage;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** One person, one window and one keyboard, from the first reveal to the closed day. */
class DayAloneByKeyboardTest {
  /** Stints that are ridden by keyboard; the rest of the eight goes by the same use cases. */
  private static final int BY_KEYS = Integer.getInteger("stints", 2);

  private @TempDir Path folder;
  private TestDay day;
  private RideModel ride;
  private AloneModel alone;
  private RidePage page;
  private Stage stage;
  private Scene scene;
  private Keyboard keys;
  private final Look look = new Look();

  @BeforeAll
  static void window() throws InterruptedException {
    Window.start();
    Window.run(Fonts::load);
  }

  private void open(String level) {
    day = new TestDay(folder, TestDay.at(level), 2);
    Window.run(
        () -> {
          Shell shell = new Shell();
          ride = Models.ride(day);
          alone = Models.alone(day, ride);
          Map<Shell.Page, Supplier<? extends Node>> makers = new EnumMap<>(Shell.Page.class);
          makers.put(
              Shell.Page.RIDE,
              () -> {
                page =
                    new RidePage(
                        look,
                        ride,
                        new AloneView(look, alone),
                        () -> shell.go(Shell.Page.NOTEBOOK),
                        new RideWays(() -> shell.go(Shell.Page.REVIEW), null));
                return page;
              });
          makers.put(Shell.Page.REVIEW, Pane::new);
          shell.open(Shell.Page.RIDE, day.id());
          scene = new Scene(new ShellView(look, shell, makers, List.of()), 1280, 768);
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

  private String shown() {
    return Window.call(() -> SceneText.of(scene).replace('\u202f', ' '));
  }

  @ParameterizedTest
  @ValueSource(strings = {"level: open", "level: drawn", "level: masked, prepared_by: M. Oster"})
  void aWholeDayAloneIsRecordedWithoutTouchingAMouseOrAPhrase(String level) {
    open(level);
    String name = "alone-" + level.replaceAll("level: ([a-z]+).*", "$1");
    for (int stint = 0; stint <= BY_KEYS; stint++) {
      heard();
      if (!level.contains("open")) {
        assertThat(day.state().shown()).as("not before it is asked for").hasSize(stint);
        assertThat(shown()).contains("what to mount is not shown yet");
        nothingOfAHelper();
        if (stint == 1) {
          picture(name + "-hidden");
        }
        keys.choose(AloneWords.say("show"));
        assertThat(day.state().shown()).hasSize(stint + 1);
      }
      heard();
      if (stint == 1) {
        picture(name + "-mount");
        pictures(name + "-mount");
      }
      nothingOfAHelper();
      mount(stint);
      heard();
      if (stint == 0) {
        keys.choose("Warm-up lap ridden");
      } else {
        lap(stint);
      }
    }
    theRest();
    close(8);
    assertThat(day.state().mounted()).hasSize(9);
    assertThat(day.state().guesses()).isEmpty();
    assertThat(day.desk().notebook().verify().sound()).isTrue();
  }

  @Test
  void aWholePreparedDayIsRiddenByCodesWithEveryCoverLookedAt() {
    open("level: prepared, prepared_by: M. Oster, prepared_on: 2026-11-13");
    prepare();
    assertThat(day.state().helperRecords()).hasSize(9);
    Window.run(ride::tick);
    for (int stint = 0; stint <= Math.max(3, BY_KEYS); stint++) {
      heard();
      assertThat(shown()).doesNotContain("Shock K comes off", AloneWords.say("show"));
      nothingOfAHelper();
      if (stint == 1) {
        picture("alone-prepared-mount");
        pictures("alone-prepared-mount");
      }
      keys.choose(AloneWords.say("unit.whole") + ": " + AloneWords.say(stint == 3 ? "no" : "yes"));
      if (stint == 3) {
        keys.goTo(AloneWords.say("unit.words"));
        keys.type("tape torn");
      }
      mount(stint);
      heard();
      if (stint == 0) {
        keys.choose("Warm-up lap ridden");
      } else {
        lap(stint);
      }
    }
    theRest();
    close(8);
    assertThat(day.state().guesses()).hasSize(Math.max(3, BY_KEYS));
    assertThat(day.state().blindBroken()).hasSize(1).allMatch(broken -> broken.stint() == 3);
  }

  /** The stints that are left, by the use cases that the page presses. */
  private void theRest() {
    AloneDay open = day.desk().aloneDays().day(day.state()).orElseThrow();
    for (int stint = 1; stint <= 8; stint++) {
      if (day.state().mounted().containsKey(stint)) {
        continue;
      }
      if (!open.prepared()) {
        open.show();
      }
      AloneDay.Work work = open.work(day.state(), stint);
      Integer setup = work.setup();
      HelperEntry entry = HelperEntry.untouched(stint, "R. Lind", setup == null ? 0 : setup);
      for (Setting setting : work.settings()) {
        entry = MeasuredValues.judged(work.settings(), entry, setting.name(), setting.value());
      }
      entry =
          entry
              .withConfirmed(EnumSet.allOf(SafetyCheck.class))
              .withFit(day.state().lapsSoFar(), true);
      assertThat(open.mount(entry)).isInstanceOf(Sessions.Result.Done.class);
      LapId lap = new LapId(stint, 1);
      day.watched(lap, "lap time", 90 + stint);
      day.desk().riderDays().ridden(day.id(), lap);
    }
    Window.run(ride::tick);
  }

  private void close(int laps) {
    heard();
    keys.choose("Close the day");
    heard();
    keys.choose("Close the day");
    assertThat(day.state().step()).isEqualTo(Step.DAY_CLOSED);
    assertThat(day.state().lapsRidden()).isEqualTo(laps);
  }

  /** A friend has measured every unit and recorded them all. */
  private void prepare() {
    PreparedUnits units = new PreparedUnits(day.helper());
    List<HelperEntry> entries = new ArrayList<>();
    for (PreparedUnits.Unit unit : units.units()) {
      HelperEntry entry = units.untouched(unit);
      for (Setting setting : unit.settings()) {
        entry = MeasuredValues.judged(unit.settings(), entry, setting.name(), setting.value());
      }
      entries.add(entry);
    }
    assertThat(units.write(entries)).isInstanceOf(Sessions.Result.Done.class);
  }

  private void nothingOfAHelper() {
    assertThat(shown().toLowerCase(Locale.ROOT))
        .doesNotContain("look away", "called in", "phrase", "the helper");
  }

  private void mount(int stint) {
    AloneDay open = day.desk().aloneDays().day(day.state()).orElseThrow();
    for (Setting setting : open.work(day.state(), stint).settings()) {
      keys.goTo(setting.name() + ", measured");
      keys.type(setting.value());
      keys.press(KeyCode.ENTER);
    }
    for (SafetyCheck check : SafetyCheck.values()) {
      keys.choose(SwapWords.say("check." + check));
    }
    if (stint > 0) {
      keys.choose(AloneWords.say("fit") + ": yes");
    }
    assertThat(alone.waitsProperty().get().whole()).isEmpty();
    heard();
    keys.choose("Safe: ride");
    assertThat(alone.troubleProperty().get()).isEmpty();
    assertThat(day.state().handedOver(stint)).isTrue();
  }

  private void lap(int stint) {
    if (stint == 1) {
      keys.choose("Who holds the watch?: rider");
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
    nothingOfAHelper();
    assertThat(shown()).doesNotContain("1:33");
    if (day.state().plan().blinding().guesses()) {
      keys.choose("Your guess: Shock K");
      keys.choose("How sure?: a hunch");
    } else {
      assertThat(shown()).doesNotContain("Your guess", "knows the key");
    }
    keys.choose("Done with lap " + stint);
    assertThat(ride.troubleProperty().get()).isEmpty();
    heard();
    nothingOfAHelper();
    assertThat(day.state().lap(new LapId(stint, 1)).orElseThrow().ridden()).isTrue();
    keys.choose(stint == 8 ? "On to the end of the day" : "On to the next lap");
  }

  @Test
  void aLapIsVoidedBeforeTheNextIsShownOrAfterIt() {
    open("level: drawn");
    heard();
    for (int stint = 0; stint <= 3; stint++) {
      keys.choose(AloneWords.say("show"));
      heard();
      if (stint == 3) {
        voidAfter();
      }
      mount(stint);
      heard();
      if (stint == 0) {
        keys.choose("Warm-up lap ridden");
        heard();
      } else if (stint < 3) {
        lap(stint);
        heard();
        assertThat(day.state().shown()).hasSize(stint + 1);
      }
      if (stint == 1) {
        voidBefore();
      }
    }
    assertThat(day.state().lap(new LapId(1, 1)).orElseThrow().voided()).isPresent();
    assertThat(day.state().lap(new LapId(2, 1)).orElseThrow().voided()).isPresent();
    List<String> kinds =
        day.desk().notebook().entries(day.id()).stream()
            .map(entry -> entry.entry().fact().getClass().getSimpleName())
            .filter(kind -> kind.equals("SetupShown") || kind.equals("LapVoided"))
            .toList();
    assertThat(kinds)
        .as("which came first stays on record")
        .containsExactly(
            "SetupShown", "SetupShown", "LapVoided", "SetupShown", "SetupShown", "LapVoided");
  }

  /** What comes next is not shown yet, and the lap before is called spoiled. */
  private void voidBefore() {
    keys.choose("Open lap 1 again");
    voidIt(1);
    assertThat(day.state().shown()).as("nothing is shown by that").hasSize(2);
  }

  private void voidIt(int lap) {
    heard();
    keys.choose("Something happened");
    heard();
    keys.choose("traffic");
    heard();
    keys.choose("Void lap " + lap);
    heard();
    keys.choose("On to the next lap");
    heard();
  }

  /** While the next is shown already, the lap before is opened again and called spoiled. */
  private void voidAfter() {
    keys.choose("Open lap 2 again");
    voidIt(2);
    assertThat(day.state().shown()).as("shown once").hasSize(4);
  }

  private void picture(String name) {
    Window.run(() -> Window.picture(scene, name));
  }

  /** Looked at: themes, large text, and a small window. */
  private void pictures(String name) {
    Window.run(
        () -> {
          for (Theme theme : Theme.values()) {
            look.themeProperty().set(theme);
            Window.picture(scene, name + "-" + theme.name().toLowerCase(Locale.ROOT));
          }
          look.themeProperty().set(Theme.PAPER);
          look.textScaleProperty().set(2);
          Window.picture(scene, name + "-200");
          assertThat(Within.of(page, name + " at 200 %").wrong()).isEmpty();
          look.textScaleProperty().set(1);
          page.applyCss();
          page.layout();
          assertThat(Within.of(page, name + " at 100 %").wrong()).isEmpty();
        });
    heard();
  }

  /** The page hears nothing for a moment after it has changed. */
  private void heard() {
    Window.run(() -> day.clock().move(Deaf.FOR));
  }
}
