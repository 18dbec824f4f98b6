package blindlap.screen.friend;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.PreparedUnits;
import blindlap.desk.TestDay;
import blindlap.plan.Setting;
import blindlap.screen.SceneText;
import blindlap.screen.Window;
import blindlap.screen.Within;
import blindlap.screen.part.Background;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import blindlap.session.SessionState;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.Scene;
import javafx.scene.control.Label;
import javafx.scene.control.Labeled;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a friend does beforehand, and what of it can be seen by whom. */
class FriendPageTest {
  private static final String PIN = "4711";
  private static final String MASKED = TestDay.at("level: masked, prepared_by: M. Oster");

  @TempDir Path folder;

  @BeforeAll
  static void startWindowSystem() throws InterruptedException {
    Window.start();
    Window.run(Fonts::load);
  }

  private static FriendModel model(TestDay day) {
    FriendModel model =
        new FriendModel(
            day.desk().aloneDays(),
            day.desk().helperDays(),
            day.desk().masks(),
            day.clock(),
            Background.immediate());
    model.open(day.id());
    return model;
  }

  @Test
  void labelsAreDrawnNotedWithThePhraseAndSealedOnceTwoWordsCameBack() {
    try (TestDay day = new TestDay(folder, MASKED, 2)) {
      FriendModel model = model(day);
      assertThat(model.phaseProperty().get()).isEqualTo(FriendModel.Phase.PIN);
      assertThat(model.wordsProperty().get()).contains("M. Oster", "Rider: look away");
      model.begin(PIN);
      FriendMasks masks = model.masks();
      masks.draw();
      assertThat(masks.stepProperty().get()).isEqualTo(FriendMasks.Step.PHRASE);
      assertThat(masks.lines()).hasSize(2).allMatch(line -> line.matches("[XY]: Shock [KL]"));
      List<String> words = List.of(masks.phrase().split(" "));
      assertThat(words).hasSize(6);
      masks.noted();
      masks.seal("no such");
      assertThat(masks.wrongProperty().get()).isNotEmpty();
      assertThat(day.state().masks()).as("nothing is sealed yet").isEmpty();
      masks.noted();
      masks.seal(asked(masks, words));
      assertThat(model.troubleProperty().get()).isEmpty();
      assertThat(day.state().masks()).isPresent();
      assertThat(model.phaseProperty().get()).isEqualTo(FriendModel.Phase.DONE);
      assertThat(masks.lines()).isEmpty();
      assertThat(masks.phrase()).isEmpty();
    }
  }

  private static String asked(FriendMasks masks, List<String> words) {
    List<String> nth = List.of("1st", "2nd", "3rd", "4th", "5th", "6th");
    StringBuilder typed = new StringBuilder();
    for (int i = 0; i < nth.size(); i++) {
      if (masks.question().contains(nth.get(i))) {
        typed.append(typed.isEmpty() ? "" : " ").append(words.get(i));
      }
    }
    return typed.toString();
  }

  @Test
  void twoLabelsOnOnePartAreRefusedInOneSentence() {
    try (TestDay day = new TestDay(folder, MASKED, 2)) {
      FriendModel model = model(day);
      model.begin(PIN);
      model.masks().choose(List.of(0, 0));
      assertThat(model.masks().wrongProperty().get())
          .isEqualTo("Every label needs a setup of its own. Nothing was taken.");
      model.masks().choose(List.of(1, 0));
      assertThat(model.masks().lines()).containsExactly("X: Shock L", "Y: Shock K");
    }
  }

  @Test
  void whatWasChosenIsGoneWhenThePageIsLeftBeforeItIsSealed() {
    try (TestDay day = new TestDay(folder, MASKED, 2)) {
      FriendModel model = model(day);
      model.begin(PIN);
      model.masks().draw();
      model.leave();
      assertThat(model.masks().lines()).isEmpty();
      assertThat(model.masks().phrase()).isEmpty();
      assertThat(model.phaseProperty().get()).isEqualTo(FriendModel.Phase.PIN);
      assertThat(day.state().masks()).isEmpty();
    }
  }

  @Test
  void unitsAreMeasuredAndRecordedAllAtOnce() {
    try (TestDay day =
        new TestDay(folder, TestDay.at("level: prepared, prepared_by: M. Oster"), 2)) {
      FriendModel model = model(day);
      model.begin(PIN);
      assertThat(model.units().open()).isFalse();
      model.phrase("wrong words that are no phrase");
      assertThat(model.troubleProperty().get()).isNotEmpty();
      model.phrase(day.phrase());
      FriendUnits units = model.units();
      assertThat(units.count()).isEqualTo(9);
      List<PreparedUnits.Unit> all = new PreparedUnits(day.helper()).units();
      units.write();
      assertThat(day.state().helperRecords()).as("nothing is measured yet").isEmpty();
      measure(units, all);
      units.measured(2, 1, "29");
      assertThat(units.outside(2, 1)).isNotEmpty();
      assertThat(units.missing()).hasSize(1);
      units.accept(2, 1, "no more preload");
      assertThat(units.missing()).isEmpty();
      units.write();
      assertThat(model.troubleProperty().get()).isEmpty();
      assertThat(day.state().helperRecords()).hasSize(9);
      assertThat(model.phaseProperty().get()).isEqualTo(FriendModel.Phase.DONE);
      oneStintIsOffered(model);
    }
  }

  private static void oneStintIsOffered(FriendModel model) {
    Window.run(
        () -> {
          FriendPage page =
              new FriendPage(new Look(), model, new Label("helper"), () -> {}, () -> {});
          Scene scene = new Scene(page, 1366, 768);
          String offer = "Somebody swaps for one stint";
          assertThat(SceneText.of(scene)).doesNotContain(offer);
          page.offerOneStint(() -> {});
          assertThat(SceneText.of(scene)).contains(offer);
        });
  }

  private static void measure(FriendUnits units, List<PreparedUnits.Unit> all) {
    for (int unit = 0; unit < all.size(); unit++) {
      List<Setting> settings = all.get(unit).settings();
      for (int setting = 0; setting < settings.size(); setting++) {
        units.measured(unit, setting, settings.get(setting).value());
      }
    }
  }

  /** Looked at; what is behind the cover is not in the scene while it is closed. */
  @Test
  void behindTheCoverThereIsNothingToReadAndAtEverySizeNothingIsCutOff() {
    try (TestDay day = new TestDay(folder, MASKED, 2)) {
      FriendModel model = model(day);
      Window.run(
          () -> {
            Look look = new Look();
            FriendPage page = new FriendPage(look, model, new Label("helper"), () -> {}, () -> {});
            Scene scene = new Scene(page, 1366, 768);
            look.dress(scene);
            List<String> moments = new ArrayList<>();
            shown(scene, look, "friend-pin", moments);
            model.begin(PIN);
            shown(scene, look, "friend-choose", moments);
            model.masks().draw();
            shown(scene, look, "friend-phrase", moments);
            String phrase = model.masks().phrase();
            assertThat(SceneText.of(scene)).contains(phrase, "X: Shock");
            model.cover().hide();
            assertThat(SceneText.of(scene)).doesNotContain(phrase).doesNotContain("X: Shock");
            model.cover().reopen(PIN);
            assertThat(SceneText.of(scene)).contains(phrase);
            model.masks().noted();
            shown(scene, look, "friend-words", moments);
            assertThat(SceneText.of(scene)).doesNotContain(phrase).doesNotContain("X: Shock");
            assertThat(moments).hasSize(8);
          });
    }
  }

  private static void shown(Scene scene, Look look, String name, List<String> moments) {
    for (double text : new double[] {1, 2}) {
      look.textScaleProperty().set(text);
      scene.getRoot().applyCss();
      scene.getRoot().layout();
      Window.picture(scene, name + (text > 1 ? "-200" : ""));
      assertThat(Within.of(scene.getRoot(), name + " at " + text).wrong()).isEmpty();
      moments.add(name + text);
    }
    look.textScaleProperty().set(1);
  }

  @Test
  void whereNobodyHasAnythingToDoItSaysSo() {
    try (TestDay day = new TestDay(folder, TestDay.at("level: drawn"), 2)) {
      FriendModel model = model(day);
      assertThat(model.phaseProperty().get()).isEqualTo(FriendModel.Phase.NOTHING);
      assertThat(model.wordsProperty().get()).contains("you swap yourself");
    }
    try (TestDay day = new TestDay(folder, TestDay.EIGHT, 3)) {
      FriendModel model = model(day);
      assertThat(model.phaseProperty().get()).isEqualTo(FriendModel.Phase.OTHER);
      Window.run(
          () -> {
            Label helpers = new Label("the helper's page");
            Parent page = new FriendPage(new Look(), model, helpers, () -> {}, () -> {});
            assertThat(page.getChildrenUnmodifiable()).containsExactly((Node) helpers);
            assertThat(((Labeled) page.getChildrenUnmodifiable().get(0)).getText())
                .contains("helper");
          });
      SessionState state = day.state();
      assertThat(state.covered()).isFalse();
    }
  }
}
