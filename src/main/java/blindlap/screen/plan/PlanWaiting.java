package blindlap.screen.plan;

import blindlap.plan.DayAnswer;
import blindlap.plan.DayAnswers;
import blindlap.plan.Plan;
import blindlap.screen.part.Background;
import blindlap.wording.AnswerWords;
import blindlap.wording.day.Trouble;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;

/**
 * Works out off the interface thread what a day of a large rule can show: says that it takes long
 * and how far it is, and can be stopped and begun again. The page goes on meanwhile.
 */
final class PlanWaiting {
  private final DayAnswers answers;
  private final Background background;
  private final ReadOnlyStringWrapper words = new ReadOnlyStringWrapper("");
  private final ReadOnlyBooleanWrapper working = new ReadOnlyBooleanWrapper();
  private volatile int turn;
  private Runnable again = () -> {};

  PlanWaiting(DayAnswers answers, Background background) {
    this.answers = answers;
    this.background = background;
  }

  /** What stands in place of the answer while there is none; empty when nothing was begun. */
  Optional<AnswerWords.Sentence> sentence() {
    if (words.get().isEmpty()) {
      return Optional.empty();
    }
    String key = working.get() ? "waiting.sentence" : "waiting.sentence.not";
    return Optional.of(new AnswerWords.Sentence(AnswerWords.say(key), "", ""));
  }

  /** What is going on; empty while nothing is. */
  ReadOnlyStringProperty wordsProperty() {
    return words.getReadOnlyProperty();
  }

  /** True while it works, false when it is done or was stopped. */
  ReadOnlyBooleanProperty workingProperty() {
    return working.getReadOnlyProperty();
  }

  /** Another plan is on the page: what was under way is dropped. */
  void drop() {
    turn++;
    words.set("");
    working.set(false);
    again = () -> {};
  }

  /** Stops what is under way; {@link #begin} takes it up again. */
  void stop() {
    turn++;
    words.set(AnswerWords.say("waiting.stopped"));
    working.set(false);
  }

  /** Begins again what was stopped. */
  void begin() {
    again.run();
  }

  /**
   * @param wanted false as soon as another plan is on the page
   */
  void on(Plan plan, BooleanSupplier wanted, Consumer<Optional<DayAnswer>> done) {
    again = () -> start(plan, wanted, done);
    again.run();
  }

  private void start(Plan plan, BooleanSupplier wanted, Consumer<Optional<DayAnswer>> done) {
    int mine = ++turn;
    words.set(AnswerWords.say("waiting.begun"));
    working.set(true);
    BooleanSupplier still = () -> turn == mine && wanted.getAsBoolean();
    background.run(
        () -> answers.quick(plan, (so, of) -> tell(still, so, of)),
        answer -> {
          if (still.getAsBoolean()) {
            drop();
            done.accept(answer);
          }
        },
        reason -> failed(still, reason));
  }

  private boolean tell(BooleanSupplier still, int done, int of) {
    background.onScreen(
        () -> {
          if (still.getAsBoolean()) {
            words.set(AnswerWords.say("waiting", done, of));
          }
        });
    return still.getAsBoolean();
  }

  private void failed(BooleanSupplier still, Exception reason) {
    if (still.getAsBoolean() && !(reason instanceof CancellationException)) {
      words.set(AnswerWords.say("waiting.failed", Trouble.sentence(reason)));
      working.set(false);
    }
  }
}
