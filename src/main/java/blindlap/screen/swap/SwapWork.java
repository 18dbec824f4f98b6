package blindlap.screen.swap;

import blindlap.desk.DeskFault;
import blindlap.desk.HelperDay;
import blindlap.desk.HelperDraft;
import blindlap.desk.LapWaits;
import blindlap.desk.MeasuredValues;
import blindlap.desk.PaperForm;
import blindlap.desk.ReallyFitted;
import blindlap.desk.Sessions;
import blindlap.fault.Problem;
import blindlap.plan.Setting;
import blindlap.ride.DayEvents;
import blindlap.screen.part.Background;
import blindlap.screen.part.SettingFields;
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
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Consumer;
import java.util.function.LongSupplier;
import org.jspecify.annotations.Nullable;

/**
 * The stint the helper works on. What is entered is kept encrypted by the clock, see {@link
 * SwapDrafts}; the bike is handed over only when the safety list is confirmed, everything is
 * measured and the time of every handling is over.
 */
public final class SwapWork extends SwapShown implements SettingFields.Taker {
  /** Room in the sealed entry for what is added at the hand-over, and for the ticks of a draft. */
  private static final int SPARE = 400;

  private final Background background;
  private final Clock clock;
  private final Consumer<SessionState> handed;
  private final SwapTime time;
  private final SwapDrafts drafts;
  private @Nullable HelperDay day;
  private @Nullable HelperEntry entry;
  private Set<Integer> steps = Set.of();
  private Optional<PaperForm> paper = Optional.empty();
  private boolean covered = true;
  private boolean handing;
  private final ReallyFitted fitted = new ReallyFitted();
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
    this.drafts = new SwapDrafts(background, monotonic, this::inHand, this::kept, this::failed);
    this.handed = handed;
  }

  /** What was answered to that, and what happened; null while nothing was. */
  public HelperEntry.@Nullable Timing answered() {
    return entry == null ? null : entry.timing();
  }

  /** The stint in hand, 0 for the warm-up, -1 for none. */
  public int stint() {
    return entry == null || covered ? -1 : entry.stint();
  }

  /** What is in hand and can be seen. */
  @Nullable HelperEntry entry() {
    return covered ? null : entry;
  }

  /** The page is covered: nothing of the stint is shown, and it is kept as before. */
  void close() {
    settle();
    covered = true;
    blank();
  }

  /** Lets go of the stint. */
  void forget() {
    entry = null;
    steps = Set.of();
    paper = Optional.empty();
    fitted.forget();
    close();
  }

  /** Takes up the next stint; false if every stint has its entry. */
  boolean load(HelperDay open, SessionState latest) {
    day = open;
    if (helper.isEmpty()) {
      helper = latest.plan().blinding().helper();
    }
    Integer next = open.next(latest).orElse(null);
    if (next == null) {
      forget();
      covered = false;
      return false;
    }
    boolean shown = !covered && laps == latest.lapsSoFar();
    covered = false;
    laps = latest.lapsSoFar();
    if (entry == null || entry.stint() != next) {
      HelperDraft taken =
          open.unfinished(next)
              .orElseGet(
                  () ->
                      new HelperDraft(
                          HelperEntry.untouched(next, helper, open.work(next).setup()), Set.of()));
      entry = taken.entry();
      steps = taken.steps();
      paper = taken.paper();
      drafts.begin();
      time.follow(taken.entry());
      time.raise(open.raised(latest, next));
      show();
    } else if (!shown) {
      show(); // after every lap it is asked anew whether the rider is fit to go on
    }
    return true;
  }

  private void show() {
    HelperDay open = day;
    HelperEntry now = entry;
    if (open != null && now != null && !covered) {
      sheet.set(SwapSheets.of(open, now, steps, laps));
      showWaits();
    }
  }

  void showWaits() {
    if (entry != null && !covered) {
      overrun.set(time.overrun(day().plan(), stint()));
      waits.set(LapWaits.of(List.of(), missing(), MeasuredValues.unread(settings(), now())));
    }
  }

  /** Once a second, whether the page is in view or not. */
  void beat() {
    drafts.beat();
  }

  /** What is in hand is kept now, as the window closes. */
  void keepNow() {
    settle();
    drafts.now();
  }

  private HelperDay day() {
    return java.util.Objects.requireNonNull(day, "the page is closed");
  }

  private HelperEntry now() {
    return java.util.Objects.requireNonNull(entry, "no stint is in hand");
  }

  private List<Setting> settings() {
    return day().settings(now().stint(), now().fitted());
  }

  private List<Problem> missing() {
    // What is half typed counts as it stands, before its field is left.
    HelperEntry judged = MeasuredValues.judged(settings(), now());
    List<Problem> missing = new ArrayList<>(day().missing(judged, laps));
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

  /** By how much every handling takes longer since an earlier one took so long. */
  Duration raise() {
    return time.raise();
  }

  /** Corrects an earlier stint; kept by the clock like everything else. */
  void correct(HelperEntry.Correction correction) {
    change(now().withCorrection(correction));
  }

  /** Takes a change up; the clock says when it is kept. False if it is too long to be sealed. */
  private boolean change(HelperEntry to) {
    if (!day().fits(to, SPARE)) {
      trouble.set(Problems.sentence(Problem.of(DeskFault.NOTE_TOO_LONG, "")));
      return false;
    }
    entry = to;
    time.follow(to);
    trouble.set("");
    show();
    return true;
  }

  /** The bike is here: the time that every handling takes begins. */
  public void begin() {
    if (now().begun() == null && change(now().begunAt(clock.instant()))) {
      drafts.now();
    }
  }

  Optional<PaperForm> paper() {
    return paper;
  }

  /** Paper is being typed; false where it has no more room beside the entry. */
  boolean paper(PaperForm form) {
    if (!day().fits(new HelperDraft(now(), steps, Optional.of(form)))) {
      return false;
    }
    paper = Optional.of(form);
    return true;
  }

  /** A step was done, or not; only an aid to memory. */
  public void step(int step, boolean done) {
    Set<Integer> all = new TreeSet<>(steps);
    if (done ? all.add(step) : all.remove(step)) {
      steps = all;
      show();
    }
  }

  /** A value is being typed: kept as it stands, shown as outside when its field is left. */
  @Override
  public void typing(String name, String typed) {
    HelperEntry to = now().typing(name, typed);
    if (day().fits(to, SPARE)) {
      entry = to;
      show(); // a page that is built anew shows what was typed
    }
  }

  /** A setting was measured. */
  @Override
  public void measured(String name, String typed) {
    HelperEntry to = MeasuredValues.judged(settings(), now(), name, typed.strip());
    if (!to.equals(now()) || sheet.get() == null) {
      change(to);
    } else {
      show();
    }
  }

  /** What is still being typed counts as typed. */
  private void settle() {
    if (entry != null && day != null) {
      entry = MeasuredValues.judged(settings(), now());
    }
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
  public void riderFit(boolean fit) {
    change(now().withFit(laps, fit));
  }

  /** What was really fitted; touched and touched back, what was measured stands as before. */
  public void fitted(int setup) {
    if (setup != now().fitted()) {
      settle();
      List<Setting> settings = day().settings(now().stint(), setup);
      change(fitted.to(now(), setup, settings, day().plan().bike()));
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
    if (!change(to)) {
      return DayEvents.Sealed.NO_ROOM;
    }
    drafts.now(); // the event itself is an entry of this moment
    return DayEvents.Sealed.DONE;
  }

  /** Another helper works from now on. */
  public void helper(String who) {
    helper = who;
    if (entry != null && change(now().by(who))) {
      drafts.now();
    }
  }

  /** Safe: the bike goes to the rider, and the stint's one entry is written; once. */
  public void handOver() {
    if (entry == null || covered || handing) {
      return;
    }
    settle();
    show();
    HelperDay open = day();
    HelperEntry now = now();
    List<Problem> missing = missing();
    if (!missing.isEmpty()) {
      trouble.set(String.join(" ", Problems.sentences(missing)));
      return;
    }
    handing = true;
    HelperEntry timed = now.begun() == null ? now : now.withTiming(time.timing(open.plan(), now));
    background.run(() -> open.handOver(timed), this::finished, this::failed);
  }

  private void finished(Sessions.Result result) {
    handing = false;
    if (result instanceof Sessions.Result.Refused refused) {
      trouble.set(String.join(" ", Problems.sentences(refused.problems())));
      return;
    }
    forget();
    handed.accept(((Sessions.Result.Done) result).state());
  }

  private void failed(Exception problem) {
    handing = false;
    trouble.set(SwapWords.say("not.saved", Trouble.sentence(problem)));
  }

  private Optional<SwapDrafts.InHand> inHand() {
    HelperDay open = day;
    HelperEntry now = entry;
    return open == null || now == null || handing
        ? Optional.empty()
        : Optional.of(new SwapDrafts.InHand(open, new HelperDraft(now, steps, paper), covered));
  }

  private void kept() {
    if (!covered && entry != null) {
      saved.set(SwapWords.saved(clock.instant().atZone(clock.getZone())));
    }
  }
}
