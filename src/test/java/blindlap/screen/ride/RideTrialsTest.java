package blindlap.screen.ride;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.RamFolder;
import blindlap.desk.TellingTestDay;
import blindlap.desk.TestDay;
import blindlap.plan.TellingTask;
import blindlap.ride.RideSheet;
import blindlap.screen.Models;
import blindlap.screen.SceneText;
import blindlap.screen.Window;
import blindlap.screen.Within;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import blindlap.screen.part.Theme;
import blindlap.session.Fact;
import blindlap.session.day.Guess;
import blindlap.session.day.Trial;
import java.nio.file.Path;
import java.util.Objects;
import java.util.function.BiConsumer;
import javafx.scene.Scene;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What the Ride page asks in a telling run: one lap is named after a trial's last lap. */
class RideTrialsTest {
  private @TempDir(factory = RamFolder.class) Path folder;

  @BeforeAll
  static void window() throws InterruptedException {
    Window.start();
    Window.run(Fonts::load);
  }

  private void with(TellingTask task, BiConsumer<TestDay, RideModel> what) {
    try (TestDay day = new TestDay(folder, TellingTestDay.levels(task, 4), 3)) {
      Window.run(
          () -> {
            RideModel model = Models.ride(day);
            model.handedOver();
            model.warmUpRidden();
            what.accept(day, model);
          });
    }
  }

  private static RideSheet sheet(RideModel model) {
    return model.sheetProperty().get();
  }

  private static void lap(RideModel model) {
    model.handedOver();
    model.lapDone();
    model.next();
  }

  private static Trial first(TestDay day) {
    return Trial.of(day.state().day()).get(0);
  }

  @Test
  void anAnswerIsAskedAfterTheLastLapAloneAndNamesALap() {
    with(
        TellingTask.TRIANGLE,
        (day, model) -> {
          model.handedOver();
          assertThat(model.headline()).isEqualTo("Trial 1 of 4, lap 1 of 3");
          assertThat(sheet(model).guessAsked()).isFalse();
          model.lapDone();
          model.next();
          lap(model);
          model.handedOver();
          assertThat(model.headline()).isEqualTo("Trial 1 of 4, lap 3 of 3");
          assertThat(sheet(model).guessAsked()).isTrue();
          assertThat(model.questions().setups()).containsExactly("lap 1", "lap 2", "lap 3");
          model.guess().choose(1);
          model.guess().sureness("CERTAIN");
          assertThat(model.troubleProperty().get()).isEmpty();
          assertThat(first(day).standing()).isEqualTo(Trial.Standing.OPEN); // until it is done
          model.lapDone();
          assertThat(first(day).named()).isEqualTo(2);
          assertThat(first(day).standing()).isEqualTo(Trial.Standing.ANSWERED);
          model.next();
          assertThat(model.headline()).isEqualTo("Trial 2 of 4, lap 1 of 3");
        });
  }

  /** How sure and why is never an answer of its own: it waits for the lap that is named. */
  @Test
  void whatIsSaidBesideAnAnswerWaitsForIt() {
    with(
        TellingTask.TWO_CHOICE,
        (day, model) -> {
          lap(model);
          model.handedOver();
          model.guess().sureness("HUNCH");
          model.guess().cue("a click more");
          assertThat(day.state().guesses()).isEmpty();
          assertThat(model.guess().sureness()).isEqualTo("HUNCH");
          model.guess().choose(0);
          Guess guess = Objects.requireNonNull(day.state().guesses().get(2));
          assertThat(guess).isEqualTo(new Guess(0, Guess.Sureness.HUNCH, "a click more"));
          assertThat(day.state().entries().stream().map(e -> e.entry().fact()))
              .filteredOn(Fact.GuessGiven.class::isInstance)
              .hasSize(1);
        });
  }

  @Test
  void theReferenceOfADuoTrioCannotBeNamed() {
    with(
        TellingTask.DUO_TRIO,
        (day, model) -> {
          lap(model);
          lap(model);
          model.handedOver();
          assertThat(model.questions().setups()).containsExactly("lap 2", "lap 3");
          model.guess().choose(1);
          assertThat(first(day).named()).isEqualTo(3);
          assertThat(model.guess().chosen()).isEqualTo(1);
        });
  }

  @Test
  void doneWithoutAnAnswerIsAskedOnceAndThenDoesNotCount() {
    with(
        TellingTask.TRIANGLE,
        (day, model) -> {
          lap(model);
          lap(model);
          model.handedOver();
          model.done().press();
          assertThat(model.questionProperty().get())
              .contains("your answer")
              .endsWith("A trial without an answer does not count.");
          assertThat(first(day).ridden()).isFalse();
          model.done().asItIs();
          assertThat(first(day).standing()).isEqualTo(Trial.Standing.OPEN);
          model.done().openAgain();
          model.guess().choose(2);
          assertThat(first(day).standing()).isEqualTo(Trial.Standing.ANSWERED);
        });
  }

  @Test
  void aVoidIsOfTheWholeTrialAndOnlyBeforeItsAnswer() {
    with(
        TellingTask.TRIANGLE,
        (day, model) -> {
          lap(model);
          model.handedOver();
          model.voids().spoiled("CRASH");
          assertThat(model.events().saidProperty().get()).startsWith("The trial is void");
          assertThat(first(day).standing()).isEqualTo(Trial.Standing.VOID);
          model.next();
          assertThat(model.headline()).isEqualTo("Trial 2 of 4, lap 1 of 3");
          lap(model);
          lap(model);
          model.handedOver();
          model.guess().choose(0);
          model.voids().spoiled("CRASH");
          assertThat(model.troubleProperty().get())
              .startsWith("Trial 2 was answered, and a trial is void before its answer or not");
          // A slip of the finger before the lap is done was no answer.
          model.undo().takeBack();
          model.voids().spoiled("CRASH");
          assertThat(model.troubleProperty().get()).isEmpty();
          assertThat(Trial.of(day.state().day()).get(1).standing()).isEqualTo(Trial.Standing.VOID);
        });
  }

  @ParameterizedTest
  @CsvSource({"1366, 768, 1", "1280, 1250, 1", "1366, 768, 2", "1920, 1080, 2"})
  void thePageHoldsTheQuestionInEverySize(double width, double height, double text) {
    for (TellingTask task : TellingTask.values()) {
      try (TestDay day =
          new TestDay(
              folder.resolve(task + "-" + width + "-" + height + "-" + text + ".blindlap"),
              TellingTestDay.levels(task, 4),
              3,
              java.util.Optional.empty())) {
        Window.run(
            () -> {
              Look look = new Look();
              look.textScaleProperty().set(text);
              RideModel model = Models.ride(day);
              RidePage page = new RidePage(look, model, () -> {});
              Scene scene = new Scene(page, width, height);
              look.dress(scene);
              look.themeProperty().set(Theme.SUNLIGHT);
              model.handedOver();
              model.warmUpRidden();
              for (int lap = 1; lap < task.laps(); lap++) {
                lap(model);
              }
              model.handedOver();
              Window.picture(scene, "ride-" + task + "-" + (int) width + "-" + text);
              assertThat(SceneText.of(scene)).contains("Pick one.").doesNotContain("don't know");
              Within within = Within.of(page, task + " " + width);
              assertThat(within.wrong()).isEmpty();
            });
      }
    }
  }
}
