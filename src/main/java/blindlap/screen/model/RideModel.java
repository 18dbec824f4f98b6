package blindlap.screen.model;

import blindlap.desk.RiderDays;
import blindlap.desk.Sessions;
import blindlap.plan.Plan;
import blindlap.session.Guess;
import blindlap.session.LapId;
import blindlap.session.SessionId;
import blindlap.session.SessionState;
import blindlap.session.VoidEvent;
import blindlap.timing.Stopwatch;
import blindlap.timing.TimeRecord;
import blindlap.wording.Problems;
import blindlap.wording.RideWords;
import java.math.BigDecimal;
import java.time.Clock;
import java.time.Instant;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.LongSupplier;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import org.jspecify.annotations.Nullable;

/**
 * The Ride page: what was that lap like? Every answer is saved when its control is released; times
 * stay hidden until the lap is done, and by default until the review.
 */
public final class RideModel {
  private final RiderDays days;
  private final LongSupplier version;
  private final Background background;
  private final Clock clock;
  private final LongSupplier monotonic;

  private final ReadOnlyObjectWrapper<RideSheet> sheet = new ReadOnlyObjectWrapper<>(RideSheet.NONE);
  private final ReadOnlyStringWrapper saved = new ReadOnlyStringWrapper("");
  private final ReadOnlyStringWrapper open = new ReadOnlyStringWrapper("");
  private final ReadOnlyStringWrapper trouble = new ReadOnlyStringWrapper("");
  private final DayEvents events;
  private final Map<String, Stopwatch> watches = new HashMap<>();

  private @Nullable SessionId id;
  private @Nullable Plan plan;
  private Optional<LapId> done = Optional.empty();
  private @Nullable LapId watched;
  private TimeRecord.@Nullable TimedBy timedBy;
  private boolean knowsKey;
  private long seen = Long.MIN_VALUE;

  /**
   * @param days the rider's use cases
   * @param version grows whenever any window writes to the notebook
   * @param clock wall clock of watches and of "saved"
   * @param monotonic nanoseconds that only ever grow
   */
  public RideModel(
      RiderDays days,
      LongSupplier version,
      Background background,
      Clock clock,
      LongSupplier monotonic) {
    this.days = days;
    this.version = version;
    this.background = background;
    this.clock = clock;
    this.monotonic = monotonic;
    this.events = new DayEvents(days, background, () -> sheet.get().stint(), this::show);
  }

  /** What is asked now. */
  public ReadOnlyObjectProperty<RideSheet> sheetProperty() {
    return sheet.getReadOnlyProperty();
  }

  /** "Saved 11:44:07", once the disk has it. */
  public ReadOnlyStringProperty savedProperty() {
    return saved.getReadOnlyProperty();
  }

  /** What is still open on the sheet, in words. */
  public ReadOnlyStringProperty openProperty() {
    return open.getReadOnlyProperty();
  }

  /** One sentence if something was refused; else empty. */
  public ReadOnlyStringProperty troubleProperty() {
    return trouble.getReadOnlyProperty();
  }

  /** What may be said of the day at any time. */
  public DayEvents events() {
    return events;
  }

  /** The plan in hand; null before a session is open. */
  public @Nullable Plan plan() {
    return plan;
  }

  /** Who holds the watch; null until it was said. */
  public TimeRecord.@Nullable TimedBy timedBy() {
    return timedBy;
  }

  /** True if whoever holds the watch knows the key. */
  public boolean timekeeperKnowsKey() {
    return knowsKey;
  }

  /** Opens a session. */
  public void open(SessionId session) {
    id = session;
    done = Optional.empty();
    watched = null;
    events.open(session);
    saved.set("");
    reload();
  }

  private void reload() {
    SessionId now = id;
    if (now != null) {
      background.run(() -> days.state(now), found -> found.ifPresent(this::show), this::failed);
    }
  }

  /** Once a second: takes up what another window wrote. */
  public void tick() {
    if (id == null) {
      return;
    }
    background.run(
        version::getAsLong,
        now -> {
          if (now != seen) {
            seen = now;
            reload();
          }
        },
        this::failed);
  }

  private void show(SessionState state) {
    plan = state.plan();
    if (timedBy == null) {
      state.laps().stream()
          .flatMap(lap -> lap.times().values().stream())
          .forEach(time -> timedBy = time.timedBy());
    }
    RideSheet next = RideSheet.of(state, done);
    if (next.lap() != null && !next.lap().equals(watched)) {
      watched = next.lap();
      watches.clear();
    }
    sheet.set(next);
    open.set(RideWords.open(next.stage().name(), openAnswers(next)));
  }

  private int openAnswers(RideSheet now) {
    Plan of = plan;
    if (of == null || now.stage() != RideSheet.Stage.SCORED) {
      return 0;
    }
    long given = now.values().size();
    long asked = of.measures().stream().filter(m -> !m.kind().timed()).count();
    return (int) (asked - given) + (now.guessAsked() && now.guess() == null ? 1 : 0);
  }

  private void act(Callable<Sessions.Result> work) {
    act(work, "", () -> {});
  }

  private void act(Callable<Sessions.Result> work, String effect) {
    act(work, effect, () -> {});
  }

  private void act(Callable<Sessions.Result> work, String effect, Runnable accepted) {
    background.run(work, result -> finished(result, effect, accepted), this::failed);
  }

  private void finished(Sessions.Result result, String effect, Runnable accepted) {
    if (result instanceof Sessions.Result.Refused refused) {
      trouble.set(String.join(" ", Problems.sentences(refused.problems())));
      return;
    }
    accepted.run();
    trouble.set("");
    if (!effect.isEmpty()) {
      events.say(effect);
    }
    saved.set(RideWords.saved(clock.instant().atZone(clock.getZone())));
    show(((Sessions.Result.Done) result).state());
  }

  private void failed(Exception problem) {
    trouble.set(RideWords.notSaved(String.valueOf(problem.getMessage())));
  }

  private SessionId session() {
    return java.util.Objects.requireNonNull(id, "no session is open");
  }

  private LapId lap() {
    return java.util.Objects.requireNonNull(sheet.get().lap(), "no lap is in hand");
  }

  /** The helper handed the bike over, said here where he works from paper. */
  public void handedOver() {
    int stint = sheet.get().stint();
    act(() -> days.handedOver(session(), stint));
  }

  /** A warm-up lap was ridden. */
  public void warmUpRidden() {
    act(() -> days.warmUp(session()));
  }

  /** An answer was given: a scale, category or count was released. */
  public void answer(String measure, BigDecimal value) {
    LapId lap = lap();
    act(() -> days.score(session(), lap, measure, value));
  }

  /** A note was left. */
  public void note(String text) {
    LapId lap = lap();
    act(() -> days.note(session(), lap, text));
  }

  /** Conditions of the lap, by name. */
  public void condition(String name, String words) {
    LapId lap = lap();
    act(() -> days.conditions(session(), lap, Map.of(name, words)));
  }

  /**
   * The rider's guess.
   *
   * @param setup the guessed setup; null for "don't know"
   */
  public void guess(@Nullable Integer setup) {
    Guess before = sheet.get().guess();
    guess(new Guess(setup, before == null ? null : before.sureness(), cue(before)));
  }

  /** How sure the guess is; a guess must be there. */
  public void sureness(Guess.Sureness sureness) {
    Guess before = sheet.get().guess();
    guess(new Guess(before == null ? null : before.setup(), sureness, cue(before)));
  }

  /** What gave it away. */
  public void cue(String words) {
    Guess before = sheet.get().guess();
    if (!words.equals(cue(before))) {
      guess(
          new Guess(
              before == null ? null : before.setup(),
              before == null ? null : before.sureness(),
              words));
    }
  }

  private static String cue(@Nullable Guess guess) {
    return guess == null ? "" : guess.cue();
  }

  private void guess(Guess guess) {
    int stint = lap().stint();
    act(() -> days.guess(session(), stint, guess));
  }

  /** Who holds the watch from now on. */
  public void timedBy(TimeRecord.TimedBy by) {
    timedBy = by;
  }

  /** Whether whoever holds the watch knows the key. */
  public void timekeeperKnowsKey(boolean knows) {
    knowsKey = knows;
    if (knows) {
      events.say(RideWords.say("timekeeper.knows"));
    }
  }

  private Stopwatch watch(String measure) {
    Stopwatch watch = watches.computeIfAbsent(measure, m -> new Stopwatch(clock, monotonic));
    RideSheet.Watch shown = sheet.get().watches().get(measure);
    Instant startedAt = shown == null ? null : shown.startedAt();
    if (startedAt != null && watch.running() == Stopwatch.Running.READY) {
      watch.takeUp(startedAt); // it ran in another window, or before the program was started again
    }
    return watch;
  }

  /** Starts the watch of a measure, or starts it again. */
  public void start(String measure) {
    if (timedBy == null) {
      trouble.set(RideWords.say("timed.by.first"));
      return;
    }
    LapId lap = lap();
    Instant at = watch(measure).start();
    act(() -> days.watchStarted(session(), lap, measure, at));
  }

  /** Stops the watch; the time is saved and not shown. */
  public void stop(String measure) {
    LapId lap = lap();
    TimeRecord.TimedBy by = timedBy == null ? TimeRecord.TimedBy.OTHER : timedBy;
    Stopwatch watch = watch(measure);
    if (watch.running() != Stopwatch.Running.RUNNING) {
      return;
    }
    TimeRecord time = watch.stop(by);
    boolean knows = knowsKey;
    act(() -> days.time(session(), lap, measure, time, knows));
  }

  /** A false start: back to nought. */
  public void falseStart(String measure) {
    LapId lap = lap();
    watch(measure).reset();
    act(() -> days.watchReset(session(), lap, measure));
  }

  /** The watch was stopped by mistake and runs on. */
  public void undoStop(String measure) {
    LapId lap = lap();
    Instant started = watch(measure).undoStop();
    if (started != null) {
      act(() -> days.watchStarted(session(), lap, measure, started));
    }
  }

  /** A time typed once the lap is done, such as 1:33.1. */
  public void typeTime(String measure, String typed) {
    LapId lap = lap();
    TimeRecord.TimedBy by = timedBy;
    BigDecimal seconds = RideWords.seconds(typed);
    if (seconds == null || by == null) {
      trouble.set(RideWords.say(by == null ? "timed.by.first" : "time.form", typed));
      return;
    }
    TimeRecord time = Stopwatch.typed(seconds, by, clock);
    boolean knows = knowsKey;
    act(() -> days.time(session(), lap, measure, time, knows));
  }

  /** Done with the lap: scores, notes and guess are saved, only now about times. */
  public void lapDone() {
    LapId lap = lap();
    act(() -> days.ridden(session(), lap), "", () -> done = Optional.of(lap));
  }

  /** On to the next lap. */
  public void next() {
    done = Optional.empty();
    reload();
  }

  /** The lap was spoiled by an event, never by its score. */
  public void spoiled(VoidEvent event) {
    LapId lap = lap();
    act(
        () -> days.spoiled(session(), lap, event, ""),
        RideWords.say("void.done"),
        () -> done = Optional.of(lap));
  }
}
