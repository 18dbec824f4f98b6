package blindlap.session;

import blindlap.fault.Problem;
import blindlap.plan.BlindLevel;
import blindlap.plan.Plan;
import blindlap.session.day.LapId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Decides what a rider who swaps alone may do: see what to mount next, and mount it. An order is
 * shown stint by stint, each once what was shown before is mounted and ridden.
 */
public final class AloneCommands {
  private final SessionState state;
  private final Plan plan;

  public AloneCommands(SessionState state) {
    this.state = state;
    this.plan = state.plan();
  }

  /** True if the rider swaps in this session: the order is covered, or units were prepared. */
  public static boolean alone(SessionState state) {
    return state.covered()
        || state.hasKey() && state.plan().blinding().level() == BlindLevel.PREPARED;
  }

  /** The first stint of the day: 0 if there are warm-up laps, else 1. */
  public static int firstStint(Plan plan) {
    return plan.laps().warmUp() > 0 ? 0 : 1;
  }

  /** The next stint of which nothing was shown; empty if all of the day were. */
  public Optional<Integer> nextToShow() {
    return IntStream.rangeClosed(firstStint(plan), state.day().lastStint())
        .filter(stint -> !state.shown().containsKey(stint))
        .boxed()
        .findFirst();
  }

  /** The next stint that is not mounted; empty if all of the day are. */
  public Optional<Integer> nextToMount() {
    return IntStream.rangeClosed(firstStint(plan), state.day().lastStint())
        .filter(stint -> !state.mounted().containsKey(stint))
        .boxed()
        .findFirst();
  }

  /** True once the scored laps of a mounted stint are ridden. */
  public boolean finished(int stint) {
    return unfinished(stint).isEmpty();
  }

  /** Why the next setup is not shown yet; nothing if it may be. */
  public List<Problem> mayShow() {
    List<Problem> problems = new ArrayList<>(mayRecord());
    if (problems.isEmpty() && !state.covered()) {
      problems.add(Problem.of(SessionFault.SHOW_PREPARED, ""));
    }
    Optional<Integer> next = nextToShow();
    if (problems.isEmpty() && next.isEmpty()) {
      problems.add(Problem.of(SessionFault.SHOWN_ALL, ""));
    }
    if (problems.isEmpty() && next.get() > firstStint(plan)) {
      unfinished(next.get() - 1).ifPresent(problems::add);
    }
    return problems;
  }

  /** What is left of a stint; its settling laps, and warm-up laps, are never analysed. */
  private Optional<Problem> unfinished(int stint) {
    if (!state.mounted().containsKey(stint)) {
      return Optional.of(Problem.of(SessionFault.SHOW_NOT_MOUNTED, "", stint));
    }
    if (stint == 0) {
      return Optional.empty();
    }
    return IntStream.rangeClosed(plan.laps().settling() + 1, plan.laps().perStint())
        .mapToObj(lap -> new LapId(stint, lap))
        .filter(lap -> !state.day().ridden(lap))
        .map(lap -> Problem.of(SessionFault.SHOW_NOT_RIDDEN, "", stint, number(lap)))
        .findFirst();
  }

  private int number(LapId lap) {
    return lap.ofDay(plan.laps().perStint());
  }

  /**
   * The next setup is shown.
   *
   * @param stint as {@link #nextToShow} has it
   * @param setup as the cover has it
   */
  public Outcome show(int stint, int setup) {
    List<Problem> problems = mayShow();
    return problems.isEmpty()
        ? Outcome.accepted(new SetupShown(stint, setup))
        : new Outcome.Refused(problems);
  }

  /** The same of a stint that was kept on paper, whatever is recorded of the one before. */
  public Outcome showOnPaper(int stint, int setup) {
    List<Problem> problems = new ArrayList<>(mayMount(stint));
    if (problems.isEmpty() && !state.covered()) {
      problems.add(Problem.of(SessionFault.SHOW_PREPARED, ""));
    }
    return problems.isEmpty()
        ? Outcome.accepted(new SetupShown(stint, setup))
        : new Outcome.Refused(problems);
  }

  /**
   * A stint is mounted and the bike goes to the rider, who is the same person.
   *
   * @param text what was fitted, measured and checked
   */
  public Outcome mount(int stint, String text) {
    List<Problem> problems = mayMount(stint);
    if (problems.isEmpty() && stint > firstStint(plan)) {
      problems = unfinished(stint - 1).stream().toList();
    }
    return problems.isEmpty() ? mountShown(stint, text) : new Outcome.Refused(problems);
  }

  /** The same of a stint that was kept on paper, whatever is recorded of the one before. */
  public Outcome mountOnPaper(int stint, String text) {
    List<Problem> problems = mayMount(stint);
    return problems.isEmpty() ? mountShown(stint, text) : new Outcome.Refused(problems);
  }

  private Outcome mountShown(int stint, String text) {
    return state.covered() && !state.shown().containsKey(stint)
        ? Outcome.refused(SessionFault.MOUNT_NOT_SHOWN, "", stint)
        : Outcome.accepted(new StintMounted(stint, text), new Fact.BikeHandedOver(stint));
  }

  private List<Problem> mayMount(int stint) {
    List<Problem> problems = new ArrayList<>(mayRecord());
    if (!problems.isEmpty()) {
      return problems;
    }
    if (stint < firstStint(plan) || stint > state.day().lastStint()) {
      return List.of(Problem.of(SessionFault.NO_SUCH_STINT, "", stint, state.day().lastStint()));
    }
    if (state.mounted().containsKey(stint)) {
      return List.of(Problem.of(SessionFault.MOUNTED_TWICE, "", stint));
    }
    return nextToMount()
        .filter(next -> next < stint)
        .map(next -> List.of(Problem.of(SessionFault.SHOW_NOT_MOUNTED, "", next)))
        .orElse(List.of());
  }

  /**
   * What was found out after the last stint was mounted of what was really on; written again with
   * more, the later one counts.
   *
   * @param text a record of number {@link HelperEntry#closing}
   */
  public Outcome corrected(String text) {
    List<Problem> problems = mayCorrect();
    return problems.isEmpty()
        ? Outcome.accepted(new StintMounted(HelperEntry.closing(plan), text))
        : new Outcome.Refused(problems);
  }

  /** Why nothing can be corrected any more; nothing if it can. */
  public List<Problem> mayCorrect() {
    List<Problem> problems = new ArrayList<>(mine());
    problems.addAll(problems.isEmpty() ? ReviewOver.problems(state) : List.of());
    return problems;
  }

  private List<Problem> mayRecord() {
    List<Problem> problems = new ArrayList<>(mine());
    if (problems.isEmpty()) {
      problems.addAll(ReviewOver.problems(state));
    }
    if (problems.isEmpty() && !state.step().day()) {
      problems.add(Problem.of(SessionFault.RECORDING_IS_OVER, "", state.step()));
    }
    return problems;
  }

  private List<Problem> mine() {
    return alone(state) ? List.of() : List.of(Problem.of(SessionFault.NOT_ALONE, ""));
  }
}
