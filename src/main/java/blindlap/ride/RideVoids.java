package blindlap.ride;

import blindlap.desk.day.RiderDays;
import blindlap.session.day.Day;
import blindlap.session.day.LapId;
import blindlap.session.day.Step;
import blindlap.session.day.VoidEvent;
import blindlap.wording.day.RideWords;
import java.util.Objects;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Laps spoiled by an event, never by their score; each void is taken back while the review is open.
 */
public final class RideVoids {
  private final RideHand hand;
  private final RiderDays days;
  private final RideDone done;
  private final RideUndo undo;

  RideVoids(RideHand hand, RiderDays days, RideDone done, RideUndo undo) {
    this.hand = hand;
    this.days = days;
    this.done = done;
    this.undo = undo;
  }

  /**
   * The lap in hand was spoiled; it is done.
   *
   * @param key the event's key among {@link RideQuestions#events()}
   */
  public void spoiled(String key) {
    VoidEvent event = VoidEvent.valueOf(key);
    LapId lap = hand.lap();
    hand.step(
        () -> days.spoiled(hand.session(), lap, event, ""),
        RideWords.say("void.done"),
        latest -> {
          done.with(lap);
          undo.clear();
          undo.spoiled(lap, event, latest);
        });
  }

  /** Voids that stand and can still be taken back, by lap; empty once the review is closed. */
  public SortedMap<LapId, VoidEvent> standing() {
    SortedMap<LapId, VoidEvent> standing = new TreeMap<>();
    hand.day()
        .filter(day -> day.step().day() || day.step() == Step.DAY_CLOSED)
        .map(Day::laps)
        .ifPresent(
            laps ->
                laps.forEach(
                    (id, lap) -> lap.voided().ifPresent(why -> standing.put(id, why.event()))));
    return standing;
  }

  /** Takes the void of a lap back: the lap counts again. */
  public void takeBack(LapId lap) {
    VoidEvent event = Objects.requireNonNull(standing().get(lap), "the lap is not void");
    int number = number(lap);
    hand.step(
        () -> days.voidTakenBack(hand.session(), lap, event),
        RideWords.say("void.back.done", number),
        latest -> undo.forget(RideWords.say("void.name", number)));
  }

  private int number(LapId lap) {
    return hand.day().map(day -> lap.ofDay(day.plan().laps().perStint())).orElseThrow();
  }
}
