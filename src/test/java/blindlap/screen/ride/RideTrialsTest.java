package blindlap.screen.ride;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.RamFolder;
import blindlap.desk.TellingTestDay;
import blindlap.desk.TestDay;
import blindlap.ride.RideQuestions;
import blindlap.ride.RideSheet;
import blindlap.screen.Models;
import blindlap.session.day.Guess;
import blindlap.session.day.LapId;
import blindlap.session.day.Trial;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The trials of a telling run on the Ride page: one forced answer each, void before it or not. */
class RideTrialsTest {
  private @TempDir(factory = RamFolder.class) Path folder;

  /** Handed over, ridden, done, on. */
  private static void lap(RideModel ride) {
    handOver(ride);
    ride.done().press();
    assertThat(ride.questionProperty().get()).isEmpty();
    assertThat(ride.sheet().stage()).isEqualTo(RideSheet.Stage.DONE);
    ride.next();
  }

  private static void handOver(RideModel ride) {
    ride.handedOver();
    assertThat(ride.sheet().stage()).isEqualTo(RideSheet.Stage.SCORED);
  }

  private static RideModel warm(TestDay day) {
    RideModel ride = Models.ride(day);
    ride.handedOver();
    ride.warmUpRidden();
    return ride;
  }

  private static Trial trial(TestDay day, int number) {
    return Trial.of(day.state().day()).get(number - 1);
  }

  @Test
  void aTrialIsAskedAfterItsLastLapAndNothingBefore() {
    try (TestDay day = new TestDay(folder, TellingTestDay.TRIANGLES, 1)) {
      RideModel ride = warm(day);
      assertThat(ride.headline()).isEqualTo("Trial 1 of 5, lap 1 of 3");
      handOver(ride);
      assertThat(ride.sheet().guessAsked()).isFalse();
      assertThat(ride.openProperty().get()).isEmpty();
      assertThat(ride.questions().title(ride.sheet()))
          .isEqualTo("Nothing is asked before lap 3. Ride every lap alike.");
      ride.lapDone();
      ride.next();
      lap(ride);
      assertThat(ride.headline()).isEqualTo("Trial 1 of 5, lap 3 of 3");
      handOver(ride);
      assertThat(ride.sheet().guessAsked()).isTrue();
      assertThat(ride.openProperty().get()).isEqualTo("1 answer open");
      assertThat(ride.questions().setups()).containsExactly("lap 1", "lap 2", "lap 3");
      ride.guess().choose(1);
      assertThat(ride.troubleProperty().get()).isEmpty();
      assertThat(ride.sheet().stage()).as("the sheet stays").isEqualTo(RideSheet.Stage.SCORED);
      ride.guess().sureness("CERTAIN");
      ride.guess().cue("the rear kicked");
      assertThat(ride.openProperty().get()).isEqualTo("Every answer is given.");
      ride.guess().choose(2);
      ride.done().press();
      assertThat(ride.sheet().stage()).isEqualTo(RideSheet.Stage.DONE);
      assertThat(day.state().day().guesses().get(3))
          .isEqualTo(new Guess(2, Guess.Sureness.CERTAIN, "the rear kicked"));
      assertThat(trial(day, 1).standing()).isEqualTo(Trial.Standing.ANSWERED);
      ride.next();
      assertThat(ride.headline()).isEqualTo("Trial 2 of 5, lap 1 of 3");
    }
  }

  @Test
  void nothingStandsBesideAnAnswerThatNamesNoLap() {
    try (TestDay day = new TestDay(folder, TellingTestDay.TWO_CHOICES, 1)) {
      RideModel ride = warm(day);
      lap(ride);
      handOver(ride);
      assertThat(ride.guess().named()).isFalse();
      ride.guess().sureness("HUNCH");
      assertThat(ride.troubleProperty().get()).startsWith("Pick a lap first");
      ride.guess().cue("a sound");
      assertThat(day.state().day().guesses()).isEmpty();
      assertThat(day.state().day().ridden(new LapId(2, 1))).isFalse();
      ride.guess().choose(0);
      assertThat(ride.guess().named()).isTrue();
      assertThat(ride.troubleProperty().get()).isEmpty();
    }
  }

  @Test
  void anAnswerIsTakenBackAndTheTrialIsAskedAgain() {
    try (TestDay day = new TestDay(folder, TellingTestDay.DUO_TRIOS, 1)) {
      RideModel ride = warm(day);
      lap(ride);
      lap(ride);
      handOver(ride);
      assertThat(ride.questions().firstAnswer()).isEqualTo(1);
      ride.guess().choose(2);
      assertThat(ride.undo().last()).isEqualTo("your answer");
      ride.undo().takeBack();
      assertThat(ride.troubleProperty().get()).isEmpty();
      assertThat(ride.sheet().guess()).isNull();
      assertThat(ride.sheet().stage()).isEqualTo(RideSheet.Stage.SCORED);
      assertThat(ride.openProperty().get()).isEqualTo("1 answer open");
    }
  }

  @Test
  void doneWithoutAnAnswerSaysThatTheTrialDoesNotCountAndTheLapIsOpenedAgain() {
    try (TestDay day = new TestDay(folder, TellingTestDay.TRIANGLES, 1)) {
      RideModel ride = warm(day);
      lap(ride);
      lap(ride);
      handOver(ride);
      ride.done().press();
      assertThat(ride.questionProperty().get())
          .startsWith(
              "Still open: your answer. Without one trial 1 does not count; this lap can be"
                  + " opened");
      ride.done().asItIs();
      ride.next();
      ride.handedOver();
      assertThat(ride.headline()).isEqualTo("Trial 2 of 5, lap 1 of 3");
      assertThat(ride.done().reopenable().map(ride::lapName)).contains("3 of trial 1");
      ride.done().openAgain();
      assertThat(ride.sheet().guessAsked()).isTrue();
      ride.guess().choose(0);
      ride.done().press();
      ride.next();
      assertThat(trial(day, 1).named()).isEqualTo(1);
      ride.lapDone();
      assertThat(ride.done().reopenable().map(ride::lapName)).contains("1 of trial 2");
    }
  }

  @Test
  void aVoidIsOfTheWholeTrialAndPassesOverWhatIsLeftOfIt() {
    try (TestDay day = new TestDay(folder, TellingTestDay.TRIANGLES, 1)) {
      RideModel ride = warm(day);
      handOver(ride);
      assertThat(ride.sheet().mayBeSpoiled()).isTrue();
      assertThat(ride.voids().follows("traffic")).startsWith("Trial 1 would be void as a whole");
      assertThat(ride.voids().does()).isEqualTo("Void trial 1");
      ride.voids().spoiled("TRAFFIC");
      assertThat(ride.events().saidProperty().get()).startsWith("Trial 1 is void");
      assertThat(ride.undo().last()).isEqualTo("the void of trial 1");
      ride.next();
      assertThat(ride.headline()).isEqualTo("Trial 2 of 5, lap 1 of 3");
      assertThat(ride.voidsProperty().get()).containsOnlyKeys(new LapId(1, 1));
      ride.voids().takeBack(new LapId(1, 1));
      assertThat(ride.troubleProperty().get()).isEmpty();
      assertThat(ride.headline()).isEqualTo("Trial 1 of 5, lap 2 of 3");
      ride.done().openAgain();
      ride.voids().spoiled("CRASH");
      ride.next();
      handOver(ride);
      assertThat(ride.voidsProperty().get()).as("the run has gone on").isEmpty();
      assertThat(ride.undo().last()).isEmpty();
    }
  }

  @Test
  void noAnsweredTrialCanBeVoided() {
    try (TestDay day = new TestDay(folder, TellingTestDay.TWO_CHOICES, 1)) {
      RideModel ride = warm(day);
      lap(ride);
      handOver(ride);
      ride.guess().choose(1);
      assertThat(ride.sheet().mayBeSpoiled()).isFalse();
      ride.undo().takeBack();
      assertThat(ride.sheet().mayBeSpoiled()).isTrue();
      ride.voids().spoiled("STOPPED");
      assertThat(ride.troubleProperty().get())
          .isEqualTo(
              "Trial 1 was answered, and a trial is void before its answer or not at all."
                  + " Nothing was changed; write what happened as a note.");
      assertThat(trial(day, 1).voided()).isEmpty();
    }
  }

  @Test
  void closingSaysWhichTrialsHaveNoAnswer() {
    try (TestDay day = new TestDay(folder, TellingTestDay.TWO_CHOICES, 1)) {
      RideModel ride = warm(day);
      lap(ride);
      handOver(ride);
      ride.guess().choose(1);
      assertThat(ride.events().missing())
          .isEqualTo("5 trials have no answer and do not count: 2, 3, 4, 5, 6.");
      ride.events().cutShort("rain", "R. Lind", false);
      assertThat(ride.events().saidProperty().get())
          .isEqualTo(
              "The run ends here. 1 trial is answered and counts, too few to show anything even"
                  + " with every answer right.");
    }
  }

  @Test
  void whatIsAskedIsWhatThePlanSays() {
    try (TestDay day = new TestDay(folder, TellingTestDay.TWO_CHOICES, 1)) {
      RideQuestions asked = RideQuestions.of(day.state().plan());
      assertThat(asked.setups()).containsExactly("lap 1", "lap 2");
      assertThat(asked.forced()).isTrue();
      assertThat(asked.firstAnswer()).isZero();
      assertThat(asked.questions()).isEmpty();
    }
  }
}
