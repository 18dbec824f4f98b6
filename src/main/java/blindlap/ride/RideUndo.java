package blindlap.ride;

import blindlap.desk.day.DayResult;
import blindlap.desk.day.MeasureState;
import blindlap.desk.day.RiderDays;
import blindlap.plan.Covariate;
import blindlap.session.day.CovariateAt;
import blindlap.session.day.Day;
import blindlap.session.day.Guess;
import blindlap.session.day.LapId;
import blindlap.session.day.LapState;
import blindlap.session.day.Trial;
import blindlap.session.day.VoidEvent;
import blindlap.wording.day.RideWords;
import java.math.BigDecimal;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;

/**
 * Takes back the last answer given in this window on the lap in hand: a score, what was done with a
 * watch, a guess with its sureness and cue, a covariate, a note, a void. An entry puts what stood
 * there before; nothing is deleted.
 */
public final class RideUndo {
  /**
   * An answer.
   *
   * @param what its name on the page
   * @param back takes it back
   * @param restored done once it is taken back
   * @param open whether a day still lets it be taken back
   */
  private record Step(
      String what, Callable<DayResult> back, Runnable restored, Predicate<Day> open) {}

  private final RideHand hand;
  private final RiderDays days;
  private final Deque<Step> steps = new ArrayDeque<>();

  RideUndo(RideHand hand, RiderDays days) {
    this.hand = hand;
    this.days = days;
  }

  /** The name of the last answer that can be taken back; empty if none can. */
  public String last() {
    Step top = steps.peek();
    return top == null ? "" : top.what();
  }

  void clear() {
    steps.clear();
    say();
  }

  /** An answer is on disk. */
  void given(LapId lap, String measure, @Nullable Day before, Day after, Runnable restored) {
    if (before == null) {
      return;
    }
    MeasureState was = MeasureState.of(before, lap, measure);
    MeasureState is = MeasureState.of(after, lap, measure);
    if (!was.equals(is)) {
      push(measure, () -> days.takeBack(hand.session(), lap, measure, is, was), restored);
    }
  }

  /** A guess, or a part of it, is on disk. */
  void guessed(int stint, @Nullable Day before, Day after) {
    Guess is = after.guesses().get(stint);
    if (before == null || is == null) {
      return;
    }
    Guess was = before.guesses().get(stint);
    if (!is.equals(was)) {
      push(part(was, is), () -> days.guessTakenBack(hand.session(), stint, is, was), () -> {});
    }
  }

  private String part(@Nullable Guess was, Guess is) {
    if (was != null && !was.cue().equals(is.cue()) || was == null && !is.cue().isEmpty()) {
      return RideWords.say("cue.name");
    }
    Guess.Sureness sureBefore = was == null ? null : was.sureness();
    String guess = hand.questions().forced() ? "trial.answer.name" : "guess.name";
    return RideWords.say(sureBefore == is.sureness() ? guess : "sure.name");
  }

  /** A covariate is on disk; what the rider says stands once the bike is handed over. */
  void covariate(
      CovariateAt at, @Nullable Day before, Day after, Consumer<Optional<BigDecimal>> restored) {
    if (before == null) {
      return;
    }
    BigDecimal was = before.covariates().get(at);
    if (Objects.equals(was, after.covariates().get(at))) {
      return;
    }
    boolean rider =
        after
            .plan()
            .covariate(at.covariate())
            .filter(c -> c.by() == Covariate.By.RIDER)
            .isPresent();
    push(
        at.covariate(),
        () -> days.covariate(hand.session(), at, was),
        () -> restored.accept(Optional.ofNullable(was)),
        day -> !rider || !day.handedOver(at.stint()) && !day.stintBegun(at.stint()));
  }

  /** Forgets what this day no longer lets be taken back. */
  void look(Day day) {
    if (steps.removeIf(step -> !step.open().test(day))) {
      say();
    }
  }

  /** A note is on disk. */
  void noted(LapId lap, @Nullable Day before, Day after) {
    if (before == null) {
      return;
    }
    String was = note(before, lap);
    String is = note(after, lap);
    if (!Objects.equals(was, is)) {
      push(
          RideWords.say("note.name"),
          () -> days.noteTakenBack(hand.session(), lap, is, was),
          () -> {});
    }
  }

  private static String note(Day day, LapId lap) {
    return day.lap(lap).map(LapState::note).orElse("");
  }

  /** A lap is void by an event, and that is on disk. */
  void spoiled(LapId lap, VoidEvent event, String called, String counts) {
    push(
        called,
        () -> days.voidTakenBack(hand.session(), lap, event),
        () -> hand.say(counts),
        day -> !Trial.goneBy(day, lap.stint()));
  }

  /** What was taken back elsewhere on the page is not offered a second time. */
  void forget(String what) {
    steps.removeIf(step -> step.what().equals(what));
    say();
  }

  private void push(String what, Callable<DayResult> back, Runnable restored) {
    push(what, back, restored, day -> true);
  }

  private void push(String what, Callable<DayResult> back, Runnable restored, Predicate<Day> open) {
    steps.push(new Step(what, back, restored, open));
    say();
  }

  private void say() {
    hand.canTakeBack(last());
  }

  /** Takes the last answer back. */
  public void takeBack() {
    Step step = steps.poll();
    if (step == null) {
      return;
    }
    say();
    hand.save(step.back(), latest -> step.restored().run());
  }
}
