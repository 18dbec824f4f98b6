package blindlap.screen.swap;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.RamFolder;
import blindlap.compute.OrderSeeds;
import blindlap.desk.TestDay;
import blindlap.screen.Keyboard;
import blindlap.screen.Models;
import blindlap.screen.SceneText;
import blindlap.screen.Window;
import blindlap.screen.part.Deaf;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import blindlap.screen.swap.SwapModel.Phase;
import blindlap.session.Fact;
import blindlap.session.SafetyCheck;
import blindlap.session.StoredEntry;
import blindlap.wording.day.SettingRow;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.image.WritableImage;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.Pane;
import javafx.stage.Stage;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** From "Safe" to "The bike is back": nothing of the key, one button, and a restart comes back. */
class SwapSafeTest {
  private static final String PIN = "4711";

  private @TempDir(factory = RamFolder.class) Path folder;

  @BeforeAll
  static void window() throws InterruptedException {
    Window.start();
    Window.run(Fonts::load);
  }

  private static void open(TestDay day, SwapModel swap) {
    swap.phrase(day.phrase());
    swap.choosePin(PIN);
  }

  private static void handle(TestDay day, SwapModel swap) {
    SwapWork work = swap.work();
    int stint = work.stint();
    work.begin();
    day.helper().work(stint).settings().forEach(s -> work.measured(s.name(), s.value()));
    for (SafetyCheck check : SafetyCheck.values()) {
      work.confirm(check.name(), true);
    }
    if (Objects.requireNonNull(work.sheetProperty().get()).fitAsked()) {
      work.riderFit(true);
    }
    day.clock().move(Duration.ofMinutes(7));
    swap.touch();
    work.handOver();
    assertThat(work.troubleProperty().get()).isEmpty();
    assertThat(swap.phaseProperty().get()).isEqualTo(Phase.SAFE);
  }

  private static List<Integer> pixels(Scene scene) {
    scene.getRoot().applyCss();
    scene.getRoot().layout();
    WritableImage image = scene.snapshot(null);
    List<Integer> all = new ArrayList<>();
    for (int y = 0; y < image.getHeight(); y++) {
      for (int x = 0; x < image.getWidth(); x++) {
        all.add(image.getPixelReader().getArgb(x, y));
      }
    }
    return all;
  }

  @Test
  void afterSafeThePixelsAreTheSameForEveryKeyRealAndDummyAlike() {
    Map<Integer, List<Integer>> first = new LinkedHashMap<>();
    Map<Boolean, Integer> kinds = new LinkedHashMap<>();
    for (long seed : OrderSeeds.of(TestDay.EIGHT, 3).values()) {
      try (TestDay day = new TestDay(folder, TestDay.EIGHT, seed)) {
        Window.run(
            () -> {
              SwapModel swap = Models.swap(day);
              Look look = new Look();
              Scene scene = new Scene(new SwapPage(look, swap, () -> {}), 800, 500);
              look.dress(scene);
              open(day, swap);
              for (int stint = 0; stint <= 3; stint++) {
                kinds.merge(day.helper().work(stint).real(), 1, Integer::sum);
                handle(day, swap);
                assertThat(SceneText.of(scene)).doesNotContain("Shock", "swap.", "eal swap");
                List<Integer> seen = pixels(scene);
                assertThat(seen.equals(first.computeIfAbsent(stint, s -> seen)))
                    .as("stint %d of seed %d", stint, seed)
                    .isTrue();
                swap.bikeReturned();
                swap.reopen(PIN);
              }
              scene.setRoot(new Pane());
            });
      }
    }
    assertThat(kinds).containsOnlyKeys(true, false);
    assertThat(first.get(0)).isNotEqualTo(first.get(1));
  }

  @Test
  void onlyTheOneButtonTakesTheFocusAndEscapeDoesNothing() {
    try (TestDay day = new TestDay(folder, TestDay.EIGHT, 2)) {
      Stage[] stage = new Stage[1];
      SwapModel swap = Window.call(() -> Models.swap(day));
      Scene scene =
          Window.call(
              () -> {
                Look look = new Look();
                Scene shown = new Scene(new SwapPage(look, swap, () -> {}), 1280, 768);
                look.dress(shown);
                stage[0] = new Stage();
                stage[0].setScene(shown);
                stage[0].show();
                stage[0].requestFocus();
                open(day, swap);
                handle(day, swap);
                return shown;
              });
      Keyboard keys = new Keyboard(scene);
      keys.press(KeyCode.SPACE); // the key that was still down
      assertThat(swap.phaseProperty().get()).isEqualTo(Phase.SAFE);
      keys.press(KeyCode.ESCAPE);
      assertThat(swap.phaseProperty().get()).isEqualTo(Phase.SAFE);
      for (int i = 0; i < 3; i++) {
        assertThat(keys.here()).contains("The bike is back");
        keys.press(KeyCode.TAB);
      }
      long focusable =
          Window.call(
              () ->
                  scene.getRoot().lookupAll("*").stream().filter(Node::isFocusTraversable).count());
      assertThat(focusable).isEqualTo(1);
      Window.run(() -> day.clock().move(Deaf.FOR));
      keys.press(KeyCode.SPACE);
      assertThat(swap.phaseProperty().get()).isEqualTo(Phase.BLANK);
      keys.type(PIN);
      keys.press(KeyCode.ENTER);
      assertThat(swap.work().stint()).isEqualTo(1);
      Window.run(
          () -> {
            scene.setRoot(new Pane());
            stage[0].close();
          });
    }
  }

  @Test
  void aRestartComesBackToItAndThenAsksForThePhrase() {
    try (TestDay day = new TestDay(folder, TestDay.EIGHT, 2)) {
      SwapModel swap = Models.swap(day);
      open(day, swap);
      handle(day, swap);
      swap.bikeReturned();
      swap.reopen(PIN);
      handle(day, swap);
      SwapModel again = Models.swap(day);
      assertThat(again.phaseProperty().get()).isEqualTo(Phase.SAFE);
      assertThat(again.safeWords()).isEqualTo("safe, " + day.state().code(1));
      again.bikeReturned();
      assertThat(again.phaseProperty().get()).isEqualTo(Phase.PHRASE);
      open(day, again);
      assertThat(again.work().stint()).isEqualTo(2);
      swap.tick();
      assertThat(swap.phaseProperty().get()).as("the other window").isEqualTo(Phase.BLANK);
    }
  }

  @Test
  void theBikeComingBackIsOneEntryHoweverOftenItIsSaid() {
    try (TestDay day = new TestDay(folder, TestDay.EIGHT, 2)) {
      SwapModel swap = Models.swap(day);
      open(day, swap);
      handle(day, swap);
      swap.bikeReturned();
      swap.bikeReturned();
      day.desk().helperDays().bikeReturned(day.id(), 0);
      assertThat(
              day.desk().notebook().entries(day.id()).stream()
                  .map(StoredEntry::entry)
                  .map(e -> e.fact())
                  .filter(Fact.BikeReturned.class::isInstance))
          .containsExactly(new Fact.BikeReturned(0));
    }
  }

  @Test
  void handedOverTwiceInARowAStintHasOneRecordAndOneHandOver() {
    try (TestDay day = new TestDay(folder, TestDay.EIGHT, 2)) {
      SwapModel swap = Models.swap(day);
      open(day, swap);
      handle(day, swap);
      swap.work().handOver();
      assertThat(swap.work().troubleProperty().get()).isEmpty();
      assertThat(day.state().helperRecords()).containsOnlyKeys(0);
      assertThat(
              day.desk().notebook().entries(day.id()).stream()
                  .filter(e -> e.entry().fact() instanceof Fact.BikeHandedOver))
          .hasSize(1);
    }
  }

  @Test
  void whatIsTypedIsOnDiskWithinFiveSecondsAndEveryPressIsNot() {
    try (TestDay day = new TestDay(folder, TestDay.EIGHT, 2)) {
      SwapModel swap = Models.swap(day);
      open(day, swap);
      swap.work().begin();
      swap.work().typing("sag", "25.");
      swap.work().step(2, true);
      String before = day.desk().notebook().drafts().toString();
      day.clock().move(SwapDrafts.EVERY.minusMillis(1));
      swap.beat();
      assertThat(day.desk().notebook().drafts()).hasToString(before);
      day.clock().move(Duration.ofMillis(1));
      swap.beat();
      assertThat(day.desk().notebook().drafts().toString()).isNotEqualTo(before);
      assertThat(swap.work().savedProperty().get()).startsWith("Saved");
      var draft = day.helper().unfinished(0).orElseThrow();
      assertThat(draft.entry().measured()).containsEntry("sag", "25.");
      assertThat(draft.steps()).containsExactly(2);
      // Covered, and without a touch: it is written all the same.
      swap.hide();
      String hidden = day.desk().notebook().drafts().toString();
      day.clock().move(SwapDrafts.EVERY);
      swap.beat();
      assertThat(day.desk().notebook().drafts().toString()).isNotEqualTo(hidden);
    }
  }

  @Test
  void whatWasReallyFittedTouchedAndTouchedBackKeepsWhatWasMeasured() {
    try (TestDay day = new TestDay(folder, TestDay.EIGHT, 2)) {
      SwapModel swap = Models.swap(day);
      open(day, swap);
      SwapWork work = swap.work();
      work.begin();
      work.measured("sag", "24.5");
      work.accept("sag", "it settles");
      work.measured("front tyre", "1.56");
      SwapSheet before = Objects.requireNonNull(work.sheetProperty().get());
      work.fitted(1 - before.fitted());
      SwapSheet other = Objects.requireNonNull(work.sheetProperty().get());
      assertThat(other.settings())
          .filteredOn(row -> !row.measured().isEmpty())
          .extracting(SettingRow::name)
          .as("what is on the bike whatever is fitted")
          .containsExactly("front tyre");
      work.fitted(before.fitted());
      assertThat(work.sheetProperty().get()).isEqualTo(before);
    }
  }

  @Test
  void theBlankingTimeIsRememberedAndTypingKeepsThePageOpen() {
    try (TestDay day = new TestDay(folder, TestDay.EIGHT, 2)) {
      SwapModel swap = Models.swap(day);
      open(day, swap);
      swap.blankAfter(Duration.ofMinutes(15));
      assertThat(Models.swap(day).blankAfter()).isEqualTo(Duration.ofMinutes(15));
      swap.blankAfter(Duration.ofMinutes(1));
      assertThat(Models.swap(day).blankAfter()).isEqualTo(Duration.ofMinutes(1));
      for (int i = 0; i < 4; i++) {
        day.clock().move(Duration.ofSeconds(59));
        swap.touch();
        swap.tick();
        assertThat(swap.phaseProperty().get()).isEqualTo(Phase.OPEN);
      }
      day.clock().move(Duration.ofSeconds(60));
      swap.tick();
      assertThat(swap.phaseProperty().get()).isEqualTo(Phase.BLANK);
    }
  }
}
