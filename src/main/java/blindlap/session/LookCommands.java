package blindlap.session;

import blindlap.fault.Problem;
import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.session.day.LapId;
import blindlap.session.day.LapState;
import blindlap.session.day.Step;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/** Decides whether a look may be taken, and what it uses. */
public final class LookCommands {
  private final SessionState state;
  private final Plan plan;

  public LookCommands(SessionState state) {
    this.state = state;
    this.plan = state.plan();
  }

  /**
   * The look that is meant where nobody says which: the latest whose stints are all ridden, else
   * the next one. Empty where none is declared.
   */
  public Optional<Integer> meant() {
    List<Integer> complete =
        plan.looks().stream().filter(look -> missingLap(look).isEmpty()).toList();
    return complete.isEmpty()
        ? plan.looks().stream().findFirst()
        : Optional.of(complete.get(complete.size() - 1));
  }

  /** A look that may be taken now and was not; empty if there is none. */
  public Optional<Integer> due() {
    return meant().filter(look -> problems(look).isEmpty());
  }

  /** True if the laps of the look that is meant are all ridden, and one still waits for a word. */
  public boolean waitsForALap() {
    return meant()
        .filter(look -> missingLap(look).isEmpty())
        .filter(look -> !state.looks().containsKey(look))
        .filter(look -> state.step().day())
        .filter(look -> !problems(look).isEmpty())
        .isPresent();
  }

  /** Why a look may not be taken; empty if it may. A look that was taken is not asked for here. */
  public List<Problem> problems(int stint) {
    if (state.step() == Step.ABANDONED) {
      return one(SessionFault.IS_ABANDONED);
    }
    if (plan.looks().isEmpty()) {
      return one(SessionFault.LOOKS_NONE);
    }
    if (!plan.looks().contains(stint)) {
      String declared = String.join(", ", plan.looks().stream().map(String::valueOf).toList());
      return one(SessionFault.LOOK_NOT_DECLARED, stint, declared);
    }
    if (state.looks().containsKey(stint)) {
      return one(SessionFault.LOOK_TWICE, stint);
    }
    if (!state.step().day()) {
      return one(SessionFault.LOOK_DAY_OVER, stint);
    }
    if (!state.looks().isEmpty() && state.looks().lastKey() > stint) {
      return one(SessionFault.LOOK_PAST, stint, state.looks().lastKey());
    }
    return laps(stint);
  }

  private List<Problem> laps(int stint) {
    Optional<LapId> missing = missingLap(stint);
    if (missing.isPresent()) {
      LapId lap = missing.get();
      return one(SessionFault.LOOK_LAP_MISSING, stint, number(lap), lap.stint());
    }
    List<Problem> problems = new ArrayList<>();
    for (LapId lap : scored(stint)) {
      if (open(lap)) {
        problems.add(
            Problem.of(
                SessionFault.LOOK_LAP_OPEN,
                "",
                stint,
                number(lap),
                lap.stint(),
                primary().map(Measure::name).orElse("")));
      }
    }
    return problems;
  }

  private List<Problem> one(SessionFault fault, Object... details) {
    return List.of(Problem.of(fault, "", details));
  }

  /** The first lap up to a stint's end that is not ridden, settling laps included. */
  private Optional<LapId> missingLap(int stint) {
    for (int each = 1; each <= stint; each++) {
      for (int lap = 1; lap <= plan.laps().perStint(); lap++) {
        LapId id = new LapId(each, lap);
        if (!state.day().ridden(id)) {
          return Optional.of(id);
        }
      }
    }
    return Optional.empty();
  }

  /** Neither a value nor a void nor a value that was taken out: somebody must still decide. */
  private boolean open(LapId id) {
    String measure = primary().map(Measure::name).orElse("");
    LapState lap = state.lap(id).orElse(LapState.untouched(id));
    boolean takenOut =
        state.corrections().stream()
            .anyMatch(c -> c.lap().equals(id) && c.measure().equals(measure) && c.value() == null);
    return !frozen(id.stint())
        && lap.voided().isEmpty()
        && !lap.values().containsKey(measure)
        && !takenOut;
  }

  private boolean frozen(int stint) {
    return !state.looks().isEmpty() && stint <= state.looks().lastKey();
  }

  /**
   * The values of the primary measure that a look after a stint uses: those of looks before it as
   * they were then, and of later stints as they are now, void laps left out.
   */
  public SortedMap<LapId, BigDecimal> values(int stint) {
    SortedMap<LapId, BigDecimal> values = new TreeMap<>();
    if (!state.looks().isEmpty()) {
      LookTaken before = state.looks().get(state.looks().lastKey());
      values.putAll(before == null ? new TreeMap<>() : before.values());
    }
    String measure = primary().map(Measure::name).orElse("");
    for (LapId id : scored(stint)) {
      LapState lap = state.lap(id).orElse(LapState.untouched(id));
      BigDecimal value = lap.values().get(measure);
      if (!frozen(id.stint()) && value != null && lap.voided().isEmpty()) {
        values.put(id, value);
      }
    }
    return values;
  }

  private Optional<Measure> primary() {
    return plan.primary();
  }

  private List<LapId> scored(int stint) {
    List<LapId> laps = new ArrayList<>();
    for (int each = 1; each <= stint; each++) {
      for (int lap = plan.laps().settling() + 1; lap <= plan.laps().perStint(); lap++) {
        laps.add(new LapId(each, lap));
      }
    }
    return laps;
  }

  private int number(LapId lap) {
    return lap.ofDay(plan.laps().perStint());
  }

  /** The look was taken. */
  public Outcome taken(LookTaken look) {
    List<Problem> problems = problems(look.stint());
    return problems.isEmpty() ? Outcome.accepted(look) : new Outcome.Refused(problems);
  }
}
