package blindlap.screen.swap;

import blindlap.desk.DayPin;
import blindlap.desk.DeskFault;
import blindlap.desk.HelperDay;
import blindlap.desk.HelperDays;
import blindlap.desk.day.RiderDays;
import blindlap.fault.Problem;
import blindlap.plan.DayEnd;
import blindlap.plan.Plan;
import blindlap.screen.cover.Idling;
import blindlap.screen.part.Background;
import blindlap.screen.part.DayEventsModel;
import blindlap.session.HelperEntry;
import blindlap.session.SessionState;
import blindlap.session.day.SessionId;
import blindlap.wording.SwapWords;
import blindlap.wording.day.Problems;
import blindlap.wording.day.Trouble;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.function.LongSupplier;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import org.jspecify.annotations.Nullable;

/**
 * The Swap page: what do I fit now? Opened by the helper phrase, blank when idle, brought back by a
 * day PIN. What is entered is kept encrypted at every step and becomes the stint's one entry when
 * the bike is handed over.
 */
public final class SwapModel {
  /** What the page asks for. */
  public enum Phase {
    NO_SESSION,
    PHRASE,
    CHOOSE_PIN,
    BLANK,
    OPEN,
    /** Every stint has its entry. */
    ALL_DONE,
    OVER
  }

  /**
   * What changes by the second.
   *
   * @param left the countdown
   * @param share of the handling's time that is over, 0 to 1
   * @param idle when the page closes itself
   * @param pace clock, how late the day runs, what to drop
   */
  public record Time(String left, double share, String idle, String pace) {}

  private final HelperDays days;
  private final LongSupplier version;
  private final Background background;
  private final Clock clock;
  private final Idling idling;

  private final ReadOnlyObjectWrapper<Phase> phase = new ReadOnlyObjectWrapper<>(Phase.NO_SESSION);
  private final ReadOnlyObjectWrapper<Time> time =
      new ReadOnlyObjectWrapper<>(new Time("", 0, "", ""));
  private final ReadOnlyStringWrapper trouble = new ReadOnlyStringWrapper("");
  private final SwapWork work;
  private final DayEventsModel events;
  private final SwapLater later;

  private @Nullable SessionId id;
  private @Nullable SessionState state;
  private @Nullable HelperDay day;
  private @Nullable DayPin pin;
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
    this.clock = clock;
    this.idling = new Idling(clock, monotonic);
    this.work = new SwapWork(background, clock, monotonic, this::take);
    this.later = new SwapLater(background, clock, monotonic, work, this::take);
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
  public ReadOnlyObjectProperty<Time> timeProperty() {
    return time.getReadOnlyProperty();
  }

  /** One sentence if something was refused; else empty. */
  public ReadOnlyStringProperty troubleProperty() {
    return trouble.getReadOnlyProperty();
  }

  /** Opens a session; its page asks for the phrase unless it is open already. */
  public void open(SessionId session) {
    if (session.equals(id)) {
      reload();
      return;
    }
    id = session;
    events.open(session);
    close(Phase.PHRASE);
    pin = null;
    day = null;
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
      close(Phase.OVER);
    } else if (open != null && phase.get() != Phase.BLANK && phase.get() != Phase.CHOOSE_PIN) {
      phase.set(work.load(open, latest) ? Phase.OPEN : Phase.ALL_DONE);
      later.load(open, latest);
      time.set(timeNow());
    }
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
          int stint = DayEnd.earliest(plan);
          return SwapWords.earliest(stint, stint == 0 ? 1 : DayEnd.smallestP(plan, stint));
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
        close(Phase.PHRASE);
        refuse(List.of(Problem.of(DeskFault.PIN_USED_UP, "")));
      }
    }
  }

  private void uncover() {
    trouble.set("");
    phase.set(Phase.OPEN);
    touch();
    reload();
  }

  /** Blanks the page at once. */
  public void hide() {
    if (phase.get() == Phase.OPEN || phase.get() == Phase.ALL_DONE) {
      close(Phase.BLANK);
    } else if (phase.get() == Phase.CHOOSE_PIN) {
      day = null;
      close(Phase.PHRASE);
    }
  }

  private void close(Phase to) {
    later.close();
    work.close();
    trouble.set("");
    time.set(new Time("", 0, "", ""));
    phase.set(to);
  }

  /** How long every handling takes, in words. */
  public String handlingWords() {
    if (work.entry() == null) {
      return "";
    }
    Duration whole = work.whole();
    return whole.isZero()
        ? SwapWords.say("call.none")
        : SwapWords.say(
            work.raised() ? "call.note.raised" : "call.note", SwapWords.countdown(whole));
  }

  /** Someone is at the page. */
  public void touch() {
    idling.touch();
  }

  /** Once a second: countdown, idle, what other windows wrote. */
  public void tick() {
    boolean open = phase.get() == Phase.OPEN || phase.get() == Phase.ALL_DONE;
    if ((open || phase.get() == Phase.CHOOSE_PIN) && idling.over()) {
      hide();
      return;
    }
    if (id != null) {
      background.run(version::getAsLong, this::moved, this::failed);
    }
    if (open) {
      time.set(timeNow());
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

  private Time timeNow() {
    HelperDay open = java.util.Objects.requireNonNull(day);
    HelperEntry now = work.entry();
    String closes = idling.words();
    if (now == null) {
      return new Time("", 0, closes, "");
    }
    Duration whole = work.whole();
    Duration left = work.left();
    double share = whole.isZero() ? 1 : 1 - (double) left.toMillis() / whole.toMillis();
    return new Time(
        whole.isZero() ? "" : SwapWords.countdown(left),
        Math.max(0, Math.min(1, share)),
        closes,
        pace(open.plan(), now));
  }

  private String pace(Plan plan, HelperEntry now) {
    String at = SwapWords.say("clock", SwapWords.clock(clock.instant().atZone(clock.getZone())));
    String pace =
        SwapPace.of(plan, now.stint(), now.begun(), clock.instant(), work.raise())
            .map(
                p ->
                    SwapWords.late(p.late())
                        + " "
                        + SwapWords.drop(p.end(), p.limit(), p.withoutRests(), p.mostStints()))
            .orElse("");
    return Stream.of(at + ".", pace.strip(), earliest, cap())
        .filter(words -> !words.isBlank())
        .collect(Collectors.joining(" "));
  }

  private String cap() {
    SessionState now = state;
    Integer most = now == null ? null : now.lapCap().orElse(null);
    if (now == null || most == null) {
      return "";
    }
    return SwapWords.say(now.capReached() ? "cap.reached" : "cap", now.lapsSoFar(), most);
  }

  private void refuse(List<Problem> problems) {
    trouble.set(String.join(" ", Problems.sentences(problems)));
  }

  private void failed(Exception problem) {
    trouble.set(SwapWords.say("not.saved", Trouble.sentence(problem)));
  }
}
