package blindlap.ride;

import blindlap.desk.day.RiderDays;
import blindlap.plan.TellingRun;
import blindlap.session.day.Day;
import blindlap.session.day.LapId;
import blindlap.session.day.Step;
import blindlap.session.day.Trial;
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
        words("void.done", lap),
        latest -> {
          done.with(lap);
          undo.clear();
          undo.spoiled(lap, event, called(lap), words("void.back.done", lap));
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
    hand.day().ifPresent(day -> standing.keySet().removeIf(lap -> Trial.goneBy(day, lap.stint())));
    return standing;
  }

  /**
   * What an event would do to the lap in hand, before it is voided.
   *
   * @param event in words
   */
  public String follows(String event) {
    LapId lap = hand.lap();
    return RideWords.say(key("void.follows"), name(lap), event);
  }

  /** "Void lap 7", "Void trial 3". */
  public String does() {
    return words("void.do", hand.lap());
  }

  /** "Lap 7 is void: traffic." */
  public String stands(LapId lap, String event) {
    return RideWords.say(key("void.stands"), name(lap), event);
  }

  /** "The void of lap 7". */
  public String called(LapId lap) {
    return words("void.name", lap);
  }

  private String words(String key, LapId lap) {
    return RideWords.say(key(key), name(lap));
  }

  private String key(String key) {
    return hand.questions().trials() == null ? key : "trial." + key;
  }

  private int name(LapId lap) {
    TellingRun trials = hand.questions().trials();
    return trials == null ? number(lap) : trials.trial(lap.stint());
  }

  /** Takes the void of a lap back: the lap counts again. */
  public void takeBack(LapId lap) {
    VoidEvent event = Objects.requireNonNull(standing().get(lap), "the lap is not void");
    hand.step(
        () -> days.voidTakenBack(hand.session(), lap, event),
        words("void.back.done", lap),
        latest -> undo.forget(called(lap)));
  }

  private int number(LapId lap) {
    return hand.day().map(day -> lap.ofDay(day.plan().laps().perStint())).orElseThrow();
  }
}
