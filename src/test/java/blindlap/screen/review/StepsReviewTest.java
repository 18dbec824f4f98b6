package blindlap.screen.review;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.RamFolder;
import blindlap.desk.Desk;
import blindlap.desk.SampleDays;
import blindlap.desk.StepsTestDay;
import blindlap.desk.TestDay;
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
import blindlap.wording.TrendWords;
import java.nio.file.Path;
import java.util.stream.Collectors;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.Labeled;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Levels have no letters, shapes or inks: the Review page of a steps day does without them. */
class StepsReviewTest {
  private @TempDir(factory = RamFolder.class) Path folder;

  @BeforeAll
  static void window() throws InterruptedException {
    Window.start();
    Window.run(Fonts::load);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {"levels: [4, 7, 10] | 12 | 3", "levels: [3, 5, 7, 9, 11, 14] | 18 | 6"})
  void anUnsealedStepsDayIsShownWithItsLevelsAndGuesses(String levels, int stints, int number) {
    try (TestDay day = new TestDay(folder, StepsTestDay.plan(levels, stints), 4)) {
      StepsTestDay.ride(day, stints, stint -> 180 + stint * 7 % 5);
      Window.run(
          () -> {
            Look look = new Look();
            ReviewModel model = Models.review(day.desk(), Background.immediate());
            model.open(day.id());
            Scene scene = new Scene(new ReviewPage(look, model, new NoDialogs()), 1280, 2400);
            look.dress(scene);
            Window.picture(scene, "review-steps-" + number);
            assertThat(SceneText.of(scene))
                .contains("Shock K, rebound at ")
                .contains(stints + " of " + stints + " stints used");
          });
    }
  }

  private static String words(Node part) {
    return part.lookupAll(".label").stream()
        .map(label -> ((Labeled) label).getText())
        .collect(Collectors.joining("\n"));
  }

  private static ReviewPage page(Desk desk, SessionState state, Look look) {
    ReviewModel model = Models.review(desk, Background.immediate());
    model.open(state.id());
    return new ReviewPage(look, model, new NoDialogs());
  }

  @ParameterizedTest
  @ValueSource(strings = {"rebound-on-heron-line", "air-on-otter-traverse"})
  void everyLevelEveryPairAndTheBendStandOnThePage(String name) {
    SampleDays.ride(
        name,
        (desk, state) -> {
          TrendWords words = TrendWords.of(desk.reviews().finding(state)).orElseThrow();
          Window.run(
              () -> {
                Look look = new Look();
                ReviewPage page = page(desk, state, look);
                Scene scene = new Scene(page, 1280, 1800);
                look.dress(scene);
                Window.look(scene, "review-" + name);
                String shown = words(page.lookup("#levels"));
                assertThat(shown)
                    .contains(words.perUnit())
                    .contains(words.bendTitle())
                    .contains(words.bend());
                assertThat(words.levels()).hasSizeGreaterThan(2);
                String levels = words(page.lookup("#level-means"));
                for (TrendWords.Level level : words.levels()) {
                  assertThat(levels).contains(level.mean()).contains(level.interval());
                }
                String pairs = words(page.lookup("#level-pairs"));
                for (TrendWords.Pair pair : words.pairs()) {
                  assertThat(pairs).contains(pair.levels()).contains(pair.said());
                }
                String whole = words(page);
                assertThat(whole).contains(words.pairsNote());
                assertThat(words.beyond().isPresent()).isEqualTo(name.startsWith("rebound"));
                words.beyond().ifPresent(beyond -> assertThat(whole).contains(beyond));
              });
        });
  }

  @ParameterizedTest
  @CsvSource({"1182, 1, 1366", "900, 1, narrow", "1182, 2, 200"})
  void inSmallWindowsAndWithLargeTextNothingIsCut(double width, double text, String as) {
    SampleDays.ride(
        "rebound-on-heron-line",
        (desk, state) ->
            Window.run(
                () -> {
                  Look look = new Look();
                  look.textScaleProperty().set(text);
                  ReviewPage page = page(desk, state, look);
                  Scene scene = new Scene(page, width, 2400);
                  look.dress(scene);
                  look.themeProperty().set(Theme.DARK);
                  Window.look(scene, "review-steps-" + as);
                  Within within = Within.of(page, as);
                  assertThat(within.wrong()).isEmpty();
                  assertThat(within.controls()).isGreaterThan(20);
                }));
  }
}
