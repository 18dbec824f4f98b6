package blindlap.desk;

import blindlap.exchange.MountedText;
import blindlap.exchange.TypedTexts;
import blindlap.fault.Problem;
import blindlap.plan.BlindLevel;
import blindlap.plan.Plan;
import blindlap.plan.Setting;
import blindlap.session.AloneCommands;
import blindlap.session.Fact;
import blindlap.session.HelperEntry;
import blindlap.session.MountedUnit;
import blindlap.session.Outcome;
import blindlap.session.SessionFault;
import blindlap.session.SessionState;
import blindlap.session.StintMounted;
import blindlap.session.day.SessionId;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * The day of a rider who swaps alone: what to mount next is shown, mounted, measured and checked,
 * and ridden, stint after stint. It holds nothing of what was not shown yet.
 */
public final class AloneDay {
  private final SessionId id;
  private final Plan plan;
  private final boolean prepared;
  private final Sessions sessions;
  private final Covers covers;
  private final Clock clock;
  private final AloneCorrections corrections;

  AloneDay(SessionState state, Sessions sessions, Covers covers, Clock clock) {
    this.id = state.id();
    this.plan = state.plan();
    this.prepared = state.plan().blinding().level() == BlindLevel.PREPARED;
    this.sessions = sessions;
    this.covers = covers;
    this.clock = clock;
    this.corrections = new AloneCorrections(plan, clock);
  }

  /**
   * What is to be mounted for a stint.
   *
   * @param stint from 1; 0 = before the warm-up laps
   * @param code the code of the stint, which is on a prepared unit; 0 for the warm-up
   * @param setup 0 = A, at masked labels the label, 0 = X; null of a prepared unit
   * @param comesOff what is on before, as was said; null at first, and of prepared units
   * @param real false where what is on stays
   * @param settings what is dialled anew and measured: all, or where the rider does not know what
   *     is on those that all setups have alike
   */
  public record Work(
      int stint,
      int code,
      @Nullable Integer setup,
      @Nullable Integer comesOff,
      boolean real,
      List<Setting> settings) {
    public Work {
      settings = List.copyOf(settings);
    }
  }

  /** What comes next on this day. */
  public sealed interface Next {
    /** The setup of a stint may be shown. */
    record Show(int stint) implements Next {}

    /** A stint is to be mounted, measured and checked. */
    record Mount(Work work) implements Next {}

    /** A stint is mounted and not all of its scored laps are ridden. */
    record Ride(int stint) implements Next {}

    /** Every stint of the day is mounted and ridden, or the day is over. */
    record Over() implements Next {}
  }

  /** What became of asking for the next setup. */
  public sealed interface Shown {
    /** It is shown, and that it was is on disk. */
    record Setup(Work work, SessionState state) implements Shown {}

    /** It stays covered. */
    record Refused(List<Problem> problems) implements Shown {}
  }

  /** Which session. */
  public SessionId id() {
    return id;
  }

  /** The committed plan. */
  public Plan plan() {
    return plan;
  }

  /** True if a friend prepared units, of which the rider sees codes only. */
  public boolean prepared() {
    return prepared;
  }

  /** The first stint of the day: 0 if there are warm-up laps, else 1. */
  public int firstStint() {
    return AloneCommands.firstStint(plan);
  }

  /** What comes next. */
  public Next next(SessionState state) {
    AloneCommands commands = new AloneCommands(state);
    Optional<Integer> open = commands.nextToMount();
    if (!state.step().day()) {
      return new Next.Over();
    }
    int before = open.orElse(state.day().lastStint() + 1) - 1;
    if (before >= firstStint() && !commands.finished(before)) {
      return new Next.Ride(before);
    }
    if (open.isEmpty()) {
      return new Next.Over();
    }
    return prepared || state.shown().containsKey(open.get())
        ? new Next.Mount(work(state, open.get()))
        : new Next.Show(open.get());
  }

  /**
   * The work before a stint that was shown, or whose unit was prepared.
   *
   * @throws IllegalArgumentException if it was not shown yet
   */
  public Work work(SessionState state, int stint) {
    int code = stint == 0 ? 0 : state.code(stint);
    if (prepared) {
      return new Work(stint, code, null, null, true, StintSettings.alike(plan, stint));
    }
    Integer setup = state.shown().get(stint);
    if (setup == null) {
      throw new IllegalArgumentException("stint " + stint + " was not shown yet");
    }
    Integer before = stint > firstStint() ? on(state, stint - 1).orElse(null) : null;
    boolean real = before == null || !before.equals(setup);
    return new Work(stint, code, setup, before, real, settings(stint, setup));
  }

  /** What was on in a stint, as it was said; empty where it was not, and of prepared units. */
  public Optional<Integer> on(SessionState state, int stint) {
    return corrections.on(state, stint);
  }

  /**
   * What is dialled anew and measured before a stint.
   *
   * @param setup what is on; not asked for where the rider does not know what it is
   */
  public List<Setting> settings(int stint, int setup) {
    return prepared || plan.blinding().level() == BlindLevel.MASKED
        ? StintSettings.alike(plan, stint)
        : StintSettings.of(plan, stint, setup);
  }

  /**
   * Shows what to mount next. Asked again before it is mounted it answers the same and writes
   * nothing.
   */
  public Shown show() {
    Sessions.Result result = sessions.act(id, this::shown);
    if (result instanceof Sessions.Result.Refused refused) {
      return new Shown.Refused(refused.problems());
    }
    SessionState state = ((Sessions.Result.Done) result).state();
    return new Shown.Setup(
        work(state, new AloneCommands(state).nextToMount().orElseThrow()), state);
  }

  private Outcome shown(SessionState latest) {
    AloneCommands commands = new AloneCommands(latest);
    Optional<Integer> waiting = commands.nextToMount().filter(latest.shown()::containsKey);
    if (latest.step().day() && waiting.isPresent()) {
      return new Outcome.Accepted(List.of());
    }
    List<Problem> problems = commands.mayShow();
    if (!problems.isEmpty()) {
      return new Outcome.Refused(problems);
    }
    int stint = commands.nextToShow().orElseThrow();
    Covers.Opened<Integer> opened = covers.setup(latest, stint);
    return opened.problems().isEmpty()
        ? commands.show(stint, opened.orElseThrow())
        : new Outcome.Refused(opened.problems());
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

  /** What was typed of a stint that was kept on paper and cannot be read; else empty. */
  public List<Problem> unreadOnPaper(HelperEntry entry) {
    return Tolerance.notNumbers(settings(entry.stint(), entry.fitted()), entry.measured());
  }

  /** True if an entry is not too long to be kept. */
  public boolean fits(HelperEntry entry) {
    return corrections.fits(entry);
  }

  /**
   * Records a stint that was shown as mounted; from then on its laps may start.
   *
   * @param entry what was really fitted, also where it is another setup than was shown; every
   *     setting measured, the safety list confirmed
   */
  public Sessions.Result mount(HelperEntry entry) {
    return mount(entry, MountedUnit.asPlanned(entry.stint()));
  }

  /**
   * The same with what was seen of a prepared unit. A cover that did not hold is recorded as a
   * blind that may have broken.
   */
  public Sessions.Result mount(HelperEntry entry, MountedUnit unit) {
    int laps = sessions.state(id).map(SessionState::lapsSoFar).orElse(0);
    List<Problem> problems = new ArrayList<>(missing(entry, laps));
    problems.addAll(unfit(entry, unit));
    return problems.isEmpty()
        ? sessions.act(
            id,
            latest -> with(unit, new AloneCommands(latest).mount(entry.stint(), text(entry, unit))))
        : new Sessions.Result.Refused(problems);
  }

  /**
   * Shows what the next stint was ridden on that was kept on paper, whatever is recorded of the one
   * before; that it was shown is on disk then. Of a prepared unit there is nothing to show.
   */
  public Shown showOnPaper() {
    Sessions.Result result =
        sessions.act(
            id,
            latest -> {
              AloneCommands commands = new AloneCommands(latest);
              int next = commands.nextToMount().orElse(-1);
              if (next < 0 || prepared || latest.shown().containsKey(next)) {
                return next < 0
                    ? Outcome.refused(SessionFault.SHOWN_ALL, "")
                    : new Outcome.Accepted(List.of());
              }
              Covers.Opened<Integer> opened = covers.setup(latest, next);
              return opened.problems().isEmpty()
                  ? commands.showOnPaper(next, opened.orElseThrow())
                  : new Outcome.Refused(opened.problems());
            });
    if (result instanceof Sessions.Result.Refused refused) {
      return new Shown.Refused(refused.problems());
    }
    SessionState state = ((Sessions.Result.Done) result).state();
    return new Shown.Setup(
        work(state, new AloneCommands(state).nextToMount().orElseThrow()), state);
  }

  /**
   * Records a stint that was kept on paper and shown: what was not measured or ticked there stays
   * open.
   *
   * @param entry with {@link HelperEntry#paper}
   */
  public Sessions.Result mountOnPaper(HelperEntry entry, MountedUnit unit) {
    List<Problem> problems = unfit(entry, unit);
    problems.addAll(unreadOnPaper(entry));
    return problems.isEmpty()
        ? sessions.act(
            id,
            latest ->
                with(
                    unit, new AloneCommands(latest).mountOnPaper(entry.stint(), text(entry, unit))))
        : new Sessions.Result.Refused(problems);
  }

  private Outcome with(MountedUnit unit, Outcome outcome) {
    if (!prepared || unit.whole() || !(outcome instanceof Outcome.Accepted accepted)) {
      return outcome;
    }
    List<Fact> facts = new ArrayList<>(accepted.facts());
    int stint = ((StintMounted) facts.get(0)).stint();
    if (stint > 0) {
      facts.add(new Fact.BlindBroken(stint, unit.words().strip()));
    }
    return new Outcome.Accepted(facts);
  }

  private List<Problem> unfit(HelperEntry entry, MountedUnit unit) {
    List<Problem> problems = new ArrayList<>(TypedTexts.problems(entry));
    if (prepared && !unit.whole() && unit.words().isBlank()) {
      problems.add(Problem.of(DeskFault.COVER_WORDS, ""));
    }
    if (unit.unitOf() < 0 || unit.unitOf() > plan.stints()) {
      problems.add(Problem.of(DeskFault.FIT_NOT_A_STINT, "", unit.unitOf()));
    }
    if (problems.isEmpty() && !fits(entry)) {
      problems.add(Problem.of(DeskFault.NOTE_TOO_LONG, ""));
    }
    return problems;
  }

  private String text(HelperEntry entry, MountedUnit unit) {
    HelperEntry done = entry.paper() == null ? entry.doneAt(clock.instant()) : entry;
    return prepared ? MountedText.write(done, unit, plan) : MountedText.write(done, plan);
  }

  /** Why it cannot be said that something else was on; asked before anyone is asked what it was. */
  public List<Problem> correcting(SessionState state) {
    return corrections.refusals(state);
  }

  /** The same of one stint. */
  public List<Problem> correcting(SessionState state, int stint) {
    return corrections.refusals(state, stint);
  }

  /** The same of one setup in it. */
  public List<Problem> correcting(SessionState state, int stint, int setup) {
    return corrections.refusals(state, stint, setup);
  }

  /**
   * Another setup than recorded was on in a mounted stint, noticed later; possible until the review
   * is closed.
   *
   * @param stint from 1; 0 = the warm-up
   * @param setup what was really on, 0 = A; at masked labels the label
   * @param words further words; may be empty
   */
  public Sessions.Result correct(int stint, int setup, String words) {
    HelperEntry.Correction said =
        new HelperEntry.Correction(stint, setup, words.strip(), clock.instant());
    return sessions.act(id, latest -> corrections.decide(latest, said));
  }

  @Override
  public String toString() {
    return "AloneDay[" + id + "]";
  }
}
