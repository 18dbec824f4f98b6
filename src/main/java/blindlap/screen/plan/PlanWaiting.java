package blindlap.screen.plan;

import blindlap.plan.DayAnswer;
import blindlap.plan.DayAnswers;
import blindlap.plan.Plan;
import blindlap.plan.Rule;
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
  private final ReadOnlyBooleanWrapper stopped = new ReadOnlyBooleanWrapper();
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
    String key = stopped.get() ? "waiting.sentence.not" : "waiting.sentence";
    return Optional.of(new AnswerWords.Sentence(AnswerWords.say(key), "", ""));
  }

  /** What is going on; empty while nothing is. */
  ReadOnlyStringProperty wordsProperty() {
    return words.getReadOnlyProperty();
  }

  /** True while it works on the answer, which can be stopped. */
  ReadOnlyBooleanProperty workingProperty() {
    return working.getReadOnlyProperty();
  }

  /** True when the answer was stopped or could not be worked out, and can be begun again. */
  ReadOnlyBooleanProperty stoppedProperty() {
    return stopped.getReadOnlyProperty();
  }

  /** Another plan is on the page: what was under way is dropped. */
  void drop() {
    turn++;
    say("", false, false);
    again = () -> {};
  }

  /** Stops what is under way; {@link #begin} takes it up again. */
  void stop() {
    turn++;
    say(AnswerWords.say("waiting.stopped"), false, true);
  }

  /** Begins again what was stopped. */
  void begin() {
    again.run();
  }

  private void say(String now, boolean works, boolean stops) {
    words.set(now);
    stopped.set(stops);
    working.set(works);
  }

  /**
   * Makes the set of a large rule, before which nobody can say whether the plan holds.
   *
   * @param wanted false as soon as another plan is on the page
   */
  void rule(Rule rule, BooleanSupplier wanted, Runnable done) {
    int mine = ++turn;
    BooleanSupplier still = () -> turn == mine && wanted.getAsBoolean();
    again = () -> rule(rule, wanted, done);
    say(AnswerWords.say("waiting.rule"), false, false);
    background.run(
        () -> {
          if (still.getAsBoolean()) {
            answers.rules().judge(rule);
          }
          return rule;
        },
        judged -> {
          if (still.getAsBoolean()) {
            done.run();
          }
        },
        reason -> failed(still, reason));
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
    say(AnswerWords.say("waiting.begun"), true, false);
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
      say(AnswerWords.say("waiting.failed", Trouble.sentence(reason)), false, true);
    }
  }
}
