package blindlap.screen.review;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.ScoredByCode;
import blindlap.desk.TestDay;
import blindlap.ride.RideQuestions;
import blindlap.screen.Models;
import blindlap.screen.NoDialogs;
import blindlap.screen.SceneText;
import blindlap.screen.Window;
import blindlap.screen.Within;
import blindlap.screen.part.Background;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import blindlap.screen.ride.RideModel;
import blindlap.session.day.DeviationKind;
import blindlap.session.day.LapId;
import java.nio.file.Path;
import java.util.List;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.control.TextField;
import javafx.scene.control.ToggleButton;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Values that somebody scores later, by code. */
class ByCodeTest {
  private static final String HARSHNESS = "harshness at the hands";
  private static final String PLAN =
      TestDay.EIGHT.replace(
          "high_words: unbearable}", "high_words: unbearable, assessor: N. Falk}");

  @TempDir Path folder;

  @BeforeAll
  static void startWindowSystem() throws InterruptedException {
    Window.start();
    Window.run(Fonts::load);
  }

  private static void ride(TestDay day) {
    day.desk().riderDays().handedOver(day.id(), 0);
    day.desk().riderDays().warmUp(day.id());
    for (int stint = 1; stint <= 8; stint++) {
      LapId lap = new LapId(stint, 1);
      day.desk().riderDays().handedOver(day.id(), stint);
      day.watched(lap, "lap time", 90 + stint);
      day.desk().riderDays().ridden(day.id(), lap);
    }
    day.desk().riderDays().closeDay(day.id());
  }

  @Test
  void theRiderIsNotAskedWhatSomebodyElseScores() {
    try (TestDay day = new TestDay(folder, PLAN, 2)) {
      RideModel ride = Models.ride(day);
      assertThat(ride.questions().questions())
          .extracting(RideQuestions.Question::name)
          .contains("grip in the rocks")
          .doesNotContain(HARSHNESS);
    }
  }

  @Test
  void codesStandBySizeAndWhatIsTypedIsOnRecordWithWhoScored() {
    try (TestDay day = new TestDay(folder, PLAN, 2)) {
      ride(day);
      ReviewModel review = Models.review(day.desk(), Background.immediate());
      review.open(day.id());
      Window.run(
          () -> {
            Look look = new Look();
            ReviewPage page = new ReviewPage(look, review, new NoDialogs());
            Scene scene = new Scene(page, 1366, 768);
            look.dress(scene);
            laidOut(page);
            button(page, "Hand over to N. Falk: score by code").fire();
            laidOut(page);
            Window.picture(scene, "by-code");
            assertThat(Within.of(page, "by code").wrong()).isEmpty();
            String words = SceneText.of(scene);
            assertThat(words)
                .contains("Do you know which is which?", HARSHNESS)
                .doesNotContain("Shock", "lap time", "R. Lind", "Correct");
            List<Integer> codes = day.state().day().codes().stream().sorted().toList();
            int before = -1;
            for (int i = 0; i < codes.size(); i++) {
              int at = words.indexOf(String.valueOf(codes.get(i)));
              assertThat(at).isGreaterThan(before);
              before = at;
              field(page, codes.get(i) + ", " + HARSHNESS).setText(String.valueOf(40 + i));
            }
            button(page, "Record what was scored").fire();
            assertThat(day.state().corrections()).as("asked who knows").isEmpty();
            toggle(page, "Do you know which is which?: no").fire();
            button(page, "Record what was scored").fire();
            laidOut(page);
            assertThat(SceneText.of(scene)).contains("Hand over to N. Falk");
          });
      assertThat(day.state().corrections())
          .hasSize(8)
          .allMatch(
              c ->
                  c.reason().equals("scored by code by N. Falk, who does not know which is which"));
      List<ScoredByCode.Row> rows = ScoredByCode.rows(day.state());
      for (int i = 0; i < rows.size(); i++) {
        assertThat(day.state().lap(rows.get(i).lap()).orElseThrow().values().get(HARSHNESS))
            .isEqualByComparingTo(String.valueOf(40 + i));
      }
      assertThat(day.state().deviations())
          .noneMatch(each -> each.kind() == DeviationKind.SCORER_KNOWS_KEY);
    }
  }

  @Test
  void whoKnowsWhichIsWhichIsADeclaredDeviation() {
    try (TestDay day = new TestDay(folder, PLAN, 2)) {
      ride(day);
      ReviewModel review = Models.review(day.desk(), Background.immediate());
      review.open(day.id());
      ByCodeModel model = review.blind().byCode("N. Falk");
      model.record();
      assertThat(model.troubleProperty().get()).contains("Nothing was recorded");
      model.knows(true);
      model.record();
      assertThat(model.troubleProperty().get()).contains("No value was typed");
      model.type(new LapId(1, 1), HARSHNESS, "far too much");
      model.record();
      assertThat(model.troubleProperty().get()).isNotEmpty();
      assertThat(day.state().corrections()).isEmpty();
      model.type(new LapId(1, 1), HARSHNESS, "44");
      model.record();
      assertThat(model.troubleProperty().get()).isEmpty();
      assertThat(day.state().corrections()).hasSize(1);
      assertThat(day.state().deviations())
          .filteredOn(each -> each.kind() == DeviationKind.SCORER_KNOWS_KEY)
          .hasSize(1);
    }
  }

  private static void laidOut(ReviewPage page) {
    page.applyCss();
    page.layout();
  }

  private static Button button(ReviewPage page, String words) {
    return page.lookupAll(".button").stream()
        .filter(Button.class::isInstance)
        .map(Button.class::cast)
        .filter(button -> words.equals(button.getText()))
        .findFirst()
        .orElseThrow(() -> new AssertionError("no button " + words));
  }

  private static TextField field(ReviewPage page, String name) {
    return page.lookupAll(".text-field").stream()
        .filter(node -> name.equals(node.getAccessibleText()))
        .map(TextField.class::cast)
        .findFirst()
        .orElseThrow(() -> new AssertionError("no field " + name));
  }

  private static ToggleButton toggle(ReviewPage page, String name) {
    return page.lookupAll(".toggle-button").stream()
        .filter(node -> name.equals(node.getAccessibleText()))
        .map(ToggleButton.class::cast)
        .findFirst()
        .orElseThrow(() -> new AssertionError("no choice " + name));
  }
}
