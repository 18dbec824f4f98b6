package blindlap.desk;

import blindlap.exchange.HelperEntryText;
import blindlap.exchange.TypedTexts;
import blindlap.fault.Problem;
import blindlap.fault.TypedNumber;
import blindlap.plan.Plan;
import blindlap.plan.Schedule;
import blindlap.plan.Setting;
import blindlap.seal.HelperRecord;
import blindlap.seal.HelperSchedule;
import blindlap.seal.Sealing;
import blindlap.session.DayCommands;
import blindlap.session.Fact;
import blindlap.session.HelperEntry;
import blindlap.session.Notebook;
import blindlap.session.SafetyCheck;
import blindlap.session.SessionState;
import blindlap.session.day.SessionId;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * The helper's day with the key open: what to fit before each stint, and the one encrypted entry
 * that every stint gets. Made by {@link HelperDays#open}; it prints nothing of what it holds.
 */
public final class HelperDay {
  private static final String DRAFT = "helper/";

  private final SessionId id;
  private final Plan plan;
  private final Keys.Result.Open open;
  private final Sessions sessions;
  private final Sealing sealing;
  private final Notebook notebook;
  private final Clock clock;
  private final Instant committedAt;
  private String kept = "";

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
    this.sealing = sealing;
    this.notebook = notebook;
    this.clock = clock;
  }

  /**
   * The work before a stint.
   *
   * @param stint from 1; 0 = before the warm-up laps
   * @param code the code on everything the rider sees; 0 for the warm-up
   * @param setup the setup to fit, 0 = A
   * @param comesOff the setup that is on before; null at first
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
    return plan.laps().warmUp() > 0 ? 0 : 1;
  }

  /** The work before a stint, the warm-up included. */
  public Work work(int stint) {
    HelperSchedule schedule = open.schedule();
    if (stint == 0) {
      return new Work(0, 0, schedule.warmUp(), null, true, settings(0, schedule.warmUp()));
    }
    HelperSchedule.Fit fit = schedule.fit(stint);
    Integer before =
        stint > 1
            ? Integer.valueOf(schedule.fit(stint - 1).fitted())
            : firstStint() == 0 ? Integer.valueOf(schedule.warmUp()) : null;
    // The first handling of a day is a full one, whatever was on the bike before.
    boolean real = before == null || before != fit.fitted();
    return new Work(stint, fit.code(), fit.fitted(), before, real, settings(stint, fit.fitted()));
  }

  /** What is dialled anew and measured before a stint with this setup on. */
  public List<Setting> settings(int stint, int setup) {
    boolean ends = stint == firstStint() || stint == plan.stints();
    List<Setting> all = new ArrayList<>(plan.setups().get(setup).settings());
    all.addAll(plan.bike());
    return all.stream()
        .filter(each -> ends || each.check() != Setting.Check.START_AND_END)
        .toList();
  }

  /** The next stint without an entry of the helper; empty if all have one. */
  public Optional<Integer> next(SessionState state) {
    int last = state.cutShort().map(Fact.DayCutShort::lastStint).orElse(plan.stints());
    for (int stint = firstStint(); stint <= last; stint++) {
      if (!state.helperRecords().containsKey(stint)) {
        return Optional.of(stint);
      }
    }
    return Optional.empty();
  }

  /** What is unfinished of a stint's entry, kept encrypted while the helper works. */
  public Optional<HelperDraft> unfinished(int stint) {
    String kept = notebook.drafts().get(DRAFT + id.text());
    if (kept == null) {
      return Optional.empty();
    }
    String[] parts = kept.split(" ", -1);
    if (parts.length != 3 || !parts[0].equals(String.valueOf(stint))) {
      return Optional.empty();
    }
    return open.lock()
        .decrypt(id.text(), new HelperRecord(stint, parts[1], parts[2]))
        .flatMap(text -> HelperDraft.read(text, plan));
  }

  /**
   * By how much every handling from a stint on takes longer than planned: once, after the first
   * overrun for which no mishap was declared, and at most a quarter of what that handling was
   * given. Later overruns add nothing: a countdown that grows to the longest so far would hide from
   * the test of waits what it is there to find.
   */
  public Duration raised(SessionState latest, int stint) {
    for (HelperRecord record : latest.helperRecords().headMap(stint).values()) {
      HelperEntry entry =
          open.lock()
              .decrypt(id.text(), record)
              .flatMap(text -> HelperEntryText.read(text, plan))
              .orElse(null);
      HelperEntry.Timing timing = entry == null ? null : entry.timing();
      if (timing == null) {
        continue;
      }
      Duration given = timing.given();
      if (given != null && !timing.declared() && !timing.overrun().isZero()) {
        Duration most = given.dividedBy(4);
        return timing.overrun().compareTo(most) > 0 ? most : timing.overrun();
      }
    }
    return Duration.ZERO;
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

  /** Keeps an unfinished entry, encrypted and of one length, in place of the one before. */
  public void keep(HelperEntry entry) {
    keep(new HelperDraft(entry, Set.of()));
  }

  /**
   * Keeps what is unfinished, encrypted and of one length, in place of what was kept before. The
   * notebook file counts its changes: whoever keeps drafts does so by the clock, never by the
   * touch, for what there is to touch hangs on what is fitted.
   */
  public void keep(HelperDraft draft) {
    int stint = draft.entry().stint();
    HelperRecord record = sealing.record(open.lock(), id.text(), stint, draft.text(plan));
    kept = stint + " " + record.iv() + " " + record.ciphertext();
    notebook.putDraft(DRAFT + id.text(), kept);
  }

  /** True if another window has kept a draft since this one did. */
  public boolean keptElsewhere() {
    String stands = notebook.drafts().get(DRAFT + id.text());
    return !kept.isEmpty() && stands != null && !stands.equals(kept);
  }

  /**
   * What must still be done before a lap may start; empty if it may.
   *
   * @param laps ridden so far, warm-up included: after each it is asked whether the rider is fit
   */
  public List<Problem> missing(HelperEntry entry, int laps) {
    List<Problem> missing = new ArrayList<>();
    int checks = SafetyCheck.values().length - entry.confirmed().size();
    if (checks > 0) {
      missing.add(Problem.of(DeskFault.CHECKS_OPEN, "", checks));
    }
    List<Setting> settings = settings(entry.stint(), entry.fitted());
    List<Setting> unread =
        settings.stream()
            .filter(s -> !Tolerance.readable(s, entry.measured().getOrDefault(s.name(), "")))
            .toList();
    missing.addAll(unread(unread, entry.measured()));
    for (HelperEntry.Outside outside : entry.outside()) {
      if (outside.reason().isBlank()) {
        missing.add(Problem.of(DeskFault.OUTSIDE_TOLERANCE, "", outside.setting()));
      }
    }
    Boolean fit = entry.fit().get(laps);
    if (entry.stint() > firstStint() && fit == null) {
      missing.add(Problem.of(DeskFault.FIT_OPEN, ""));
    } else if (Boolean.FALSE.equals(fit)) {
      missing.add(Problem.of(DeskFault.RIDER_NOT_FIT, ""));
    }
    return missing;
  }

  private static List<Problem> unread(List<Setting> settings, Map<String, String> measured) {
    List<Problem> problems = new ArrayList<>();
    List<String> open = new ArrayList<>();
    for (Setting setting : settings) {
      String typed = measured.getOrDefault(setting.name(), "");
      if (TypedNumber.twoSigns(typed)) {
        problems.add(Problem.of(DeskFault.TWO_SIGNS, "", setting.name(), typed));
      } else {
        open.add(setting.name());
      }
    }
    if (!open.isEmpty()) {
      problems.add(0, Problem.of(DeskFault.MEASURES_OPEN, "", String.join(", ", open)));
    }
    return problems;
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
  public Sessions.Result write(HelperEntry entry) {
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
    HelperRecord record =
        sealing.record(
            open.lock(),
            id.text(),
            entry.stint(),
            HelperEntryText.write(entry.doneAt(clock.instant()), plan));
    return sessions.act(
        id,
        latest -> new DayCommands(latest).stint(entry.stint(), new Fact.StintHandled(record)),
        () -> scheduled(entry.stint()));
  }

  private Sessions.Result handOver(int stint) {
    Sessions.Result handed =
        sessions.act(
            id, latest -> new DayCommands(latest).stint(stint, new Fact.BikeHandedOver(stint)));
    notebook.deleteDraft(DRAFT + id.text());
    return handed;
  }

  /** Hands over the bike of every stint whose entry was written just before the program ended. */
  void makeUp(SessionState state) {
    state.helperRecords().keySet().stream()
        .filter(stint -> !state.handedOver(stint))
        .forEach(this::handOver);
  }

  @Override
  public String toString() {
    return "HelperDay[" + id + "]";
  }
}
