package blindlap.screen.review;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.AloneDay;
import blindlap.desk.MaskKeeping;
import blindlap.desk.MeasuredValues;
import blindlap.desk.Sessions;
import blindlap.desk.TestDay;
import blindlap.plan.Setting;
import blindlap.screen.Models;
import blindlap.screen.NoDialogs;
import blindlap.screen.SceneText;
import blindlap.screen.Window;
import blindlap.screen.Within;
import blindlap.screen.part.Background;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import blindlap.seal.HelperPhrase;
import blindlap.seal.Masks;
import blindlap.session.HelperEntry;
import blindlap.session.MasksRead;
import blindlap.session.SafetyCheck;
import blindlap.session.SessionState;
import blindlap.session.day.LapId;
import java.nio.file.Path;
import java.util.EnumSet;
import java.util.List;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The end of a day without a helper: the order opens without a phrase, labels are guessed once. */
class MasksReviewTest {
  private static final String MASKED = TestDay.at("level: masked, prepared_by: M. Oster");

  @TempDir Path folder;
  private String phrase = "";

  @BeforeAll
  static void startWindowSystem() throws InterruptedException {
    Window.start();
    Window.run(Fonts::load);
  }

  /** Rides a day to its closed review. */
  private static void ride(TestDay day) {
    AloneDay alone = day.desk().aloneDays().day(day.state()).orElseThrow();
    for (int stint = 0; stint <= 8; stint++) {
      AloneDay.Shown shown = alone.show();
      AloneDay.Work work = ((AloneDay.Shown.Setup) shown).work();
      Integer setup = work.setup();
      HelperEntry entry = HelperEntry.untouched(stint, "R. Lind", setup == null ? 0 : setup);
      for (Setting setting : work.settings()) {
        entry = MeasuredValues.judged(work.settings(), entry, setting.name(), setting.value());
      }
      entry =
          entry
              .withConfirmed(EnumSet.allOf(SafetyCheck.class))
              .withFit(day.state().lapsSoFar(), true);
      assertThat(alone.mount(entry)).isInstanceOf(Sessions.Result.Done.class);
      if (stint == 0) {
        day.desk().riderDays().warmUp(day.id());
        continue;
      }
      LapId lap = new LapId(stint, 1);
      day.watched(lap, "lap time", 90 + (setup == null || setup == 0 ? 0 : 4) + stint % 2);
      day.desk().riderDays().ridden(day.id(), lap);
    }
    day.desk().riderDays().closeDay(day.id());
    day.desk().keys().closeReview(day.id());
  }

  private void seal(TestDay day) {
    MaskKeeping masks = day.desk().masks();
    Masks drawn = masks.typed(day.state(), List.of(1, 0)).orElseThrow();
    HelperPhrase drawnPhrase = masks.phrase().unasked();
    phrase = drawnPhrase.text();
    assertThat(masks.seal(day.state(), drawn, drawnPhrase))
        .isInstanceOf(Sessions.Result.Done.class);
  }

  @Test
  void aDrawnOrderOpensWithoutAPhraseOnceTheReviewIsClosed() {
    try (TestDay day = new TestDay(folder, TestDay.at("level: drawn"), 2)) {
      ride(day);
      ReviewModel review = Models.review(day.desk(), Background.immediate());
      review.open(day.id());
      assertThat(review.stageProperty().get()).isEqualTo(ReviewModel.Stage.BLIND);
      Window.run(
          () -> {
            Scene scene = page(review);
            assertThat(SceneText.of(scene))
                .contains("Open the whole order")
                .doesNotContain("Which is which?", "Helper phrase", "six words");
            press(scene, "Open the whole order");
          });
      assertThat(day.state().unsealed()).isTrue();
      assertThat(review.stageProperty().get()).isEqualTo(ReviewModel.Stage.OPEN);
    }
  }

  @Test
  void ofMaskedLabelsItIsGuessedOnceBeforeAnyFindingAndReadWithTheFriendsPhraseAfterwards() {
    try (TestDay day = new TestDay(folder, MASKED, 2)) {
      seal(day);
      ride(day);
      ReviewModel review = Models.review(day.desk(), Background.immediate());
      review.open(day.id());
      Window.run(
          () -> {
            Scene scene = page(review);
            assertThat(SceneText.of(scene))
                .contains("Which is which?")
                .doesNotContain("Open the whole order");
            choose(scene, "X: Shock L; Y: Shock K");
            press(scene, "This is my guess");
          });
      assertThat(day.state().masksGuessed().orElseThrow().setups()).containsExactly(1, 0);
      Window.run(() -> press(page(review), "Open the whole order"));
      assertThat(day.state().unsealed()).isTrue();
      Window.run(
          () -> {
            Scene scene = page(review);
            Window.picture(scene, "review-masked");
            assertThat(SceneText.of(scene)).contains("Which was which?").doesNotContain("my guess");
          });
      review.masks().read(day.state(), "no such phrase");
      assertThat(review.masks().troubleProperty().get()).isNotEmpty();
      review.masks().read(day.state(), phrase);
      assertThat(review.masks().troubleProperty().get()).isEmpty();
      SessionState read = day.state();
      assertThat(read.masksRead().orElseThrow().setups()).containsExactly(1, 0);
      assertThat(read.masksRead().orElseThrow().from()).isEqualTo(MasksRead.From.PHRASE);
      Window.run(() -> assertThat(SceneText.of(page(review))).doesNotContain("Which was which?"));
    }
  }

  @Test
  void whatStoodUnderTheTapeIsChosenAndNotToGuessIsAnAnswer() {
    try (TestDay day =
        new TestDay(folder, TestDay.at("level: masked, prepared_by: M. Oster, masks: marks"), 2)) {
      ride(day);
      ReviewModel review = Models.review(day.desk(), Background.immediate());
      review.open(day.id());
      Window.run(() -> press(page(review), "I do not guess"));
      assertThat(day.state().masksGuessed().orElseThrow().setups()).isEmpty();
      Window.run(() -> press(page(review), "Open the whole order"));
      Window.run(
          () -> {
            Scene scene = page(review);
            assertThat(SceneText.of(scene)).contains("Take the tape off", "were not sealed");
            choose(scene, "X: Shock K; Y: Shock L");
            press(scene, "This is what the marks say");
          });
      assertThat(day.state().masksRead().orElseThrow().from()).isEqualTo(MasksRead.From.MARKS);
    }
  }

  private static Scene page(ReviewModel review) {
    Look look = new Look();
    Scene scene = new Scene(new ReviewPage(look, review, new NoDialogs()), 1366, 768);
    look.dress(scene);
    scene.getRoot().applyCss();
    scene.getRoot().layout();
    assertThat(Within.of(scene.getRoot(), "review").wrong()).isEmpty();
    return scene;
  }

  private static void press(Scene scene, String words) {
    scene.getRoot().lookupAll(".button").stream()
        .filter(Button.class::isInstance)
        .map(Button.class::cast)
        .filter(button -> words.equals(button.getText()))
        .findFirst()
        .orElseThrow(() -> new AssertionError("no button " + words))
        .fire();
  }

  @SuppressWarnings("unchecked")
  private static void choose(Scene scene, String words) {
    scene.getRoot().lookupAll(".combo-box").stream()
        .map(node -> (ComboBox<String>) node)
        .filter(box -> box.getItems().contains(words))
        .findFirst()
        .orElseThrow(() -> new AssertionError("no choice " + words))
        .setValue(words);
  }
}
