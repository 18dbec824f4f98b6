package blindlap.screen.onestint;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.RamFolder;
import blindlap.desk.OneStints;
import blindlap.desk.TestDay;
import blindlap.screen.Keyboard;
import blindlap.screen.Models;
import blindlap.screen.SceneText;
import blindlap.screen.Window;
import blindlap.screen.Within;
import blindlap.screen.part.Background;
import blindlap.screen.part.Deaf;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import blindlap.screen.part.Theme;
import blindlap.screen.ride.RideModel;
import blindlap.screen.ride.RidePage;
import blindlap.screen.swap.SwapModel;
import blindlap.screen.swap.SwapPage;
import blindlap.session.Fact;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.Pane;
import javafx.stage.Stage;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The one-stint view in the window: once, for a minute, and nothing of it before or after. */
class OneStintPageTest {
  private static final int ORDERS = Math.min(12, Integer.getInteger("orders", 6));

  private @TempDir(factory = RamFolder.class) Path folder;

  @BeforeAll
  static void window() throws InterruptedException {
    Window.start();
    Window.run(Fonts::load);
  }

  private static OneStintModel model(TestDay day) {
    OneStintModel model =
        new OneStintModel(
            day.desk().oneStints(),
            day.desk().sessions(),
            Background.immediate(),
            day.clock()::nanos,
            () -> {});
    model.open(day.id());
    return model;
  }

  /** The words of a stint, made anew. */
  private static String words(TestDay day, int stint) {
    OneStints.Made made = day.desk().oneStints().make(day.helper(), day.state());
    return ((OneStints.Made.Slips) made)
        .slips().stream().filter(s -> s.stint() == stint).findFirst().orElseThrow().words().text();
  }

  private static Scene page(TestDay day, Look look, OneStintModel model) {
    SwapModel swap = Models.swap(day);
    SwapPage helpers = new SwapPage(look, swap, () -> {});
    helpers.offerOneStint(model::begin);
    swap.open(day.id());
    Scene scene = new Scene(new OneStintPage(look, model, helpers, () -> {}), 1280, 768);
    look.dress(scene);
    return scene;
  }

  private static Scene ride(TestDay day, Look look, OneStintModel model) {
    RideModel ride = Models.ride(day);
    RidePage page = new RidePage(look, ride, () -> {});
    page.ask(new RiderSawView(look, model));
    Scene scene = new Scene(page, 1366, 768);
    look.dress(scene);
    return scene;
  }

  private static String text(Scene scene) {
    scene.getRoot().applyCss();
    scene.getRoot().layout();
    return SceneText.of(scene);
  }

  private static Button button(Scene scene, String words) {
    return scene.getRoot().lookupAll(".button").stream()
        .filter(node -> node instanceof Button b && b.getText().startsWith(words))
        .map(Button.class::cast)
        .findFirst()
        .orElseThrow(() -> new AssertionError("there is no button " + words));
  }

  /** Everything but what is in sight, moment by moment; what is in sight apart. */
  private record Seen(List<String> always, String inSight) {}

  private Seen seen(long order) {
    List<String> always = new ArrayList<>();
    List<String> inSight = new ArrayList<>();
    try (TestDay day = new TestDay(folder, TestDay.EIGHT, order)) {
      String words = words(day, 2);
      Window.run(
          () -> {
            OneStintModel model = model(day);
            Scene scene = page(day, new Look(), model);
            always.add(text(scene));
            button(scene, "Somebody swaps for one stint").fire();
            always.add(text(scene));
            model.show("P. Wier", "2", "outline outline outline");
            always.add(text(scene));
            model.show("P. Wier", "2", words);
            inSight.add(text(scene));
            day.clock().move(OneStintModel.IN_SIGHT);
            model.tick();
            always.add(text(scene));
            scene.setRoot(new Pane());
            OneStintModel riders = model(day);
            Scene rides = ride(day, new Look(), riders);
            always.add(text(rides));
            riders.answer(true);
            always.add(text(rides));
            rides.setRoot(new Pane());
          });
    }
    return new Seen(always, inSight.get(0));
  }

  @Test
  void beforeTheWordsAreTypedAndOnceItIsGoneThePageIsTheSameForEveryOrder() {
    Seen first = seen(1);
    Set<String> shown = new TreeSet<>(Set.of(first.inSight()));
    for (long order = 2; order <= ORDERS; order++) {
      Seen other = seen(order);
      assertThat(other.always()).isEqualTo(first.always());
      shown.add(other.inSight());
    }
    assertThat(first.always()).hasSize(6).noneMatch(text -> text.contains("fit Shock"));
    assertThat(first.always().get(4)).contains("Stint 2: did you see or hear what P. Wier");
    assertThat(shown).as("what is in sight follows the order").hasSizeGreaterThan(1);
    assertThat(shown).allMatch(text -> text.contains("Shock ") && text.contains("Caution."));
  }

  @Test
  void whatToSetIsInSightForAMinuteCountedDownAndNeverAgain() {
    try (TestDay day = new TestDay(folder, TestDay.EIGHT, 2)) {
      String words = words(day, 1);
      OneStintModel model = model(day);
      model.begin();
      model.show("P. Wier", "1", words);
      assertThat(model.phaseProperty().get()).isEqualTo(OneStintModel.Phase.SHOWN);
      assertThat(model.leftProperty().get()).isEqualTo("gone in 1:00");
      day.clock().move(Duration.ofSeconds(59));
      model.tick();
      assertThat(model.leftProperty().get()).isEqualTo("gone in 0:01");
      assertThat(model.shown()).isPresent();
      day.clock().move(Duration.ofSeconds(1));
      model.tick();
      assertThat(model.phaseProperty().get()).isEqualTo(OneStintModel.Phase.GONE);
      assertThat(model.shown()).isEmpty();
      assertThat(model.leftProperty().get()).isEmpty();

      model.begin();
      assertThat(model.phaseProperty().get())
          .as("not before it is said whether the rider saw")
          .isEqualTo(OneStintModel.Phase.GONE);
      model.answer(false);
      model.begin();
      model.show("P. Wier", "1", words);
      assertThat(model.phaseProperty().get()).isEqualTo(OneStintModel.Phase.ASKS);
      assertThat(model.troubleProperty().get()).contains("stint 1");
      assertThat(model.shown()).isEmpty();
    }
  }

  @Test
  void whoeverLeavesThePageLeavesNothingBehind() {
    try (TestDay day = new TestDay(folder, TestDay.EIGHT, 2)) {
      String words = words(day, 1);
      Window.run(
          () -> {
            OneStintModel model = model(day);
            Scene scene = page(day, new Look(), model);
            model.begin();
            model.show("P. Wier", "1", words);
            assertThat(text(scene)).contains("Shock ");
            scene.setRoot(new Pane());
            assertThat(model.shown()).isEmpty();
            assertThat(model.phaseProperty().get()).isEqualTo(OneStintModel.Phase.GONE);
          });
    }
  }

  @Test
  void theRidersPageAsksWhetherTheRiderSawAndBreaksTheBlindInThatStintAlone() {
    try (TestDay day = new TestDay(folder, TestDay.EIGHT, 2)) {
      for (int stint = 1; stint <= 2; stint++) {
        String words = words(day, stint);
        boolean saw = stint == 2;
        String typed = String.valueOf(stint);
        Window.run(
            () -> {
              OneStintModel slip = model(day);
              slip.begin();
              slip.show("P. Wier", typed, words);
              slip.leave();
              OneStintModel riders = model(day);
              Scene scene = ride(day, new Look(), riders);
              day.clock().move(Deaf.FOR);
              button(scene, saw ? "I saw or heard it" : "I did not").fire();
              assertThat(riders.askedProperty().get()).isEmpty();
              assertThat(text(scene)).doesNotContain("TEXT 'Stint " + typed + ": did you see");
              scene.setRoot(new Pane());
            });
      }
      assertThat(day.state().blindBroken()).extracting(Fact.BlindBroken::stint).containsExactly(2);
      assertThat(day.state().oneStint().values()).noneMatch(each -> each.open());
    }
  }

  @Test
  void whatIsWrongIsSaidInASentenceAndThreeWrongWordsCostAMinute() {
    try (TestDay day = new TestDay(folder, TestDay.EIGHT, 2)) {
      String words = words(day, 1);
      OneStintModel model = model(day);
      model.begin();
      model.show("P. Wier", "x", words);
      assertThat(model.troubleProperty().get()).contains("x").endsWith(".");
      model.show(" ", "1", words);
      assertThat(model.troubleProperty().get()).isNotEmpty();
      assertThat(day.state().oneStint()).isEmpty();
      for (int i = 0; i < 3; i++) {
        model.show("P. Wier", "1", "outline outline outline");
      }
      model.show("P. Wier", "1", words);
      assertThat(model.troubleProperty().get()).contains("60");
      assertThat(model.shown()).isEmpty();
      day.clock().move(Duration.ofSeconds(60));
      model.show("P. Wier", "1", words);
      assertThat(model.shown()).isPresent();
    }
    try (TestDay day = new TestDay(folder, TestDay.at("level: drawn"), 3)) {
      OneStintModel model = model(day);
      model.begin();
      assertThat(model.phaseProperty().get()).isEqualTo(OneStintModel.Phase.REFUSED);
      assertThat(model.troubleProperty().get()).endsWith(".");
    }
  }

  @Test
  void byKeysAloneFromTheSlipToTheQuestion() {
    try (TestDay day = new TestDay(folder, TestDay.EIGHT, 2)) {
      String words = words(day, 1);
      OneStintModel model = Window.call(() -> model(day));
      Stage stage = Window.call(Stage::new);
      Keyboard keys =
          Window.call(
              () -> {
                stage.setScene(page(day, new Look(), model));
                stage.show();
                stage.requestFocus();
                return new Keyboard(stage.getScene());
              });
      Window.run(() -> day.clock().move(Deaf.FOR));
      keys.choose("Somebody swaps for one stint");
      assertThat(keys.here()).startsWith("Your name");
      Window.run(() -> day.clock().move(Deaf.FOR));
      keys.type("P. Wier");
      keys.press(KeyCode.ENTER);
      keys.type("1");
      keys.press(KeyCode.ENTER);
      keys.type(words);
      keys.press(KeyCode.ENTER);
      assertThat(model.phaseProperty().get()).isEqualTo(OneStintModel.Phase.SHOWN);
      assertThat(keys.here()).as("words, which no key presses").startsWith("|Stint 1");
      keys.press(KeyCode.ENTER);
      assertThat(model.phaseProperty().get()).isEqualTo(OneStintModel.Phase.SHOWN);
      keys.press(KeyCode.ESCAPE);
      assertThat(model.phaseProperty().get()).isEqualTo(OneStintModel.Phase.GONE);
      Window.run(() -> day.clock().move(Deaf.FOR));
      keys.goTo("To the Ride page");
      Window.run(stage::close);
    }
  }

  /** Looked at. */
  @Test
  void inEveryThemeAndWithLargeTextNothingIsCut() {
    try (TestDay day = new TestDay(folder, TestDay.EIGHT, 2)) {
      String words = words(day, 1);
      Window.run(
          () -> {
            Look look = new Look();
            OneStintModel model = model(day);
            Scene scene = page(day, look, model);
            shown(scene, look, "one-stint-door");
            model.begin();
            shown(scene, look, "one-stint-asks");
            model.show("P. Wier", "1", words);
            shown(scene, look, "one-stint-shown");
            model.hide();
            shown(scene, look, "one-stint-gone");
            scene.setRoot(new Pane());
            Scene rides = ride(day, look, model(day));
            shown(rides, look, "one-stint-ride");
            rides.setRoot(new Pane());
          });
    }
  }

  private static void shown(Scene scene, Look look, String moment) {
    for (Theme theme : Theme.values()) {
      for (double scale : new double[] {1, 2}) {
        look.themeProperty().set(theme);
        look.textScaleProperty().set(scale);
        String name =
            String.format(
                Locale.ROOT,
                "%s-%s-%.0f",
                moment,
                theme.name().toLowerCase(Locale.ROOT),
                100 * scale);
        text(scene);
        Window.picture(scene, name);
        assertThat(Within.of(scene.getRoot(), name).wrong()).isEmpty();
      }
    }
    look.themeProperty().set(Theme.PAPER);
    look.textScaleProperty().set(1);
  }
}
