package blindlap.desk;

import blindlap.exchange.TypedTexts;
import blindlap.fault.Problem;
import blindlap.plan.BlindLevel;
import blindlap.plan.Setting;
import blindlap.session.Fact;
import blindlap.session.HelperEntry;
import blindlap.session.Outcome;
import blindlap.session.SessionFault;
import blindlap.session.SessionState;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/**
 * What a friend prepared: a covered unit for every stint, each measured once. All records are
 * written at once, encrypted like a helper's and of one length, before the rider has anything.
 */
public final class PreparedUnits {
  private final HelperDay day;

  /**
   * @param day opened with the friend's phrase
   */
  public PreparedUnits(HelperDay day) {
    this.day = day;
  }

  /**
   * The unit of a stint.
   *
   * @param stint from 1; 0 = the warm-up
   * @param code on its cover; 0 for the warm-up
   * @param setup what is inside, 0 = A
   * @param settings what is measured of it
   */
  public record Unit(int stint, int code, int setup, List<Setting> settings) {
    public Unit {
      settings = List.copyOf(settings);
    }

    /** Says which stint only. */
    @Override
    public String toString() {
      return "Unit[stint " + stint + "]";
    }
  }

  /** The units to prepare, in the order of their stints. */
  public List<Unit> units() {
    return IntStream.rangeClosed(day.firstStint(), day.plan().stints())
        .mapToObj(day::work)
        .map(
            work ->
                new Unit(
                    work.stint(),
                    work.code(),
                    work.setup(),
                    day.settings(work.stint(), work.setup())))
        .toList();
  }

  /** An entry of a unit, to be filled in. */
  public HelperEntry untouched(Unit unit) {
    String friend = day.plan().blinding().preparation().by();
    return HelperEntry.untouched(unit.stint(), friend, unit.setup());
  }

  /** What is not measured yet, or lies outside its tolerance without a reason. */
  public List<Problem> missing(HelperEntry entry) {
    return ReadyToRide.unmeasured(entry, day.settings(entry.stint(), entry.fitted()));
  }

  /** True if an entry is not too long to be kept. */
  public boolean fits(HelperEntry entry) {
    return day.fits(entry);
  }

  /**
   * Writes the records of all units at once.
   *
   * @param entries one a unit, in the order of {@link #units}
   */
  public Sessions.Result write(List<HelperEntry> entries) {
    List<Problem> problems = new ArrayList<>();
    List<Integer> stints = units().stream().map(Unit::stint).toList();
    if (!entries.stream().map(HelperEntry::stint).toList().equals(stints)) {
      problems.add(Problem.of(DeskFault.UNITS_MISSING, "", entries.size(), stints.size()));
    }
    for (HelperEntry entry : entries) {
      problems.addAll(missing(entry));
      problems.addAll(TypedTexts.problems(entry));
      if (!day.fits(entry)) {
        problems.add(Problem.of(DeskFault.NOTE_TOO_LONG, ""));
      }
    }
    return problems.isEmpty()
        ? day.act(latest -> decide(latest, entries))
        : new Sessions.Result.Refused(problems.stream().distinct().toList());
  }

  /** Why no units can be recorded in a session now, if so; asked before anyone types a phrase. */
  public static List<Problem> refusals(SessionState state) {
    if (state.plan().blinding().level() != BlindLevel.PREPARED) {
      return List.of(Problem.of(DeskFault.NOT_PREPARED, ""));
    }
    if (!state.step().day()) {
      return List.of(Problem.of(SessionFault.RECORDING_IS_OVER, "", state.step()));
    }
    return state.helperRecords().isEmpty()
        ? List.of()
        : List.of(Problem.of(DeskFault.UNITS_WRITTEN, ""));
  }

  private Outcome decide(SessionState latest, List<HelperEntry> entries) {
    List<Problem> refusals = refusals(latest);
    if (!refusals.isEmpty()) {
      return new Outcome.Refused(refusals);
    }
    List<Fact> facts = new ArrayList<>();
    for (HelperEntry entry : entries) {
      facts.add(new Fact.StintHandled(day.records().sealed(entry)));
    }
    return new Outcome.Accepted(facts);
  }

  @Override
  public String toString() {
    return "PreparedUnits[" + day.id() + "]";
  }
}
