package blindlap.screen.swap;

import blindlap.desk.DayPin;
import blindlap.desk.DeskFault;
import blindlap.desk.HelperDay;
import blindlap.desk.HelperDays;
import blindlap.desk.Sessions;
import blindlap.desk.day.RiderDays;
import blindlap.fault.Problem;
import blindlap.plan.DayEnd;
import blindlap.plan.Plan;
import blindlap.screen.cover.Idling;
import blindlap.screen.part.Background;
import blindlap.screen.part.DayEventsModel;
import blindlap.session.SessionState;
import blindlap.session.day.SessionId;
import blindlap.wording.SwapWords;
import blindlap.wording.day.Problems;
import blindlap.wording.day.Trouble;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.function.LongSupplier;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import org.jspecify.annotations.Nullable;

/**
 * The Swap page: what do I fit now? Opened by the helper phrase, blank when idle, brought back by a
 * day PIN. What is entered is kept encrypted and becomes the stint's one entry when the bike is
 * handed over. From then on the page says one word and the code, until the bike is back.
 */
public final class SwapModel {
  /** What the page asks for. */
  public enum Phase {
    NO_SESSION,
    PHRASE,
    CHOOSE_PIN,
    BLANK,
    OPEN,
    /** The bike is with the rider: nothing of the key is shown, and nothing opens it. */
    SAFE,
    /** Every stint has its entry. */
    ALL_DONE,
    OVER
  }

  private final HelperDays days;
  private final LongSupplier version;
  private final Background background;
  private final LongSupplier monotonic;
  private final Idling idling;

  private final ReadOnlyObjectWrapper<Phase> phase = new ReadOnlyObjectWrapper<>(Phase.NO_SESSION);
  private final ReadOnlyObjectWrapper<SwapClock.Time> time =
      new ReadOnlyObjectWrapper<>(SwapClock.Time.NONE);
  private final ReadOnlyStringWrapper trouble = new ReadOnlyStringWrapper("");
  private final SwapWork work;
  private final SwapClock words;
  private final DayEventsModel events;
  private final SwapLater later;
  private final SwapLook looks;

  private @Nullable SessionId id;
  private @Nullable SessionState state;
  private @Nullable HelperDay day;
  private @Nullable DayPin pin;
  private boolean uncovering;
  private String earliest = "";
  private long seen = Long.MIN_VALUE;

  /**
   * @param days the helper's days
   * @param riders what anyone may do on the day
   * @param version grows whenever any window writes to the notebook
   * @param clock wall clock, of times of day
   * @param monotonic nanoseconds that only ever grow, of the countdown and of idling
   */
  public SwapModel(
      HelperDays days,
      RiderDays riders,
      LongSupplier version,
      Background background,
      Clock clock,
      LongSupplier monotonic) {
    this.days = days;
    this.version = version;
    this.background = background;
    this.idling = new Idling(clock, monotonic);
    this.monotonic = monotonic;
    this.work = new SwapWork(background, clock, monotonic, this::take);
    this.words = new SwapClock(work, clock, idling);
    this.later = new SwapLater(background, clock, monotonic, work, this::take);
    this.looks = new SwapLook(background, this::take);
    this.events = new DayEventsModel(riders, background, () -> -1, after -> reload(), work::said);
  }

  /** What the page asks for. */
  public ReadOnlyObjectProperty<Phase> phaseProperty() {
    return phase.getReadOnlyProperty();
  }

  /** The stint in hand. */
  public SwapWork work() {
    return work;
  }

  /** What may be said of the day at any time. */
  public DayEventsModel events() {
    return events;
  }

  /** Wrong fits noticed later, stints kept on paper, the end of the helper's day. */
  public SwapLater later() {
    return later;
  }

  /** Looks before the end of the day. */
  public SwapLook looks() {
    return looks;
  }

  /** Another helper takes over: an entry of the day, and the name on the sealed entries to come. */
  public void helperChanged(String who) {
    if (who.isBlank()) {
      events.refuse(SwapWords.say("helper.changed.who"));
      return;
    }
    work.helper(who);
    events.helperChanged(who);
  }

  /** What changes by the second. */
  public ReadOnlyObjectProperty<SwapClock.Time> timeProperty() {
    return time.getReadOnlyProperty();
  }

  /** One sentence if something was refused; else empty. */
  public ReadOnlyStringProperty troubleProperty() {
    return trouble.getReadOnlyProperty();
  }

  /** Nanoseconds that only ever grow, for what is deaf for a moment. */
  LongSupplier monotonic() {
    return monotonic;
  }

  /** What is said as the bike goes out, such as "safe, 883"; empty otherwise. */
  public String safeWords() {
    Integer out = out();
    return phase.get() != Phase.SAFE || out == null
        ? ""
        : out == 0
            ? SwapWords.say("safe.warm.up")
            : SwapWords.say("safe.code", java.util.Objects.requireNonNull(state).code(out));
  }

  /** The stint for which the helper handed the bike over and has not got it back. */
  private @Nullable Integer out() {
    return state == null ? null : HelperDays.bikeOut(state).orElse(null);
  }

  /** The bike is back: an entry of the day, and then the day PIN. */
  public void bikeReturned() {
    SessionId now = id;
    Integer out = out();
    if (now == null || out == null) {
      reload();
      return;
    }
    background.run(
        () -> days.bikeReturned(now, out),
        result -> {
          if (result instanceof Sessions.Result.Refused refused) {
            refuse(refused.problems());
          } else {
            take(((Sessions.Result.Done) result).state());
          }
        },
        this::failed);
  }

  /** After how long without a touch the page closes itself. */
  public Duration blankAfter() {
    return idling.limit();
  }

  /** Sets that, and remembers it. */
  public void blankAfter(Duration time) {
    idling.limit(time);
    background.run(
        () -> {
          days.blankAfter(time);
          return true;
        },
        kept -> {},
        this::failed);
  }

  /** Opens a session; its page asks for the phrase unless it is open already. */
  public void open(SessionId session) {
    if (session.equals(id)) {
      reload();
      return;
    }
    work.forget();
    id = session;
    state = null;
    events.open(session);
    close(Phase.PHRASE);
    pin = null;
    day = null;
    background.run(days::blankAfter, idling::limit, this::failed);
    reload();
  }

  private void reload() {
    SessionId now = id;
    if (now != null) {
      background.run(() -> days.state(now), found -> found.ifPresent(this::take), this::failed);
    }
  }

  private void take(SessionState latest) {
    state = latest;
    HelperDay open = day;
    if (!latest.step().day()) {
      later.dayClosed(open, latest);
      work.forget();
      close(Phase.OVER);
    } else if (out() != null) {
      if (phase.get() != Phase.SAFE) {
        uncovering = false;
        work.forget();
        close(Phase.SAFE);
      }
    } else if (phase.get() == Phase.SAFE) {
      close(day != null && pin != null ? Phase.BLANK : Phase.PHRASE);
    } else if (open != null && (uncovering || inView())) {
      uncovering = false;
      phase.set(work.load(open, latest) ? Phase.OPEN : Phase.ALL_DONE);
      later.load(open, latest);
      looks.load(open, latest);
      time.set(words.now(java.util.Objects.requireNonNull(day).plan(), state, earliest));
    }
  }

  private boolean inView() {
    return phase.get() == Phase.OPEN || phase.get() == Phase.ALL_DONE;
  }

  /** Opens the page with the phrase as typed: up to a second of work. */
  public void phrase(String typed) {
    SessionState latest = state;
    if (latest == null) {
      return;
    }
    background.run(
        () -> days.open(latest, typed),
        opened -> {
          if (opened instanceof HelperDays.Opened.Refused refused) {
            refuse(refused.problems());
            return;
          }
          day = ((HelperDays.Opened.Day) opened).day();
          trouble.set("");
          touch();
          phase.set(Phase.CHOOSE_PIN);
          stopNoEarlier(latest.plan());
        },
        this::failed);
  }

  private void stopNoEarlier(Plan plan) {
    background.run(
        () -> {
          int stint = plan.telling() == null ? DayEnd.earliest(plan) : 0;
          return plan.telling() != null
              ? ""
              : SwapWords.earliest(stint, stint == 0 ? 1 : DayEnd.smallestP(plan, stint));
        },
        words -> {
          earliest = words;
          tick();
        },
        this::failed);
  }

  /** The helper chooses the day PIN. */
  public void choosePin(String digits) {
    if (!DayPin.valid(digits)) {
      refuse(List.of(Problem.of(DeskFault.PIN_FORM, "")));
      return;
    }
    pin = days.pin(digits);
    uncover();
  }

  /** Brings a blank page back. */
  public void reopen(String digits) {
    DayPin kept = pin;
    DayPin.Try answer = kept == null ? DayPin.Try.USED_UP : kept.attempt(digits);
    switch (answer) {
      case RIGHT -> uncover();
      case WRONG ->
          refuse(
              List.of(
                  Problem.of(
                      DeskFault.PIN_WRONG, "", java.util.Objects.requireNonNull(kept).left())));
      case USED_UP -> {
        pin = null;
        day = null;
        work.forget();
        close(Phase.PHRASE);
        refuse(List.of(Problem.of(DeskFault.PIN_USED_UP, "")));
      }
    }
  }

  private void uncover() {
    trouble.set("");
    touch();
    uncovering = true; // nothing is shown before it is known what is in hand
    reload();
  }

  /** Blanks the page at once. */
  public void hide() {
    if (inView()) {
      close(Phase.BLANK);
    } else if (phase.get() == Phase.CHOOSE_PIN) {
      day = null;
      close(Phase.PHRASE);
    }
  }

  private void close(Phase to) {
    later.close();
    looks.close();
    work.close();
    trouble.set("");
    time.set(SwapClock.Time.NONE);
    phase.set(to);
  }

  /** The words on time. */
  SwapClock words() {
    return words;
  }

  /** Someone is at the page. */
  public void touch() {
    idling.touch();
  }

  /** Once a second, whether the page is in view or not: what is in hand is kept. */
  public void beat() {
    work.beat();
  }

  /** The window closes: what is in hand is kept. */
  public void closing() {
    work.keepNow();
  }

  /** Once a second: countdown, idle, what other windows wrote. */
  public void tick() {
    beat();
    boolean open = inView();
    if ((open || phase.get() == Phase.CHOOSE_PIN) && idling.over()) {
      hide();
      return;
    }
    if (id != null) {
      background.run(version::getAsLong, this::moved, this::failed);
    }
    if (open) {
      time.set(words.now(java.util.Objects.requireNonNull(day).plan(), state, earliest));
      work.showWaits();
      later.beat();
    }
  }

  private void moved(long now) {
    if (now != seen) {
      seen = now;
      reload();
    }
  }

  private void refuse(List<Problem> problems) {
    trouble.set(String.join(" ", Problems.sentences(problems)));
  }

  private void failed(Exception problem) {
    trouble.set(SwapWords.say("not.saved", Trouble.sentence(problem)));
  }
}
