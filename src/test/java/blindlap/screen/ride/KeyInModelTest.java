package blindlap.screen.ride;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.RamFolder;
import blindlap.desk.TellingTestDay;
import blindlap.desk.TestDay;
import blindlap.plan.TellingTask;
import blindlap.screen.part.Background;
import blindlap.screen.ride.KeyInModel.Stage;
import blindlap.session.Fact;
import blindlap.session.day.DeviationKind;
import blindlap.session.day.Guess;
import blindlap.session.day.LapId;
import blindlap.session.day.Source;
import blindlap.session.day.Trial;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class KeyInModelTest {
  private static final String GRIP = "grip in the rocks";

  private @TempDir(factory = RamFolder.class) Path folder;
  private TestDay day;
  private KeyInModel model;

  @BeforeEach
  void start() {
    day = new TestDay(folder, TestDay.EIGHT, 5);
    model = model();
  }

  @AfterEach
  void end() {
    day.close();
  }

  private KeyInModel model() {
    KeyInModel made =
        new KeyInModel(day.desk().keyingIn(), day.desk().riderDays(), Background.immediate());
    made.open(day.id());
    return made;
  }

  private void type(int lap, String column, String typed) {
    model.cell(model.stageProperty().get(), lap - 1, model.columns().indexOf(column), typed);
  }

  private void firstLap(String grip) {
    type(1, "lap time", "1:33.1");
    type(1, GRIP, grip);
    type(1, "guess", "B");
  }

  private Map<String, BigDecimal> recorded(int lap) {
    return day.state().lap(new LapId(lap, 1)).orElseThrow().values();
  }

  @Test
  void aMeasureThatTheSheetsSayWasScoredKnowingTheKeyIsADeviationOfEachStintWithAValue() {
    model.knowsKey(GRIP, true);
    model.knowsKey("lap time", true);
    model.knowsKey("lap time", false);
    firstLap("45");
    type(2, "lap time", "1:34");
    model.typed();
    firstLap("45");
    type(2, "lap time", "1:34");
    model.typed();
    assertThat(model.stageProperty().get()).isEqualTo(Stage.DONE);
    assertThat(recorded(1)).containsKey(GRIP);
    assertThat(day.state().deviations())
        .containsExactly(new Fact.DeviationNoted(1, DeviationKind.SCORER_KNOWS_KEY, GRIP));
  }

  @Test
  void typedTwiceAlikeItIsRecordedFromPaperInMillimetresOfTheHundredMillimetreLine() {
    firstLap("62");
    model.typed();
    assertThat(model.stageProperty().get()).isEqualTo(Stage.AGAIN);
    assertThat(model.rows().get(0).subList(2, 7)).containsOnly("");
    firstLap("62.0");
    model.typed();
    assertThat(model.troubleProperty().get()).isEmpty();
    assertThat(model.stageProperty().get()).isEqualTo(Stage.DONE);
    assertThat(recorded(1).get(GRIP)).isEqualByComparingTo("62");
    assertThat(recorded(1).get("lap time")).isEqualByComparingTo("93.1");
    assertThat(day.state().entries())
        .anyMatch(
            e ->
                e.entry().fact() instanceof Fact.LapRidden ridden
                    && ridden.source() == Source.PAPER);
  }

  @Test
  void whatDiffersIsShownWithBothValuesAndOnlyWhatIsSettledIsRecorded() {
    firstLap("62");
    model.typed();
    firstLap("26");
    model.typed();
    assertThat(model.stageProperty().get()).isEqualTo(Stage.SETTLE);
    assertThat(day.state().lapsRidden()).isZero();
    KeyInModel.Row row = model.differences().get(0);
    assertThat(model.differences()).hasSize(1);
    assertThat(row.words()).contains("lap 1").contains(GRIP);
    assertThat(List.of(row.first(), row.second())).containsExactly("62", "26");
    model.settle(List.of("61"));
    assertThat(model.stageProperty().get()).isEqualTo(Stage.DONE);
    assertThat(recorded(1).get(GRIP)).isEqualByComparingTo("61");
  }

  @Test
  void aDifferenceLeftOpenIsNoAnswerAndNothingIsRecorded() {
    firstLap("62");
    model.typed();
    firstLap("26");
    model.typed();
    model.settle(List.of(""));
    assertThat(model.troubleProperty().get()).contains("Still open").contains(GRIP);
    assertThat(model.stageProperty().get()).isEqualTo(Stage.SETTLE);
    assertThat(day.state().lapsRidden()).isZero();
  }

  @Test
  void anAnswerThatOnlyOneTypingHasMayBeSettledAsMissing() {
    firstLap("62");
    model.typed();
    firstLap("");
    model.typed();
    model.settle(List.of(""));
    assertThat(recorded(1)).containsOnlyKeys("lap time");
  }

  @Test
  void cellsWithoutAnAnswerAreMissingAndRowsWithoutAnyAreLeftForLater() {
    for (int turn = 0; turn < 2; turn++) {
      type(1, GRIP, "0");
      type(3, "void", "traffic");
      model.typed();
    }
    assertThat(model.troubleProperty().get()).isEmpty();
    assertThat(recorded(1)).containsOnlyKeys(GRIP);
    assertThat(recorded(3)).isEmpty();
    assertThat(day.state().lap(new LapId(3, 1)).orElseThrow().voided()).isPresent();
    assertThat(day.state().lapsRidden()).isEqualTo(2);
    model.open(day.id());
    // Lap 1 has answers that are open still; lap 3 is void.
    assertThat(model.rows())
        .extracting(row -> row.get(0))
        .contains("1")
        .doesNotContain("3")
        .hasSize(7);
  }

  @Test
  void whatWasTypedIsThereAgainAfterTheProgramWasLeftHalfWay() {
    firstLap("62");
    model = model();
    assertThat(model.stageProperty().get()).isEqualTo(Stage.FIRST);
    assertThat(model.rows().get(0)).contains("1:33.1", "62", "B");
    model.typed();
    type(1, "lap time", "1:33.1");
    model = model();
    assertThat(model.stageProperty().get()).isEqualTo(Stage.AGAIN);
    assertThat(model.rows().get(0)).contains("1:33.1").doesNotContain("62");
    firstLap("62");
    model.typed();
    assertThat(recorded(1).get(GRIP)).isEqualByComparingTo("62");
    assertThat(day.desk().notebook().drafts()).isEmpty();
  }

  @Test
  void aLapThatAnotherWindowRecordedMeanwhileIsNamedAndTheRestIsKept() {
    firstLap("62");
    type(2, GRIP, "44");
    model.typed();
    firstLap("62");
    type(2, GRIP, "44");
    day.desk().riderDays().handedOver(day.id(), 1);
    day.desk().riderDays().score(day.id(), new LapId(1, 1), GRIP, BigDecimal.valueOf(50), false);
    day.desk().riderDays().ridden(day.id(), new LapId(1, 1));
    model.typed();
    assertThat(model.troubleProperty().get()).contains("lap 1".substring(4));
    assertThat(model.stageProperty().get()).isEqualTo(Stage.FIRST);
    assertThat(model.rows().get(1)).contains("44");
    model.open(day.id());
    // What was left open on lap 1 may still be typed; its score may not.
    assertThat(model.rows().get(0).get(0)).isEqualTo("1");
    assertThat(model.given(0, model.columns().indexOf(GRIP))).isTrue();
    assertThat(model.given(0, model.columns().indexOf("trust"))).isFalse();
    assertThat(model.rows().get(1)).contains("44");
  }

  @Test
  void aValueOffTheScaleIsRefusedByLapAndTheTableIsKeptToMendIt() {
    firstLap("162");
    model.typed();
    firstLap("162");
    model.typed();
    assertThat(model.troubleProperty().get()).contains(GRIP).contains("100");
    assertThat(day.state().lapsRidden()).isZero();
    assertThat(model.rows().get(0)).contains("1:33.1", "162");
    type(1, GRIP, "62");
    model.typed();
    model.typed();
    assertThat(model.differences()).hasSize(1);
    model.settle(List.of("62"));
    assertThat(recorded(1).get(GRIP)).isEqualByComparingTo("62");
  }

  @Test
  void whatCannotStandInACellIsSaidByLapAsSoonAsTheCellIsLeft() {
    type(3, "lap time", "1:33.1");
    assertThat(model.wrong()).isEmpty();
    type(3, GRIP, "162");
    assertThat(model.wrong()).containsOnlyKeys(2);
    assertThat(model.wrong().get(2)).contains("lap 3", "162", GRIP).doesNotContain("line ");
    assertThat(model.stageProperty().get()).isEqualTo(Stage.FIRST);
    type(3, GRIP, "62");
    assertThat(model.wrong()).isEmpty();
    type(6, "void", "slow");
    assertThat(model.wrong()).containsOnlyKeys(5);
    assertThat(model.wrong().get(5)).contains("lap 6", "slow");
  }

  @Test
  void aSetupIsTypedAsAnyBeginningOfItsNameAndAnAmbiguousOneSaysWhichItCouldBe() {
    type(1, "guess", "sho");
    assertThat(model.wrong().get(0)).contains("lap 1", "\"sho\"", "(Shock K, Shock L)");
    type(1, "guess", "shock l");
    assertThat(model.wrong()).isEmpty();
    type(1, "sureness", "f");
    type(1, "cue", "a rattle");
    type(1, "wind", "some");
    model.typed();
    type(1, "guess", "Shock L");
    type(1, "sureness", "fairly sure");
    type(1, "cue", "a rattle");
    type(1, "wind", "some");
    model.typed();
    model.settle(model.differences().stream().map(KeyInModel.Row::second).toList());
    assertThat(model.troubleProperty().get()).isEmpty();
    assertThat(day.state().guesses().get(1))
        .isEqualTo(new Guess(1, Guess.Sureness.FAIRLY_SURE, "a rattle"));
    assertThat(day.state().lap(new LapId(1, 1)).orElseThrow().conditions())
        .containsEntry("wind", "some");
  }

  @Test
  void howManyLapsWereRecordedIsSaidOnceTheyAre() {
    for (int turn = 0; turn < 2; turn++) {
      for (int lap = 1; lap <= 6; lap++) {
        type(lap, "lap time", "1:3" + lap + ".1");
      }
      assertThat(model.recordedProperty().get()).isEmpty();
      model.typed();
    }
    assertThat(model.recordedProperty().get()).isEqualTo("6 laps recorded.");
    assertThat(day.state().lapsRidden()).isEqualTo(6);
  }

  @Test
  void aTellingRunIsTypedTrialByTrialAndAVoidClearedInOneRowClearsWhatWasWrongInAnother() {
    day.close();
    day = new TestDay(folder, TellingTestDay.shocks(TellingTask.TRIANGLE, 4), 6);
    model = model();
    assertThat(model.words()).contains("beside the last lap of its trial");
    assertThat(model.above(0)).isEqualTo("Trial 1: laps 1 to 3");
    assertThat(model.above(1)).isEmpty();
    assertThat(model.above(3)).isEqualTo("Trial 2: laps 4 to 6");
    int answer = model.columns().indexOf("answer");
    assertThat(model.asked(1, answer)).isFalse();
    assertThat(model.asked(2, answer)).isTrue();
    assertThat(model.cellWords(5, answer)).isEqualTo("trial 2, lap 6, answer");

    type(2, "void", "crash");
    type(3, "answer", "2");
    assertThat(model.wrong()).containsOnlyKeys(2);
    assertThat(model.wrong().get(2)).contains("Trial 1 has both a void and an answer");
    type(2, "void", "");
    assertThat(model.wrong()).isEmpty();
    type(5, "void", "crash");
    model.typed();

    type(3, "answer", "3");
    type(5, "void", "crash");
    model.typed();
    assertThat(model.stageProperty().get()).isEqualTo(Stage.SETTLE);
    assertThat(model.differences()).hasSize(1);
    assertThat(model.differences().get(0).words()).isEqualTo("trial 1, lap 3, answer");
    model.settle(List.of("2"));
    assertThat(model.stageProperty().get()).isEqualTo(Stage.DONE);
    assertThat(model.recordedProperty().get()).isEqualTo("2 trials recorded.");
    assertThat(Trial.of(day.state().day()).stream().map(Trial::standing).toList())
        .containsExactly(
            Trial.Standing.ANSWERED, Trial.Standing.VOID, Trial.Standing.OPEN, Trial.Standing.OPEN);
    assertThat(day.state().day().guesses().get(3).setup()).isEqualTo(1);
  }
}
