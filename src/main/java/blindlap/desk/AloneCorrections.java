package blindlap.desk;

import blindlap.exchange.MountedText;
import blindlap.exchange.TypedTexts;
import blindlap.fault.Problem;
import blindlap.plan.BlindLevel;
import blindlap.plan.Labels;
import blindlap.plan.Plan;
import blindlap.seal.HelperRecord;
import blindlap.session.AloneCommands;
import blindlap.session.HelperEntry;
import blindlap.session.Outcome;
import blindlap.session.SessionState;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What a rider who swaps alone finds out later of what was really on. */
final class AloneCorrections {
  private final Plan plan;
  private final Clock clock;

  AloneCorrections(Plan plan, Clock clock) {
    this.plan = plan;
    this.clock = clock;
  }

  /** What was on in a stint, as it was said; empty where it was not, and of prepared units. */
  Optional<Integer> on(SessionState state, int stint) {
    List<HelperEntry> entries =
        state.mounted().values().stream()
            .flatMap(text -> MountedText.read(text, plan).stream())
            .toList();
    return OnTheBike.of(entries).on(stint);
  }

  /** True if an entry is not too long to be kept. */
  boolean fits(HelperEntry entry) {
    return HelperRecord.length(MountedText.write(entry.doneAt(clock.instant()), plan))
        <= HelperRecord.ROOM;
  }

  /** Why it cannot be said that something else was on; nothing if it can, in some stint. */
  List<Problem> refusals(SessionState state) {
    List<Problem> problems = new ArrayList<>(new AloneCommands(state).mayCorrect());
    if (problems.isEmpty() && plan.blinding().level() == BlindLevel.PREPARED) {
      problems.add(Problem.of(DeskFault.FIT_OF_UNITS, ""));
    }
    return problems;
  }

  /** The same of one stint. */
  List<Problem> refusals(SessionState state, int stint) {
    List<Problem> problems = new ArrayList<>(refusals(state));
    boolean mounted = stint <= plan.stints() && state.mounted().containsKey(stint);
    if (problems.isEmpty() && !(mounted && on(state, stint).isPresent())) {
      problems.add(Problem.of(DeskFault.MOUNTED_NOT_YET, "", stint));
    }
    return problems;
  }

  /** The same of one setup in it. */
  List<Problem> refusals(SessionState state, int stint, int setup) {
    List<Problem> problems = new ArrayList<>(refusals(state, stint));
    if (problems.isEmpty() && on(state, stint).orElseThrow() == setup) {
      String name = Labels.name(plan, setup);
      problems.add(Problem.of(DeskFault.FIT_AS_RECORDED, "", stint, name));
    }
    return problems;
  }

  /** One more correction beside those that were said before. */
  Outcome decide(SessionState latest, HelperEntry.Correction said) {
    List<Problem> refusals = refusals(latest, said.stint(), said.fitted());
    if (!refusals.isEmpty()) {
      return new Outcome.Refused(refusals);
    }
    int on = on(latest, said.stint()).orElseThrow();
    int closing = HelperEntry.closing(plan);
    HelperEntry entry =
        Optional.ofNullable(latest.mounted().get(closing))
            .flatMap(text -> MountedText.read(text, plan))
            .orElseGet(() -> HelperEntry.untouched(closing, plan.rider(), on))
            .withCorrection(said)
            .doneAt(clock.instant());
    List<Problem> unfit = TypedTexts.problems(entry);
    if (unfit.isEmpty() && !fits(entry)) {
      unfit = List.of(Problem.of(DeskFault.NOTE_TOO_LONG, ""));
    }
    return unfit.isEmpty()
        ? new AloneCommands(latest).corrected(MountedText.write(entry, plan))
        : new Outcome.Refused(unfit);
  }
}
