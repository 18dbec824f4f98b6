package blindlap.ride;

import blindlap.desk.day.MeasureState;
import blindlap.desk.day.RiderDays;
import blindlap.session.day.Day;
import blindlap.session.day.LapId;
import java.util.ArrayDeque;
import java.util.Deque;
import org.jspecify.annotations.Nullable;

/**
 * Takes back the last answer given in this window on the lap in hand: a score or what was done with
 * a watch. An entry puts what stood there before; nothing is deleted.
 */
public final class RideUndo {
  /**
   * An answer.
   *
   * @param before what stood there
   * @param given what was given
   * @param restored done once it is taken back
   */
  private record Step(
      LapId lap, String measure, MeasureState before, MeasureState given, Runnable restored) {}

  private final RideHand hand;
  private final RiderDays days;
  private final Deque<Step> steps = new ArrayDeque<>();

  RideUndo(RideHand hand, RiderDays days) {
    this.hand = hand;
    this.days = days;
  }

  /** The measure whose last answer can be taken back; empty if none can. */
  public String last() {
    Step top = steps.peek();
    return top == null ? "" : top.measure();
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
      steps.push(new Step(lap, measure, was, is, restored));
      say();
    }
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
    hand.save(
        () ->
            days.takeBack(hand.session(), step.lap(), step.measure(), step.given(), step.before()),
        latest -> step.restored().run());
  }
}
