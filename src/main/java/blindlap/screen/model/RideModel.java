package blindlap.screen.model;

import blindlap.desk.RiderDays;
import blindlap.desk.Sessions;
import blindlap.plan.Plan;
import blindlap.session.Guess;
import blindlap.session.LapId;
import blindlap.session.SessionId;
import blindlap.session.SessionState;
import blindlap.session.VoidEvent;
import blindlap.wording.Problems;
import blindlap.wording.RideWords;
import java.math.BigDecimal;
import java.time.Clock;
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

  private final ReadOnlyObjectWrapper<RideSheet> sheet =
      new ReadOnlyObjectWrapper<>(RideSheet.NONE);
  private final ReadOnlyStringWrapper saved = new ReadOnlyStringWrapper("");
  private final ReadOnlyStringWrapper open = new ReadOnlyStringWrapper("");
  private final ReadOnlyStringWrapper trouble = new ReadOnlyStringWrapper("");
  private final DayEvents events;
  private final KeyInModel keyIn;
  private final RideWatches watches;

  private @Nullable SessionId id;
  private @Nullable Plan plan;
  private RideQuestions questions = RideQuestions.NONE;
  private Optional<LapId> done = Optional.empty();
  private @Nullable LapId watched;
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
    this.watches = new RideWatches(this, days, clock, monotonic);
    this.keyIn = new KeyInModel(days.keyingIn(), days, background);
    this.events =
        new DayEvents(
            days,
            background,
            () -> sheet.get().lap() == null ? -1 : sheet.get().stint(),
            this::show);
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

  /** The watches of the lap in hand. */
  public RideWatches watches() {
    return watches;
  }

  /** Keying in from paper. */
  public KeyInModel keyIn() {
    return keyIn;
  }

  /** What may be said of the day at any time. */
  public DayEvents events() {
    return events;
  }

  /** What the score sheet asks. */
  public RideQuestions questions() {
    return questions;
  }

  /** "Stint 7 of 16", or which lap of the stint or warm-up; empty where there is no lap. */
  public String headline() {
    RideSheet now = sheet.get();
    Plan of = plan;
    if (of == null || now.number() == 0) {
      return "";
    }
    LapId lap = now.lap();
    if (lap == null) {
      return RideWords.say("warm.up", now.number(), now.of());
    }
    int per = of.laps().perStint();
    return per == 1
        ? RideWords.say("stint", lap.stint(), of.stints())
        : RideWords.say("stint.lap", lap.stint(), of.stints(), lap.lap(), per);
  }

  /** Index of the guessed setup, the number of setups for "don't know"; null if none. */
  public @Nullable Integer guessed() {
    Guess guess = sheet.get().guess();
    if (guess == null) {
      return null;
    }
    Integer setup = guess.setup();
    return setup == null ? Integer.valueOf(questions.setups().size()) : setup;
  }

  /** Key of how sure the guess is; null if not said. */
  public @Nullable String sureness() {
    Guess guess = sheet.get().guess();
    Guess.Sureness sure = guess == null ? null : guess.sureness();
    return sure == null ? null : sure.name();
  }

  /** What gave it away, so far. */
  public String cue() {
    return cue(sheet.get().guess());
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
    questions = RideQuestions.of(state.plan());
    watches.takeUp(state);
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

  void act(Callable<Sessions.Result> work) {
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

  /** Refuses something in words; nothing is saved. */
  void refuse(String words) {
    trouble.set(words);
  }

  private void failed(Exception problem) {
    trouble.set(RideWords.notSaved(String.valueOf(problem.getMessage())));
  }

  /** The session in hand. */
  public SessionId session() {
    return java.util.Objects.requireNonNull(id, "no session is open");
  }

  LapId lap() {
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
   * @param index of the guessed setup; the number of setups for "don't know"
   */
  public void guess(int index) {
    Integer setup = index == questions.setups().size() ? null : Integer.valueOf(index);
    Guess before = sheet.get().guess();
    guess(new Guess(setup, before == null ? null : before.sureness(), cue(before)));
  }

  /** How sure the guess is; a guess must be there. */
  public void sureness(String key) {
    Guess.Sureness sureness = Guess.Sureness.valueOf(key);
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
  public void spoiled(String key) {
    VoidEvent event = VoidEvent.valueOf(key);
    LapId lap = lap();
    act(
        () -> days.spoiled(session(), lap, event, ""),
        RideWords.say("void.done"),
        () -> done = Optional.of(lap));
  }
}
