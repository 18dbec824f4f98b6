package blindlap.screen;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.RamFolder;
import blindlap.desk.TestDay;
import blindlap.screen.part.Background;
import blindlap.screen.review.ReviewModel;
import blindlap.screen.ride.KeyInModel;
import blindlap.screen.ride.RideModel;
import blindlap.session.day.LapId;
import java.math.BigDecimal;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A comma is as good as a point in the number fields of Ride, key-in and the blind review, and a
 * text with both is refused in a sentence. Plan has its own walk over every field
 * (PlanFieldsHoldTest), Swap its measured values (MeasuredValuesTest); a PIN is no number.
 */
class DecimalCommaTest {
  private static final String TIME = "lap time";

  private @TempDir(factory = RamFolder.class) Path folder;
  private TestDay day;

  @BeforeEach
  void start() {
    day = new TestDay(folder, TestDay.EIGHT, 5);
  }

  @AfterEach
  void end() {
    day.close();
  }

  private BigDecimal recorded() {
    return day.state().lap(new LapId(1, 1)).orElseThrow().values().get(TIME);
  }

  private KeyInModel keyIn() {
    KeyInModel made =
        new KeyInModel(day.desk().keyingIn(), day.desk().riderDays(), Background.immediate());
    made.open(day.id());
    return made;
  }

  private static void type(KeyInModel model, String typed) {
    model.cell(model.stageProperty().get(), 0, model.columns().indexOf(TIME), typed);
    model.typed();
  }

  @Test
  void aTimeOnTheRidePage() {
    RideModel model = Models.ride(day);
    model.handedOver();
    model.warmUpRidden();
    model.handedOver();
    model.watches().timedBy("STARTER");
    model.lapDone();
    model.watches().typeTime(TIME, "1.093,5");
    assertThat(model.troubleProperty().get()).contains("both a point and a comma");
    model.watches().typeTime(TIME, "93,5");
    assertThat(recorded()).isEqualByComparingTo("93.5");
  }

  @Test
  void aCellKeyedInFromPaper() {
    KeyInModel model = keyIn();
    type(model, "93,5");
    type(model, "93.5");
    assertThat(model.troubleProperty().get()).isEmpty();
    assertThat(recorded()).isEqualByComparingTo("93.5");
  }

  @Test
  void aCellWithBothSignsIsRefused() {
    KeyInModel model = keyIn();
    type(model, "1.093,5");
    type(model, "1.093,5");
    assertThat(model.wrong().values() + model.troubleProperty().get())
        .contains("both a point and a comma");
    assertThat(day.state().lapsRidden()).isZero();
  }

  @Test
  void aCorrectedValueOfTheBlindReview() {
    KeyInModel typed = keyIn();
    type(typed, "93.5");
    type(typed, "93.5");
    day.desk().riderDays().closeDay(day.id());
    ReviewModel model = Models.review(day.desk(), Background.immediate());
    model.open(day.id());
    model.blind().correct("1", TIME, "1.094,5", "misread");
    assertThat(model.blind().troubleProperty().get()).contains("both a point and a comma");
    model.blind().correct("1", TIME, "94,5", "misread");
    assertThat(recorded()).isEqualByComparingTo("94.5");
  }
}
