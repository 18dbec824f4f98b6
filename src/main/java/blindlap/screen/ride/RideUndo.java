package blindlap.screen.ride;

import blindlap.desk.MeasureState;
import blindlap.desk.RiderDays;
import blindlap.session.SessionState;
import blindlap.session.day.LapId;
import java.util.ArrayDeque;
import java.util.Deque;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
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

  private final RideModel model;
  private final RiderDays days;
  private final Deque<Step> steps = new ArrayDeque<>();
  private final ReadOnlyStringWrapper last = new ReadOnlyStringWrapper("");

  RideUndo(RideModel model, RiderDays days) {
    this.model = model;
    this.days = days;
  }

  /** The measure whose last answer can be taken back; empty if none can. */
  public ReadOnlyStringProperty lastProperty() {
    return last.getReadOnlyProperty();
  }

  void clear() {
    steps.clear();
    say();
  }

  /** An answer is on disk. */
  void given(
      LapId lap,
      String measure,
      @Nullable SessionState before,
      SessionState after,
      Runnable restored) {
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
    Step top = steps.peek();
    last.set(top == null ? "" : top.measure());
  }

  /** Takes the last answer back. */
  public void takeBack() {
    Step step = steps.poll();
    if (step == null) {
      return;
    }
    say();
    model.act(
        () ->
            days.takeBack(model.session(), step.lap(), step.measure(), step.given(), step.before()),
        "",
        latest -> step.restored().run());
  }
}
