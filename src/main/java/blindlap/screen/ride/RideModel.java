package blindlap.screen.ride;

import blindlap.desk.RiderDays;
import blindlap.desk.Sessions;
import blindlap.plan.Plan;
import blindlap.screen.part.Background;
import blindlap.session.SessionState;
import blindlap.session.day.LapId;
import blindlap.session.day.SessionId;
import blindlap.session.day.VoidEvent;
import blindlap.wording.day.Problems;
import blindlap.wording.day.RideWords;
import java.math.BigDecimal;
import java.time.Clock;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import java.util.function.LongSupplier;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
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
  private final RideUndo undo;
  private final RideGuess guess;
  private final ReadOnlyBooleanWrapper saving = new ReadOnlyBooleanWrapper();

  private @Nullable SessionId id;
  private @Nullable Plan plan;
  private @Nullable SessionState state;
  private RideQuestions questions = RideQuestions.NONE;
  private Optional<LapId> done = Optional.empty();
  private @Nullable LapId watched;
  private long seen = Long.MIN_VALUE;
  private int underWay;

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
    this.undo = new RideUndo(this, days);
    this.guess = new RideGuess(this, days);
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

  /**
   * True while an answer is on its way to the disk: what is shown is then ahead of what is on
   * record.
   */
  public ReadOnlyBooleanProperty savingProperty() {
    return saving.getReadOnlyProperty();
  }

  /** Taking back the last answer. */
  public RideUndo undo() {
    return undo;
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

  /** The guess on the stint. */
  public RideGuess guess() {
    return guess;
  }

  /** Opens a session. */
  public void open(SessionId session) {
    id = session;
    done = Optional.empty();
    watched = null;
    undo.clear();
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

  private void show(SessionState latest) {
    state = latest;
    plan = latest.plan();
    questions = RideQuestions.of(latest.plan());
    watches.takeUp(latest);
    RideSheet next = RideSheet.of(latest, done);
    if (next.lap() != null && !next.lap().equals(watched)) {
      watched = next.lap();
      watches.clear();
      undo.clear();
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
    act(work, "", latest -> {});
  }

  /**
   * Saves something.
   *
   * @param accepted gets the session afterwards, before it is shown, once the disk has it
   */
  void act(Callable<Sessions.Result> work, String effect, Consumer<SessionState> accepted) {
    under(1);
    background.run(
        work,
        result -> {
          underWay--;
          finished(result, effect, accepted);
          under(0);
        },
        problem -> {
          under(-1);
          failed(problem);
        });
  }

  private void under(int more) {
    underWay += more;
    saving.set(underWay > 0);
  }

  private void finished(Sessions.Result result, String effect, Consumer<SessionState> accepted) {
    if (result instanceof Sessions.Result.Refused refused) {
      trouble.set(String.join(" ", Problems.sentences(refused.problems())));
      return;
    }
    SessionState latest = ((Sessions.Result.Done) result).state();
    accepted.accept(latest);
    trouble.set("");
    if (!effect.isEmpty()) {
      events.say(effect);
    }
    saved.set(RideWords.saved(clock.instant().atZone(clock.getZone())));
    show(latest);
  }

  /** Saves an answer that can be taken back. */
  void actOn(LapId lap, String measure, Callable<Sessions.Result> work, Runnable restored) {
    act(work, "", latest -> undo.given(lap, measure, state, latest, restored));
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
    actOn(lap, measure, () -> days.score(session(), lap, measure, value), () -> {});
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

  /** Done with the lap: scores, notes and guess are saved, only now about times. */
  public void lapDone() {
    LapId lap = lap();
    act(
        () -> days.ridden(session(), lap),
        "",
        latest -> {
          done = Optional.of(lap);
          undo.clear();
        });
  }

  /** Every lap agreed to is ridden; one more is, for this reason. */
  public void pastCap(String reason) {
    int stint = lap().stint();
    act(() -> days.pastCap(session(), stint, reason));
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
        latest -> {
          done = Optional.of(lap);
          undo.clear();
        });
  }
}
