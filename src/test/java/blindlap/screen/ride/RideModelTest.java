package blindlap.screen.ride;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.RamFolder;
import blindlap.desk.TestDay;
import blindlap.ride.RideSheet;
import blindlap.screen.part.Background;
import blindlap.session.Fact;
import blindlap.session.StoredEntry;
import blindlap.session.day.DeviationKind;
import blindlap.session.day.LapId;
import blindlap.session.day.LapState;
import blindlap.timing.TimeRecord;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayDeque;
import java.util.List;
import java.util.Map;
import java.util.Queue;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RideModelTest {
  private static final String GRIP = "grip in the rocks";
  private static final String TIME = "lap time";
  private static final LapId FIRST = new LapId(1, 1);

  private @TempDir(factory = RamFolder.class) Path folder;
  private TestDay day;
  private RideModel model;

  @BeforeEach
  void start() {
    day = new TestDay(folder, TestDay.EIGHT, 5);
    model = model(Background.immediate());
    model.handedOver();
    model.warmUpRidden();
    model.handedOver();
    model.watches().timedBy("STARTER");
    assertThat(stage()).isEqualTo(RideSheet.Stage.SCORED);
  }

  @AfterEach
  void end() {
    day.close();
  }

  private RideModel model(Background background) {
    RideModel made =
        new RideModel(
            day.desk().riderDays(),
            day.desk().notebook()::dataVersion,
            background,
            day.clock(),
            day.clock()::nanos);
    made.open(day.id());
    return made;
  }

  private RideSheet.Stage stage() {
    return model.sheetProperty().get().stage();
  }

  private Map<String, BigDecimal> shown() {
    return model.sheetProperty().get().values();
  }

  private LapState lap() {
    return day.state().lap(FIRST).orElseThrow();
  }

  private RideSheet.Watch.State watch() {
    var watch = model.sheetProperty().get().watches().get(TIME);
    return java.util.Objects.requireNonNull(watch).state();
  }

  private void takeBack() {
    int before = day.state().entries().size();
    model.undo().takeBack();
    assertThat(model.troubleProperty().get()).isEmpty();
    assertThat(day.state().entries()).as("an undo is one more entry").hasSize(before + 1);
  }

  @Test
  void theLastScoreIsTakenBackStepByStepToWhatStoodThereBefore() {
    model.answer(GRIP, BigDecimal.valueOf(40));
    model.answer("feet off the pedals", BigDecimal.ONE);
    model.answer(GRIP, BigDecimal.valueOf(70));
    assertThat(model.lastAnswerProperty().get()).isEqualTo(GRIP);
    takeBack();
    assertThat(shown().get(GRIP)).isEqualByComparingTo("40");
    takeBack();
    assertThat(shown()).containsOnlyKeys(GRIP);
    takeBack();
    assertThat(shown()).isEmpty();
    assertThat(model.lastAnswerProperty().get()).isEmpty();
    assertThat(lap().values()).isEmpty();
  }

  @Test
  void nothingIsDeletedByAnUndoAndTheCorrectionSaysSo() {
    model.answer(GRIP, BigDecimal.valueOf(40));
    takeBack();
    List<Fact> facts =
        day.state().entries().stream().map(StoredEntry::entry).map(e -> e.fact()).toList();
    assertThat(facts).hasAtLeastOneElementOfType(Fact.ScoreGiven.class);
    assertThat(day.state().corrections())
        .extracting(Fact.ScoreCorrected::reason)
        .containsExactly("undone");
  }

  private List<Fact.DeviationNoted> scorer() {
    return day.state().deviations().stream()
        .filter(d -> d.kind() == DeviationKind.SCORER_KNOWS_KEY)
        .toList();
  }

  @Test
  void aScoreOfSomeoneWhoKnowsTheKeyIsADeviationOfItsStintAndMeasureOnce() {
    model.scorer().knowsKey(true);
    model.answer(GRIP, BigDecimal.valueOf(40));
    model.answer(GRIP, BigDecimal.valueOf(60));
    model.scorer().knowsKey(false);
    model.answer("trust", BigDecimal.valueOf(4));
    assertThat(scorer())
        .containsExactly(new Fact.DeviationNoted(1, DeviationKind.SCORER_KNOWS_KEY, GRIP));
    assertThat(lap().values().get(GRIP)).isEqualByComparingTo("60");
  }

  @Test
  void aScorerWhoSaysItAtTheEndOfTheSheetSaysItOfWhatStandsThere() {
    model.answer(GRIP, BigDecimal.valueOf(40));
    model.answer("trust", BigDecimal.valueOf(4));
    assertThat(scorer()).isEmpty();
    model.scorer().knowsKey(true);
    assertThat(scorer()).extracting(Fact.DeviationNoted::what).containsExactly(GRIP, "trust");
    assertThat(day.state().corrections()).isEmpty();
  }

  @Test
  void aStopTakenBackLetsTheWatchRunOnWithBothItsClocks() {
    model.watches().start(TIME);
    day.clock().move(Duration.ofSeconds(50));
    model.watches().stop(TIME);
    assertThat(watch()).isEqualTo(RideSheet.Watch.State.STOPPED);
    takeBack();
    assertThat(watch()).isEqualTo(RideSheet.Watch.State.RUNNING);
    day.clock().move(Duration.ofSeconds(43));
    model.watches().stop(TIME);
    TimeRecord time = java.util.Objects.requireNonNull(lap().times().get(TIME));
    assertThat(time.seconds()).isEqualByComparingTo("93");
    assertThat(time.doubtful()).isFalse();
  }

  @Test
  void aFalseStartTakenBackGoesOnFromTheFirstStart() {
    model.watches().start(TIME);
    day.clock().move(Duration.ofSeconds(60));
    model.watches().falseStart(TIME);
    assertThat(watch()).isEqualTo(RideSheet.Watch.State.READY);
    takeBack();
    day.clock().move(Duration.ofSeconds(33));
    model.watches().stop(TIME);
    assertThat(lap().values().get(TIME)).isEqualByComparingTo("93");
  }

  @Test
  void aStartTakenBackLeavesAWatchAtNought() {
    model.watches().start(TIME);
    takeBack();
    assertThat(watch()).isEqualTo(RideSheet.Watch.State.READY);
    assertThat(lap().running()).isEmpty();
  }

  @Test
  void timingAgainTakenBackBringsTheFirstTimeBack() {
    model.watches().start(TIME);
    day.clock().move(Duration.ofSeconds(93));
    model.watches().stop(TIME);
    TimeRecord first = lap().times().get(TIME);
    model.watches().start(TIME);
    assertThat(lap().times()).isEmpty();
    takeBack();
    assertThat(lap().times()).containsEntry(TIME, first);
    assertThat(watch()).isEqualTo(RideSheet.Watch.State.STOPPED);
  }

  @Test
  void aTypedTimeTakenBackIsMissingAgain() {
    model.lapDone();
    model.watches().typeTime(TIME, "1:33.1");
    assertThat(lap().values()).containsKey(TIME);
    takeBack();
    assertThat(lap().values()).doesNotContainKey(TIME);
    assertThat(watch()).isEqualTo(RideSheet.Watch.State.READY);
  }

  @Test
  void aLapThatIsDoneIsNotUndoneByAccident() {
    model.answer(GRIP, BigDecimal.valueOf(40));
    model.lapDone();
    assertThat(model.lastAnswerProperty().get()).isEmpty();
    model.undo().takeBack();
    assertThat(lap().values().get(GRIP)).isEqualByComparingTo("40");
  }

  @Test
  void whatAnotherWindowChangedMeanwhileIsNotTakenBack() {
    model.answer(GRIP, BigDecimal.valueOf(40));
    day.desk().riderDays().score(day.id(), FIRST, GRIP, BigDecimal.valueOf(55), false);
    model.undo().takeBack();
    assertThat(model.troubleProperty().get()).contains(GRIP).contains("another window");
    assertThat(lap().values().get(GRIP)).isEqualByComparingTo("55");
  }

  @Test
  void twoAnswersOfOneGuessGivenBeforeTheDiskHasTheFirstAreOneGuess() {
    Queue<Runnable> waiting = new ArrayDeque<>();
    RideModel slow = model(Background.by(waiting::add));
    waiting.remove().run();
    slow.guess().choose(1);
    slow.guess().sureness("HUNCH");
    assertThat(slow.savingProperty().get()).isTrue();
    waiting.forEach(Runnable::run);
    assertThat(slow.savingProperty().get()).isFalse();
    var guess = java.util.Objects.requireNonNull(day.state().guesses().get(1));
    assertThat(guess.setup()).isEqualTo(1);
    assertThat(guess.sureness()).isNotNull();
  }

  @Test
  void noLapBeyondTheCapStartsBeforeItIsAnsweredAndAReasonIsGoodForOneLap() {
    // Twelve laps were agreed to; eleven and the warm-up are ridden before the second stint.
    for (int i = 0; i < 10; i++) {
      day.desk().riderDays().warmUp(day.id());
    }
    model.lapDone();
    model.next();
    assertThat(stage()).isEqualTo(RideSheet.Stage.CAP);
    assertThat(day.state().capReached()).isTrue();
    day.desk().riderDays().handedOver(day.id(), 2);
    LapId second = new LapId(2, 1);
    for (var refused :
        List.of(
            day.desk().riderDays().watchStarted(day.id(), second, TIME, day.clock().instant()),
            day.desk().riderDays().ridden(day.id(), second),
            day.desk().riderDays().warmUp(day.id()))) {
      assertThat(refused.toString()).contains("LAP_CAP");
    }
    model.pastCap(" ");
    assertThat(model.troubleProperty().get()).contains("reason");
    assertThat(stage()).isEqualTo(RideSheet.Stage.CAP);
    model.pastCap("fresh, and one lap to the end of a block");
    assertThat(stage()).isEqualTo(RideSheet.Stage.SCORED);
    assertThat(day.state().deviations())
        .extracting(Fact.DeviationNoted::kind)
        .filteredOn(kind -> kind != DeviationKind.EARLY_HAND_OVER)
        .containsExactly(DeviationKind.LAP_CAP);
    model.lapDone();
    assertThat(day.state().lap(second).orElseThrow().ridden()).isTrue();
    model.next();
    assertThat(stage()).isEqualTo(RideSheet.Stage.CAP);
    model.events().cutShort("tired", "R. Lind", false);
    assertThat(stage()).isEqualTo(RideSheet.Stage.ALL_RIDDEN);
  }
}
