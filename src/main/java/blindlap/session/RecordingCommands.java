package blindlap.session;

import blindlap.fault.Problem;
import blindlap.plan.Plan;
import blindlap.plan.Sector;
import blindlap.plan.TrailVersion;
import blindlap.session.day.LapId;
import blindlap.session.day.Step;
import blindlap.session.day.VoidEvent;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;

/** Decides when recordings may be brought in, and on voids of single sectors. */
public final class RecordingCommands {
  private final SessionState state;
  private final Plan plan;

  public RecordingCommands(SessionState state) {
    this.state = state;
    this.plan = state.plan();
  }

  /** Why no recording may be brought in now; empty if one may. */
  public List<Problem> problems() {
    List<Problem> over = ReviewOver.problems(state);
    if (!over.isEmpty()) {
      return over;
    }
    // Times are shown once every score is given, so not while laps are still to come.
    boolean ridden = !state.step().day() || state.nextLap().isEmpty();
    return !ridden || state.lapsRidden() == 0
        ? List.of(Problem.of(SessionFault.RECORDING_TOO_EARLY, ""))
        : List.of();
  }

  /**
   * Why no recording may be brought in by the gates of a trail.
   *
   * @param file SHA-256 of the recording
   * @param trail SHA-256 of the trail's text
   */
  public List<Problem> problems(String file, String trail) {
    TrailVersion planned = plan.trailVersion();
    if (planned != null && !planned.sha256().equals(trail)) {
      return List.of(
          Problem.of(SessionFault.RECORDING_TRAIL_PLANNED, "", plan.trail(), planned.number()));
    }
    // A file that is settled anew takes back all that it said before.
    return state.recorded().files().stream()
        .filter(other -> !other.sha256().equals(file) && !other.trail().equals(trail))
        .map(other -> Problem.of(SessionFault.RECORDING_OTHER_TRAIL, "", other.file()))
        .limit(1)
        .toList();
  }

  /** A recording that is settled. */
  public Outcome bringIn(RecordingBroughtIn fact) {
    List<Problem> problems = new ArrayList<>(problems());
    if (problems.isEmpty()) {
      problems.addAll(problems(fact.sha256(), fact.trail()));
    }
    if (problems.isEmpty() && fact.laps().isEmpty()) {
      problems.add(Problem.of(SessionFault.RECORDING_EMPTY, ""));
    }
    for (RecordedLap lap : fact.laps()) {
      if (problems.isEmpty() && !state.day().ridden(lap.lap())) {
        problems.add(Problem.of(SessionFault.LAP_NOT_RIDDEN, "", number(lap.lap())));
      }
    }
    boolean again =
        state.recorded().files().stream()
            .anyMatch(other -> other.sha256().equals(fact.sha256()) && says(other, fact));
    if (problems.isEmpty() && again) {
      problems.add(Problem.of(SessionFault.RECORDING_AGAIN, "", fact.file()));
    }
    return problems.isEmpty() ? Outcome.accepted(fact) : new Outcome.Refused(problems);
  }

  private static boolean says(RecordingBroughtIn before, RecordingBroughtIn now) {
    return before.trail().equals(now.trail()) && times(before).equals(times(now));
  }

  /** Without positions, which may be kept or left out, and change no number. */
  private static List<RecordedLap> times(RecordingBroughtIn fact) {
    return fact.laps().stream()
        .map(lap -> new RecordedLap(lap.lap(), lap.passes(), lap.pieces(), null, lap.settled()))
        .toList();
  }

  /**
   * Declares one sector of a lap void.
   *
   * @param reason an event of {@link VoidEvent}, in words
   * @param words what happened; may be empty
   */
  public Outcome voidSector(LapId lap, Sector sector, String reason, String words) {
    List<Problem> problems = new ArrayList<>(ReviewOver.problems(state));
    problems.addAll(place(lap, sector));
    if (VoidEvent.parse(reason).isEmpty()) {
      problems.add(Problem.of(SessionFault.NOT_AN_EVENT, "", reason, events()));
    }
    if (problems.isEmpty() && isVoid(lap, sector)) {
      problems.add(
          Problem.of(
              SessionFault.SECTOR_ALREADY_VOID, "", number(lap), sector.from(), sector.to()));
    }
    if (!problems.isEmpty()) {
      return new Outcome.Refused(problems);
    }
    VoidEvent event = VoidEvent.parse(reason).orElseThrow();
    return Outcome.accepted(new SectorVoided(lap, sector, event, words, valuesSeen(lap)));
  }

  /** Takes the void of a sector back. */
  public Outcome withdraw(LapId lap, Sector sector, String reason) {
    List<Problem> problems = new ArrayList<>(ReviewOver.problems(state));
    problems.addAll(place(lap, sector));
    if (problems.isEmpty() && !isVoid(lap, sector)) {
      problems.add(
          Problem.of(SessionFault.SECTOR_NOT_VOID, "", number(lap), sector.from(), sector.to()));
    }
    if (reason.isBlank()) {
      problems.add(Problem.of(SessionFault.REASON_MISSING, "", ReasonFor.VOID_WITHDRAWN));
    }
    return problems.isEmpty()
        ? Outcome.accepted(new SectorVoidWithdrawn(lap, sector, reason))
        : new Outcome.Refused(problems);
  }

  private List<Problem> place(LapId lap, Sector sector) {
    TrailVersion trail = plan.trailVersion();
    if (trail == null) {
      return List.of(Problem.of(SessionFault.SECTORS_NONE, ""));
    }
    if (!trail.sectors().contains(sector)) {
      String sectors =
          trail.sectors().stream()
              .map(each -> each.from() + " to " + each.to())
              .collect(Collectors.joining(", "));
      return List.of(
          Problem.of(SessionFault.NO_SUCH_SECTOR, "", sector.from(), sector.to(), sectors));
    }
    if (PlanPlaces.lap(plan, lap).isPresent()) {
      return List.of(Problem.of(SessionFault.NO_SUCH_LAP, "", number(lap), plan.lapsOfDay()));
    }
    return state.day().ridden(lap)
        ? List.of()
        : List.of(Problem.of(SessionFault.LAP_NOT_RIDDEN, "", number(lap)));
  }

  private boolean isVoid(LapId lap, Sector sector) {
    Integer at = java.util.Objects.requireNonNull(plan.trailVersion()).sectors().indexOf(sector);
    return state
        .recorded()
        .sectorVoids()
        .getOrDefault(lap, new java.util.TreeMap<>())
        .containsKey(at);
  }

  /** The times of a lap are seen once they are brought in. */
  private boolean valuesSeen(LapId lap) {
    return state.step() == Step.DAY_CLOSED || state.recorded().laps().containsKey(lap);
  }

  private int number(LapId lap) {
    return lap.ofDay(plan.laps().perStint());
  }

  private static String events() {
    return Arrays.stream(VoidEvent.values()).map(VoidEvent::text).collect(Collectors.joining(", "));
  }
}
