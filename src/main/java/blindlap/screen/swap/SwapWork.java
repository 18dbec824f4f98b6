package blindlap.screen.swap;

import blindlap.desk.DeskFault;
import blindlap.desk.HelperDay;
import blindlap.desk.Sessions;
import blindlap.desk.Tolerance;
import blindlap.fault.Problem;
import blindlap.plan.Setting;
import blindlap.ride.DayEvents;
import blindlap.screen.part.Background;
import blindlap.session.HelperEntry;
import blindlap.session.SafetyCheck;
import blindlap.session.SessionState;
import blindlap.session.day.DayEvent;
import blindlap.wording.SwapWords;
import blindlap.wording.day.Problems;
import blindlap.wording.day.Trouble;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
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
 * The stint the helper works on. Every change is kept encrypted at once; the bike is handed over
 * only when the safety list is confirmed, everything is measured and the time of every handling is
 * over.
 */
public final class SwapWork {
  private final Background background;
  private final Clock clock;
  private final Consumer<SessionState> handed;
  private final ReadOnlyObjectWrapper<@Nullable SwapSheet> sheet = new ReadOnlyObjectWrapper<>();
  private final ReadOnlyStringWrapper waits = new ReadOnlyStringWrapper("");
  private final ReadOnlyStringWrapper saved = new ReadOnlyStringWrapper("");
  private final ReadOnlyStringWrapper trouble = new ReadOnlyStringWrapper("");
  private final SwapTime time;
  private final ReadOnlyBooleanWrapper overrun = new ReadOnlyBooleanWrapper();
  private @Nullable HelperDay day;
  private @Nullable HelperEntry entry;
  private String helper = "";
  private int laps;

  /**
   * @param handed takes the session after the bike was handed over
   */
  SwapWork(
      Background background, Clock clock, LongSupplier monotonic, Consumer<SessionState> handed) {
    this.background = background;
    this.clock = clock;
    this.time = new SwapTime(clock, monotonic);
    this.handed = handed;
  }

  /** The stint in hand; null while the page is closed or all is done. */
  public ReadOnlyObjectProperty<@Nullable SwapSheet> sheetProperty() {
    return sheet.getReadOnlyProperty();
  }

  /** What the lap still waits for; empty if it may start. */
  public ReadOnlyStringProperty waitsProperty() {
    return waits.getReadOnlyProperty();
  }

  /** "Saved 11:44:07", once the disk has it. */
  public ReadOnlyStringProperty savedProperty() {
    return saved.getReadOnlyProperty();
  }

  /** One sentence if something was refused; else empty. */
  public ReadOnlyStringProperty troubleProperty() {
    return trouble.getReadOnlyProperty();
  }

  /** True once the handling has taken so much longer than planned that a mishap is asked about. */
  public ReadOnlyBooleanProperty overrunProperty() {
    return overrun.getReadOnlyProperty();
  }

  /** What was answered to that, and what happened; null while nothing was. */
  public HelperEntry.@Nullable Timing answered() {
    return entry == null ? null : entry.timing();
  }

  /** The stint in hand, 0 for the warm-up, -1 for none. */
  public int stint() {
    return entry == null ? -1 : entry.stint();
  }

  @Nullable HelperEntry entry() {
    return entry;
  }

  void close() {
    entry = null;
    sheet.set(null);
    waits.set("");
    saved.set("");
    trouble.set("");
    overrun.set(false);
  }

  /** Takes up the next stint; false if every stint has its entry. */
  boolean load(HelperDay open, SessionState latest) {
    day = open;
    if (helper.isEmpty()) {
      helper = latest.plan().blinding().helper();
    }
    Integer next = open.next(latest).orElse(null);
    if (next == null) {
      entry = null;
      sheet.set(null);
      waits.set("");
      overrun.set(false);
      return false;
    }
    boolean ridden = laps != latest.lapsSoFar();
    laps = latest.lapsSoFar();
    if (stint() != next) {
      HelperEntry taken =
          open.unfinished(next)
              .orElseGet(() -> HelperEntry.untouched(next, helper, open.work(next).setup()));
      entry = taken;
      time.follow(taken);
      time.raise(open.raised(latest, next));
      show();
    } else if (ridden) {
      show(); // after every lap it is asked anew whether the rider is fit to go on
    }
    return true;
  }

  private void show() {
    HelperDay open = day;
    HelperEntry now = entry;
    if (open != null && now != null) {
      sheet.set(SwapSheets.of(open, now, laps));
      showWaits();
    }
  }

  void showWaits() {
    overrun.set(entry != null && time.overrun(day().plan(), stint()));
    waits.set(entry == null ? "" : String.join(" ", Problems.sentences(missing())));
  }

  private HelperDay day() {
    return java.util.Objects.requireNonNull(day, "the page is closed");
  }

  private HelperEntry now() {
    return java.util.Objects.requireNonNull(entry, "no stint is in hand");
  }

  private List<Problem> missing() {
    List<Problem> missing = new ArrayList<>(day().missing(now(), laps));
    Duration left = left();
    if (!left.isZero()) {
      missing.add(Problem.of(DeskFault.TIME_NOT_OVER, "", SwapWords.countdown(left)));
    }
    HelperEntry.Timing timing = now().timing();
    if (time.overrun(day().plan(), stint()) && (timing == null || timing.mishap() == null)) {
      missing.add(Problem.of(DeskFault.MISHAP_OPEN, "", SwapWords.countdown(whole())));
    }
    return missing;
  }

  /** What every handling takes; zero without a timetable. */
  Duration whole() {
    return time.whole(day().plan(), now().stint());
  }

  /** What is left of the time that every handling takes; all of it before it begins. */
  Duration left() {
    return time.left(day().plan(), now().stint());
  }

  /** True if an earlier handling took so long that every one takes longer now. */
  boolean raised() {
    return !time.raise().isZero();
  }

  /** By how much. */
  Duration raise() {
    return time.raise();
  }

  private void change(HelperEntry to) {
    entry = to;
    time.follow(to);
    save();
    show();
  }

  void save() {
    HelperDay open = day();
    HelperEntry to = now();
    background.run(
        () -> {
          open.keep(to);
          return to;
        },
        kept -> {
          saved.set(SwapWords.saved(clock.instant().atZone(clock.getZone())));
          trouble.set("");
        },
        this::failed);
  }

  /** Corrects an earlier stint; before the handling {@link SwapLater#beat} keeps it in time. */
  void correct(HelperEntry.Correction correction) {
    entry = now().withCorrection(correction);
    if (now().begun() != null) {
      save();
    }
    show();
  }

  /** The bike is here: the time that every handling takes begins. */
  public void begin() {
    if (now().begun() == null) {
      change(now().begunAt(clock.instant()));
    }
  }

  /** A setting was measured. */
  public void measured(String name, String typed) {
    HelperEntry now = now();
    Setting setting =
        day().settings(now.stint(), now.fitted()).stream()
            .filter(s -> s.name().equals(name))
            .findFirst()
            .orElseThrow();
    if (typed.strip().equals(now.measured().getOrDefault(name, ""))) {
      return;
    }
    Map<String, String> measured = new LinkedHashMap<>(now.measured());
    measured.put(name, typed.strip());
    List<HelperEntry.Outside> outside = new ArrayList<>(now.outside());
    outside.removeIf(o -> o.setting().equals(name));
    if (Tolerance.readable(setting, typed)) {
      Tolerance.outside(setting, typed).ifPresent(outside::add);
    }
    change(now.withMeasured(measured, outside));
  }

  /** Why a setting outside its tolerance is ridden. */
  public void accept(String name, String reason) {
    HelperEntry now = now();
    List<HelperEntry.Outside> outside =
        now.outside().stream()
            .map(o -> o.setting().equals(name) ? o.because(reason.strip()) : o)
            .toList();
    if (!outside.equals(now.outside())) {
      change(now.withMeasured(now.measured(), outside));
    }
  }

  /** An item of the safety list is confirmed, or not. */
  public void confirm(String key, boolean yes) {
    SafetyCheck check = SafetyCheck.valueOf(key);
    Set<SafetyCheck> checks = EnumSet.noneOf(SafetyCheck.class);
    checks.addAll(now().confirmed());
    if (yes) {
      checks.add(check);
    } else {
      checks.remove(check);
    }
    change(now().withConfirmed(checks));
  }

  /** Whether the rider is fit to go on. */
  public void riderFit(boolean fit) {
    change(now().withFit(laps, fit));
  }

  /** What was really fitted. */
  public void fitted(int setup) {
    if (setup != now().fitted()) {
      change(now().withFitted(setup));
    }
  }

  /** Whether a mishap made the handling longer, and what happened; sealed. */
  public void mishap(boolean yes, String words) {
    HelperEntry.Timing so = time.timing(day().plan(), now());
    change(now().withTiming(new HelperEntry.Timing(so.given(), so.took(), yes, words.strip())));
  }

  /** Further words, sealed. */
  public void note(String text) {
    if (!text.equals(now().note())) {
      change(now().withNote(text));
    }
  }

  /**
   * Seals the helper's words on an event of the day in the entry in hand, the first that is still
   * to be written.
   */
  DayEvents.Sealed said(DayEvent event, int stint, String words) {
    HelperEntry now = entry;
    if (now == null) {
      return DayEvents.Sealed.NOT;
    }
    HelperEntry to = now.withEvent(new HelperEntry.Said(stint, event, words));
    if (!day().fits(to)) {
      return DayEvents.Sealed.NO_ROOM;
    }
    change(to);
    return DayEvents.Sealed.DONE;
  }

  /** Another helper works from now on. */
  public void helper(String who) {
    helper = who;
    if (entry != null) {
      change(now().by(who));
    }
  }

  /** Safe: the bike goes to the rider, and the stint's one entry is written. */
  public void handOver() {
    HelperDay open = day();
    HelperEntry now = now();
    List<Problem> missing = missing();
    if (!missing.isEmpty()) {
      trouble.set(String.join(" ", Problems.sentences(missing)));
      return;
    }
    HelperEntry timed = now.begun() == null ? now : now.withTiming(time.timing(open.plan(), now));
    background.run(() -> open.handOver(timed), this::finished, this::failed);
  }

  private void finished(Sessions.Result result) {
    if (result instanceof Sessions.Result.Refused refused) {
      trouble.set(String.join(" ", Problems.sentences(refused.problems())));
      return;
    }
    trouble.set("");
    saved.set(SwapWords.saved(clock.instant().atZone(clock.getZone())));
    handed.accept(((Sessions.Result.Done) result).state());
  }

  private void failed(Exception problem) {
    trouble.set(SwapWords.say("not.saved", Trouble.sentence(problem)));
  }
}
