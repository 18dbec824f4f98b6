package blindlap.desk;

import blindlap.exchange.HelperEntryText;
import blindlap.exchange.TypedTexts;
import blindlap.fault.Problem;
import blindlap.plan.Plan;
import blindlap.plan.Schedule;
import blindlap.plan.Setting;
import blindlap.seal.HelperRecord;
import blindlap.seal.HelperSchedule;
import blindlap.seal.Sealing;
import blindlap.session.AloneCommands;
import blindlap.session.DayCommands;
import blindlap.session.Fact;
import blindlap.session.HelperEntry;
import blindlap.session.Notebook;
import blindlap.session.Outcome;
import blindlap.session.SessionState;
import blindlap.session.day.SessionId;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedSet;
import java.util.function.Function;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * The helper's day with the key open: what to fit before each stint, and the one encrypted entry
 * that every stint gets. Made by {@link HelperDays#open}; it prints nothing of what it holds.
 */
public final class HelperDay {
  private final SessionId id;
  private final Plan plan;
  private final Keys.Result.Open open;
  private final Sessions sessions;
  private final HelperRecords records;
  private final Clock clock;
  private final Instant committedAt;
  private String kept = "";

  /** What was really on, as last followed; whoever works and whoever keeps are two threads. */
  private volatile OnTheBike onTheBike = OnTheBike.UNKNOWN;

  /** Stints of void trials, as last followed. */
  private volatile SortedSet<Integer> passedOver = Collections.emptySortedSet();

  HelperDay(
      SessionState state,
      Keys.Result.Open open,
      Sessions sessions,
      Sealing sealing,
      Notebook notebook,
      Clock clock) {
    this.id = state.id();
    this.plan = state.plan();
    this.committedAt = state.committedAt();
    this.open = open;
    this.sessions = sessions;
    this.records = new HelperRecords(state, open.lock(), sealing, notebook);
    this.clock = clock;
    follow(state);
  }

  /** Takes note of what was fitted by the records of a session, corrections and draft included. */
  void follow(SessionState latest) {
    OnTheBike recorded = OnTheBike.of(records.of(latest));
    onTheBike = records.draft().map(recorded::with).orElse(recorded);
    passedOver = PassedOver.of(latest);
  }

  /** The helper's records and draft. */
  HelperRecords records() {
    return records;
  }

  /** The session as it stands on disk. */
  Optional<SessionState> state() {
    return sessions.state(id);
  }

  /** Lets a decision on the latest state become entries, and follows them. */
  Sessions.Result act(Function<SessionState, Outcome> decision) {
    return act(decision, clock::instant);
  }

  private Sessions.Result act(Function<SessionState, Outcome> decision, Supplier<Instant> at) {
    Sessions.Result result = sessions.act(id, decision, at);
    if (result instanceof Sessions.Result.Done done) {
      follow(done.state());
    }
    return result;
  }

  /**
   * The work before a stint.
   *
   * @param stint from 1; 0 = before the warm-up laps
   * @param code the code on everything the rider sees; 0 for the warm-up
   * @param setup the setup to fit, 0 = A
   * @param comesOff the setup that is really on before; null at first
   * @param real true if what is fitted changes
   * @param settings what is dialled anew and measured
   */
  public record Work(
      int stint,
      int code,
      int setup,
      @Nullable Integer comesOff,
      boolean real,
      List<Setting> settings) {
    public Work {
      settings = List.copyOf(settings);
    }

    /** Says which stint only. */
    @Override
    public String toString() {
      return "Work[stint " + stint + "]";
    }
  }

  /** Which session. */
  public SessionId id() {
    return id;
  }

  /** The committed plan. */
  public Plan plan() {
    return plan;
  }

  /** The first stint of the day: 0 if there are warm-up laps, else 1. */
  public int firstStint() {
    return AloneCommands.firstStint(plan);
  }

  /** The work before a stint, the warm-up included. */
  public Work work(int stint) {
    return work(stint, onTheBike);
  }

  /** The same while an entry is in hand, of this stint or an earlier one. */
  public Work work(int stint, HelperEntry inHand) {
    return work(stint, onTheBike.with(inHand));
  }

  private Work work(int stint, OnTheBike on) {
    HelperSchedule schedule = open.schedule();
    if (stint == 0) {
      return new Work(0, 0, schedule.warmUp(), null, true, settings(0, schedule.warmUp()));
    }
    HelperSchedule.Fit fit = schedule.fit(stint);
    // Real or dummy hangs on what is on the bike, which may be other than was to be there.
    int last = handledBefore(stint);
    Integer before =
        stint > firstStint()
            ? on.on(last).orElseGet(() -> Integer.valueOf(scheduledSetup(last)))
            : null;
    // The first handling of a day is a full one, whatever was on the bike before.
    boolean real = before == null || before != fit.fitted();
    return new Work(stint, fit.code(), fit.fitted(), before, real, settings(stint, fit.fitted()));
  }

  /** The stint whose setup is on the bike before another one: not one that was passed over. */
  private int handledBefore(int stint) {
    int before = stint - 1;
    while (before > firstStint() && passedOver.contains(before)) {
      before--;
    }
    return before;
  }

  /** True if what was begun for a stint before this one is passed over: its trial is void. */
  public boolean afterPassedOver(int stint) {
    return passedOver.contains(stint - 1);
  }

  /** The setups that the drawn order names, a stint each: what a look compares. */
  int[] named() {
    return open.schedule().fits().stream().mapToInt(HelperSchedule.Fit::named).toArray();
  }

  private int scheduledSetup(int stint) {
    return stint == 0 ? open.schedule().warmUp() : open.schedule().fit(stint).fitted();
  }

  /** The setup that is really on in a stint; as it is to be where no record tells. */
  int on(int stint) {
    return onTheBike.on(stint).orElseGet(() -> scheduledSetup(stint));
  }

  /** What is dialled anew and measured before a stint with this setup on. */
  public List<Setting> settings(int stint, int setup) {
    return StintSettings.of(plan, stint, setup);
  }

  /**
   * The next stint without an entry of the helper; empty if all have one. What other windows wrote
   * is followed with it.
   */
  public Optional<Integer> next(SessionState state) {
    follow(state);
    int last = state.cutShort().map(Fact.DayCutShort::lastStint).orElse(plan.stints());
    for (int stint = firstStint(); stint <= last; stint++) {
      if (!state.helperRecords().containsKey(stint) && !passedOver.contains(stint)) {
        return Optional.of(stint);
      }
    }
    return Optional.empty();
  }

  /** What is unfinished of a stint's entry, kept encrypted while the helper works. */
  public Optional<HelperDraft> unfinished(int stint) {
    return records.unfinished().filter(draft -> draft.entry().stint() == stint);
  }

  /**
   * By how much every handling from a stint on takes longer than planned: once, after the first
   * overrun for which no mishap was declared, and at most a quarter of what that handling was
   * given. Later overruns add nothing: a countdown that grows to the longest so far would hide from
   * the test of waits what it is there to find.
   */
  public Duration raised(SessionState latest, int stint) {
    return records.raised(latest, stint);
  }

  /** True if an entry is not too long to be sealed. */
  public boolean fits(HelperEntry entry) {
    return fits(entry, 0);
  }

  /** The same, with so many bytes to spare. */
  public boolean fits(HelperEntry entry, int spare) {
    return HelperRecord.length(HelperEntryText.write(entry.doneAt(clock.instant()), plan)) + spare
        <= HelperRecord.ROOM;
  }

  /** True if what is unfinished has room where it is kept. */
  public boolean fits(HelperDraft draft) {
    return draft.fits(plan);
  }

  /** Keeps an unfinished entry, no step of which is ticked. */
  public void keep(HelperEntry entry) {
    keep(new HelperDraft(entry, Set.of()));
  }

  /**
   * Keeps what is unfinished, encrypted and of one length, in place of what was kept before; what
   * was corrected elsewhere meanwhile stays in it. The notebook file counts its changes: whoever
   * keeps drafts does so by the clock, never by the touch, for what there is to touch hangs on what
   * is fitted.
   */
  public void keep(HelperDraft draft) {
    kept = records.keep(draft.with(withPending(draft.entry())));
    onTheBike = onTheBike.with(draft.entry());
  }

  /** True if another window has kept a draft since this one did. */
  public boolean keptElsewhere() {
    String stands = records.stored();
    return !kept.isEmpty() && stands != null && !stands.equals(kept);
  }

  private HelperEntry withPending(HelperEntry entry) {
    return state().map(latest -> entry.withEarlier(records.pending(latest))).orElse(entry);
  }

  /**
   * What must still be done before a lap may start; empty if it may.
   *
   * @param laps ridden so far, warm-up included: after each it is asked whether the rider is fit
   */
  public List<Problem> missing(HelperEntry entry, int laps) {
    return ReadyToRide.missing(
        entry, settings(entry.stint(), entry.fitted()), laps, entry.stint() <= firstStint());
  }

  /**
   * When a stint is to be ridden by the timetable; when the plan was committed if there is none.
   */
  public Instant scheduled(int stint) {
    return Schedule.of(plan)
        .map(
            schedule ->
                stint == 0
                    ? schedule.blocks().get(0).to()
                    : schedule.stints().get(stint - 1).ride())
        .map(java.time.ZonedDateTime::toInstant)
        .orElse(committedAt);
  }

  /**
   * Writes the stint's one entry, encrypted, under its scheduled time, and hands the bike over. The
   * true time stands inside; what the rider can see of it is the same for every order.
   */
  public Sessions.Result handOver(HelperEntry entry) {
    Sessions.Result written = write(entry);
    return written instanceof Sessions.Result.Refused ? written : handOver(entry.stint());
  }

  /**
   * Writes the stint's entry only. The hand-over is an entry of its own, at the time by the clock;
   * a program that ends between the two makes up for it when the day is opened again.
   */
  public Sessions.Result write(HelperEntry handled) {
    HelperEntry entry = withPending(handled);
    int laps = sessions.state(id).map(SessionState::lapsSoFar).orElse(0);
    List<Problem> missing = missing(entry, laps);
    if (!missing.isEmpty()) {
      return new Sessions.Result.Refused(missing);
    }
    List<Problem> unfit = TypedTexts.problems(entry);
    if (!unfit.isEmpty()) {
      return new Sessions.Result.Refused(unfit);
    }
    if (!fits(entry)) {
      return new Sessions.Result.Refused(List.of(Problem.of(DeskFault.NOTE_TOO_LONG, "")));
    }
    HelperRecord record = records.sealed(entry.doneAt(clock.instant()));
    return act(
        latest -> new DayCommands(latest).stint(entry.stint(), new Fact.StintHandled(record)),
        () -> scheduled(entry.stint()));
  }

  private Sessions.Result handOver(int stint) {
    Sessions.Result handed =
        sessions.act(
            id, latest -> new DayCommands(latest).stint(stint, new Fact.BikeHandedOver(stint)));
    records.forget();
    return handed;
  }

  /**
   * Hands over the bike of every stint whose entry was written just before the program ended. What
   * was kept on paper was handed over there.
   */
  void makeUp(SessionState state) {
    state.helperRecords().keySet().stream()
        .filter(stint -> stint <= plan.stints() && !records.keptOnPaper(state, stint))
        .filter(stint -> !state.handedOver(stint))
        .forEach(this::handOver);
  }

  @Override
  public String toString() {
    return "HelperDay[" + id + "]";
  }
}
