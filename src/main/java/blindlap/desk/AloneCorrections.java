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

  /** One more correction beside those that were said before. */
  Outcome decide(SessionState latest, HelperEntry.Correction said) {
    int stint = said.stint();
    if (plan.blinding().level() == BlindLevel.PREPARED) {
      return refused(DeskFault.FIT_OF_UNITS);
    }
    boolean mounted = stint <= plan.stints() && latest.mounted().containsKey(stint);
    Integer on = mounted ? on(latest, stint).orElse(null) : null;
    if (on == null) {
      return refused(DeskFault.MOUNTED_NOT_YET, stint);
    }
    if (on == said.fitted()) {
      return refused(DeskFault.FIT_AS_RECORDED, stint, Labels.name(plan, on));
    }
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

  private static Outcome refused(DeskFault fault, Object... details) {
    return new Outcome.Refused(List.of(Problem.of(fault, "", details)));
  }
}
