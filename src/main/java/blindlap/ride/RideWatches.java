package blindlap.ride;

import blindlap.desk.day.DayResult;
import blindlap.desk.day.RiderDays;
import blindlap.session.day.Day;
import blindlap.session.day.LapId;
import blindlap.timing.Stopwatch;
import blindlap.timing.TimeRecord;
import blindlap.wording.day.RideWords;
import java.math.BigDecimal;
import java.time.Clock;
import java.time.Instant;
import java.util.HashMap;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.function.LongSupplier;
import org.jspecify.annotations.Nullable;

/** The watches of the lap in hand. What they take is saved and not shown. */
public final class RideWatches {
  private final RideHand hand;
  private final RiderDays days;
  private final Clock clock;
  private final LongSupplier monotonic;
  private final Map<String, Stopwatch> watches = new HashMap<>();
  private TimeRecord.@Nullable TimedBy timedBy;
  private boolean knowsKey;

  RideWatches(RideHand hand, RiderDays days, Clock clock, LongSupplier monotonic) {
    this.hand = hand;
    this.days = days;
    this.clock = clock;
    this.monotonic = monotonic;
  }

  /** Another lap is in hand. */
  void clear() {
    watches.clear();
  }

  /** Whoever held the watch last holds it still, after the program was started again. */
  void takeUp(Day day) {
    if (timedBy == null) {
      day.laps().values().stream()
          .flatMap(lap -> lap.times().values().stream())
          .forEach(time -> timedBy = time.timedBy());
    }
  }

  /** Key of who holds the watch; null until it was said. */
  public @Nullable String timedBy() {
    return timedBy == null ? null : timedBy.name();
  }

  /** True if whoever holds the watch knows the key. */
  public boolean timekeeperKnowsKey() {
    return knowsKey;
  }

  /** Who holds the watch from now on. */
  public void timedBy(String key) {
    timedBy = TimeRecord.TimedBy.valueOf(key);
  }

  /** Whether whoever holds the watch knows the key. */
  public void timekeeperKnowsKey(boolean knows) {
    knowsKey = knows;
    if (knows) {
      hand.say(RideWords.say("timekeeper.knows"));
    }
  }

  private Stopwatch watch(String measure) {
    Stopwatch watch = watches.computeIfAbsent(measure, m -> new Stopwatch(clock, monotonic));
    RideSheet.Watch shown = hand.sheet().watches().get(measure);
    Instant startedAt = shown == null ? null : shown.startedAt();
    if (startedAt != null && watch.running() == Stopwatch.Running.READY) {
      watch.takeUp(startedAt); // it ran in another window, or before the program was started again
    }
    return watch;
  }

  /** Starts the watch of a measure, or starts it again. */
  public void start(String measure) {
    if (timedBy == null) {
      hand.refuse(RideWords.say("timed.by.first"));
      return;
    }
    LapId lap = hand.lap();
    Stopwatch before = watch(measure).copy();
    Instant at = watch(measure).start();
    act(lap, measure, before, () -> days.watchStarted(hand.session(), lap, measure, at));
  }

  /** Stops the watch; the time is saved and not shown. */
  public void stop(String measure) {
    LapId lap = hand.lap();
    TimeRecord.TimedBy by = timedBy == null ? TimeRecord.TimedBy.OTHER : timedBy;
    Stopwatch watch = watch(measure);
    if (watch.running() != Stopwatch.Running.RUNNING) {
      return;
    }
    Stopwatch before = watch.copy();
    TimeRecord time = watch.stop(by);
    boolean knows = knowsKey;
    act(lap, measure, before, () -> days.time(hand.session(), lap, measure, time, knows));
  }

  /** A false start: back to nought. */
  public void falseStart(String measure) {
    LapId lap = hand.lap();
    Stopwatch before = watch(measure).copy();
    watch(measure).reset();
    act(lap, measure, before, () -> days.watchReset(hand.session(), lap, measure));
  }

  /** The watch was stopped by mistake and runs on. */
  public void undoStop(String measure) {
    LapId lap = hand.lap();
    Stopwatch before = watch(measure).copy();
    Instant started = watch(measure).undoStop();
    if (started != null) {
      act(lap, measure, before, () -> days.watchStarted(hand.session(), lap, measure, started));
    }
  }

  /** A time typed once the lap is done, such as 1:33.1. */
  public void typeTime(String measure, String typed) {
    LapId lap = hand.lap();
    TimeRecord.TimedBy by = timedBy;
    BigDecimal seconds = RideWords.seconds(typed);
    if (seconds == null || by == null) {
      hand.refuse(by == null ? RideWords.say("timed.by.first") : RideWords.notATime(typed));
      return;
    }
    TimeRecord time = Stopwatch.typed(seconds, by, clock);
    boolean knows = knowsKey;
    Stopwatch before = watch(measure).copy();
    act(lap, measure, before, () -> days.time(hand.session(), lap, measure, time, knows));
  }

  /** What is done with a watch can be taken back; the watch then runs on as if it never was. */
  private void act(LapId lap, String measure, Stopwatch before, Callable<DayResult> work) {
    hand.saveAnswer(lap, measure, work, () -> watches.put(measure, before));
  }
}
