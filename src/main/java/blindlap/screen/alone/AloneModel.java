package blindlap.screen.alone;

import blindlap.desk.AloneDay;
import blindlap.desk.AloneDays;
import blindlap.desk.DeskFault;
import blindlap.desk.LapWaits;
import blindlap.desk.MeasuredValues;
import blindlap.desk.ReallyFitted;
import blindlap.desk.Sessions;
import blindlap.fault.Problem;
import blindlap.plan.Setting;
import blindlap.screen.part.Background;
import blindlap.screen.part.SettingFields;
import blindlap.session.HelperEntry;
import blindlap.session.MountedUnit;
import blindlap.session.SafetyCheck;
import blindlap.session.SessionState;
import blindlap.session.day.SessionId;
import blindlap.wording.day.Problems;
import blindlap.wording.day.RideWords;
import blindlap.wording.day.Trouble;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.function.LongSupplier;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import org.jspecify.annotations.Nullable;

/**
 * What a rider who swaps alone mounts next: shown when it is asked for and not before, then
 * measured, checked and ridden. What is in hand is an entry of the day once it is safe to ride.
 */
public final class AloneModel implements SettingFields.Taker {
  private final AloneDays days;
  private final Background background;
  private final Clock clock;
  private final LongSupplier monotonic;
  private final Runnable written;
  private final ReadOnlyBooleanWrapper alone = new ReadOnlyBooleanWrapper();
  private final ReadOnlyObjectWrapper<Optional<AloneSheet>> sheet =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ReadOnlyObjectWrapper<LapWaits> waits = new ReadOnlyObjectWrapper<>(LapWaits.NONE);
  private final ReadOnlyStringWrapper trouble = new ReadOnlyStringWrapper("");

  private @Nullable SessionId id;
  private @Nullable SessionState state;
  private @Nullable AloneDay day;
  private AloneDay.@Nullable Work work;
  private @Nullable HelperEntry entry;
  private final ReallyFitted fitted = new ReallyFitted();
  private AloneUnit unit = AloneUnit.of(0);
  private boolean working;

  /**
   * @param days days of riders who swap alone
   * @param clock wall clock
   * @param monotonic nanoseconds that only ever grow
   * @param written run after every entry that was written here
   */
  public AloneModel(
      AloneDays days,
      Background background,
      Clock clock,
      LongSupplier monotonic,
      Runnable written) {
    this.days = days;
    this.background = background;
    this.clock = clock;
    this.monotonic = monotonic;
    this.written = written;
  }

  /** True while a session is open whose rider swaps alone. */
  public ReadOnlyBooleanProperty aloneProperty() {
    return alone.getReadOnlyProperty();
  }

  /** The stint that is to be mounted; empty while none is. */
  public ReadOnlyObjectProperty<Optional<AloneSheet>> sheetProperty() {
    return sheet.getReadOnlyProperty();
  }

  /** What is waited for. */
  public ReadOnlyObjectProperty<LapWaits> waitsProperty() {
    return waits.getReadOnlyProperty();
  }

  /** One sentence if something was refused; else empty. */
  public ReadOnlyStringProperty troubleProperty() {
    return trouble.getReadOnlyProperty();
  }

  /** Nanoseconds that only ever grow. */
  LongSupplier monotonic() {
    return monotonic;
  }

  /** Opens a session. */
  public void open(SessionId session) {
    if (!session.equals(id)) {
      id = session;
      state = null;
      day = null;
      forget();
      alone.set(false);
    }
    reload();
  }

  /** Takes the day up as it stands on disk. */
  public void reload() {
    SessionId now = id;
    if (now != null) {
      background.run(() -> days.state(now), found -> found.ifPresent(this::take), this::failed);
    }
  }

  private void take(SessionState latest) {
    if (!latest.id().equals(id)) {
      return;
    }
    state = latest;
    AloneDay open = days.day(latest).orElse(null);
    day = open;
    if (open != null) {
      next(open, latest);
    }
    alone.set(open != null);
  }

  private void next(AloneDay open, SessionState latest) {
    AloneDay.Next next = open.next(latest);
    if (next instanceof AloneDay.Next.Show show) {
      forget();
      boolean paper = AloneSheets.onPaper(latest, show.stint());
      sheet.set(Optional.of(AloneSheet.hidden(show.stint(), paper)));
    } else if (next instanceof AloneDay.Next.Mount mount) {
      mount(mount.work());
    } else {
      forget();
    }
  }

  private void mount(AloneDay.Work shown) {
    HelperEntry now = entry;
    work = shown;
    if (now == null || now.stint() != shown.stint()) {
      Integer setup = shown.setup();
      entry =
          HelperEntry.untouched(shown.stint(), rider(), setup == null ? 0 : setup)
              .begunAt(clock.instant());
      fitted.forget();
      unit = AloneUnit.of(shown.stint());
      trouble.set("");
    }
    show();
  }

  private String rider() {
    return java.util.Objects.requireNonNull(state, "no session is open").plan().rider();
  }

  private void forget() {
    entry = null;
    work = null;
    fitted.forget();
    sheet.set(Optional.empty());
    waits.set(LapWaits.NONE);
  }

  private int laps() {
    return state == null ? 0 : state.lapsSoFar();
  }

  private void show() {
    AloneDay open = day;
    AloneDay.Work shown = work;
    HelperEntry now = entry;
    SessionState latest = state;
    if (open == null || shown == null || now == null || latest == null) {
      return;
    }
    sheet.set(Optional.of(AloneSheets.of(open, shown, now, unit.whole(), latest)));
    showWaits();
  }

  private boolean paper() {
    return sheet.get().map(AloneSheet::paper).orElse(false);
  }

  private void showWaits() {
    AloneDay open = day;
    HelperEntry now = entry;
    if (open == null || now == null) {
      return;
    }
    // What is half typed counts as it stands, before its field is left. What is not measured or
    // ticked on paper stays open there.
    HelperEntry judged = MeasuredValues.judged(settings(), now);
    waits.set(
        LapWaits.of(
            open.prepared() ? unit.waits() : List.of(),
            paper() ? open.unreadOnPaper(judged) : open.missing(judged, laps()),
            MeasuredValues.unread(settings(), judged)));
  }

  private List<Setting> settings() {
    AloneDay open = day;
    AloneDay.Work shown = work;
    HelperEntry now = entry;
    return open == null || shown == null || now == null
        ? List.of()
        : AloneSheets.settings(open, shown, now);
  }

  private void change(HelperEntry to) {
    AloneDay open = day;
    if (open != null && !open.fits(to)) {
      trouble.set(Problems.sentence(Problem.of(DeskFault.NOTE_TOO_LONG, "")));
      return;
    }
    entry = to;
    trouble.set("");
    show();
  }

  private HelperEntry now() {
    return java.util.Objects.requireNonNull(entry, "nothing is to be mounted");
  }

  /** Shows what to mount next: an entry of the day, once. */
  public void showNext() {
    AloneDay open = day;
    if (open == null || working) {
      return;
    }
    working = true;
    background.run(
        open::show,
        shown -> {
          working = false;
          if (shown instanceof AloneDay.Shown.Refused refused) {
            trouble.set(String.join(" ", Problems.sentences(refused.problems())));
          } else if (shown instanceof AloneDay.Shown.Setup setup) {
            trouble.set("");
            take(setup.state());
            written.run();
          }
        },
        this::failed);
  }

  /** A value is being typed: kept as it stands, shown as outside when its field is left. */
  @Override
  public void typing(String name, String typed) {
    AloneDay open = day;
    HelperEntry to = now().typing(name, typed);
    if (open != null && open.fits(to)) {
      entry = to;
      show(); // a page that is built anew shows what was typed
    }
  }

  /** A setting was measured. */
  @Override
  public void measured(String name, String typed) {
    change(MeasuredValues.judged(settings(), now(), name, typed.strip()));
  }

  /** Why a setting outside its tolerance is ridden. */
  @Override
  public void accept(String name, String reason) {
    HelperEntry to = now().because(name, reason);
    if (!to.equals(now())) {
      change(to);
    }
  }

  /** An item of the safety list is confirmed, or not. */
  public void confirm(String key, boolean yes) {
    change(now().withCheck(SafetyCheck.valueOf(key), yes));
  }

  /** Whether the rider is fit to go on. */
  public void fit(boolean yes) {
    change(now().withFit(laps(), yes));
  }

  /** What was really mounted; touched and touched back, what was measured stands as before. */
  public void fitted(int setup) {
    AloneDay open = day;
    if (open != null && setup != now().fitted()) {
      HelperEntry now = MeasuredValues.judged(settings(), now());
      List<Setting> settings = open.settings(now.stint(), setup);
      change(fitted.to(now, setup, settings, open.plan().bike()));
    }
  }

  /** Whether cover and seal of a prepared unit are whole. */
  public void whole(boolean yes) {
    unit = unit.whole(yes);
    show();
  }

  /** What could be seen, where they are not. */
  public void seen(String words) {
    unit = unit.seen(words);
    showWaits();
  }

  /**
   * Mounted and safe: an entry of the day, and the laps may start. What was kept on paper is
   * recorded as it stands there.
   */
  public void mounted() {
    AloneDay open = day;
    if (open == null || entry == null || working) {
      return;
    }
    HelperEntry now = MeasuredValues.judged(settings(), now());
    entry = now;
    show();
    if (!waits.get().none()) {
      trouble.set(waits.get().whole());
      return;
    }
    working = true;
    MountedUnit seen = unit.mounted();
    if (paper()) {
      HelperEntry kept =
          now.onPaper(new HelperEntry.Paper(now.confirmed().isEmpty() ? "" : rider()));
      background.run(() -> open.mountOnPaper(kept, seen), this::finished, this::failed);
      return;
    }
    background.run(() -> open.mount(now, seen), this::finished, this::failed);
  }

  private void finished(Sessions.Result result) {
    working = false;
    if (result instanceof Sessions.Result.Refused refused) {
      trouble.set(String.join(" ", Problems.sentences(refused.problems())));
      return;
    }
    trouble.set("");
    take(((Sessions.Result.Done) result).state());
    written.run();
  }

  private void failed(Exception problem) {
    working = false;
    trouble.set(RideWords.notSaved(Trouble.sentence(problem)));
  }
}
