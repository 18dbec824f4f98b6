package blindlap.screen.review;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.Desk;
import blindlap.desk.SampleDays;
import blindlap.review.TellingAnalysis;
import blindlap.review.TellingTrial;
import blindlap.screen.Models;
import blindlap.screen.NoDialogs;
import blindlap.screen.SceneText;
import blindlap.screen.Window;
import blindlap.screen.Within;
import blindlap.screen.part.Background;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import blindlap.screen.part.Theme;
import blindlap.session.SessionState;
import blindlap.wording.TellingText;
import blindlap.wording.TellingWords;
import javafx.scene.Scene;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The Review page of a telling run: the count first, every trial, chance; no speed, no liking. */
class TellingReviewTest {
  @BeforeAll
  static void window() throws InterruptedException {
    Window.start();
    Window.run(Fonts::load);
  }

  private static ReviewPage page(Desk desk, SessionState state, Look look) {
    ReviewModel model = Models.review(desk, Background.immediate());
    model.open(state.id());
    return new ReviewPage(look, model, new NoDialogs());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"clicks-told-on-alder-bank", "pads-told-on-slate-run", "same-dial-on-alder-bank"})
  void theCountEveryTrialAndChanceStandOnThePage(String name) {
    SampleDays.ride(
        name,
        (desk, state) -> {
          TellingAnalysis analysis = desk.reviews().telling(state);
          TellingWords words = new TellingText(analysis).words();
          Window.run(
              () -> {
                Look look = new Look();
                Scene scene = new Scene(page(desk, state, look), 1280, 1800);
                look.dress(scene);
                Window.look(scene, "review-" + name);
                String text = SceneText.of(scene);
                assertThat(text)
                    .contains(words.headline().phrase())
                    .contains(words.lead())
                    .contains(words.whyTitle())
                    .contains(words.why())
                    .contains(words.notSaid())
                    .contains(words.voids())
                    .contains(TellingWords.question());
                words.sure().forEach(line -> assertThat(text).contains(line));
                String spoken = scene.getRoot().lookup("#trials .plot").getAccessibleText();
                for (TellingTrial trial : analysis.finding().trials()) {
                  assertThat(spoken).contains(words.spoken(trial));
                }
                assertThat(text).doesNotContain(" s a lap").doesNotContain("worthwhile");
              });
        });
  }

  @Test
  void theBlindReviewSaysWhichTrialsCountAndNothingOfTheAnswers() {
    SampleDays.sealed(
        "clicks-told-on-alder-bank",
        (desk, state, phrase) ->
            Window.run(
                () -> {
                  Look look = new Look();
                  Scene scene = new Scene(page(desk, state, look), 1280, 1400);
                  look.dress(scene);
                  Window.look(scene, "blind-review-telling");
                  String text = SceneText.of(scene);
                  assertThat(text)
                      .contains("14 of 15 trials answered")
                      .contains("; 1 void, 0 without an answer.")
                      .contains("void: crash")
                      .contains(state.code(1) + " · " + state.code(2) + " · " + state.code(3))
                      .doesNotContain("certain")
                      .doesNotContain("right")
                      .doesNotContain("Correct a value");
                  assertThat(scene.getRoot().lookupAll(".combo-box")).isEmpty();
                }));
  }

  @Test
  void whatTheRiderSaidBeforeStandsBesideTheCount() {
    SampleDays.ride(
        "clicks-told-on-alder-bank",
        (desk, state) ->
            Window.run(
                () -> {
                  Look look = new Look();
                  Scene scene = new Scene(page(desk, state, look), 1280, 1800);
                  look.dress(scene);
                  assertThat(SceneText.of(scene))
                      .contains("I would notice two clicks.")
                      .contains("Nobody feels that.");
                }));
  }

  @ParameterizedTest
  @CsvSource({"1182, 1, 1366", "900, 1, narrow", "1182, 2, 200"})
  void inSmallWindowsAndWithLargeTextNothingIsCut(double width, double text, String as) {
    SampleDays.ride(
        "pads-told-on-slate-run",
        (desk, state) ->
            Window.run(
                () -> {
                  Look look = new Look();
                  look.textScaleProperty().set(text);
                  ReviewPage page = page(desk, state, look);
                  Scene scene = new Scene(page, width, 2400);
                  look.dress(scene);
                  look.themeProperty().set(Theme.DARK);
                  Window.look(scene, "review-telling-" + as);
                  Within within = Within.of(page, as);
                  assertThat(within.wrong()).isEmpty();
                  assertThat(within.controls()).isGreaterThan(12);
                }));
  }
}
