package blindlap.desk;

import blindlap.exchange.HelperTable;
import blindlap.exchange.TypedTexts;
import blindlap.fault.Problem;
import blindlap.session.Fact;
import blindlap.session.HelperEntry;
import blindlap.session.KeptOnPaper;
import blindlap.session.Outcome;
import blindlap.session.SessionFault;
import blindlap.session.SessionState;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SortedSet;
import java.util.stream.IntStream;

/**
 * Stints that the helper kept on paper get their records afterwards, so that the page is at the
 * stint in hand again. Each record is an ordinary one. No bike is handed over by it: that was done
 * where the stint was ridden.
 */
public final class CaughtUp {
  private final HelperDay day;

  public CaughtUp(HelperDay day) {
    this.day = day;
  }

  /**
   * What a typed table holds.
   *
   * @param stints those that are filled in; to be used only if there are no problems
   */
  public record Paper(List<KeptOnPaper> stints, List<Problem> problems) {
    public Paper {
      stints = List.copyOf(stints);
      problems = List.copyOf(problems);
    }
  }

  /** Why a session has no helper's paper, if so; asked before anything is read or written. */
  public static List<Problem> refusals(SessionState state) {
    return state.covered() ? List.of(Problem.of(DeskFault.NO_HELPER_PAPER, "")) : List.of();
  }

  /** Reads the helper's table; nothing of the key is needed for it. */
  public static Paper read(SessionState state, byte[] table) {
    HelperTable.Reading reading = HelperTable.read(table, state.plan(), state.codes());
    return new Paper(reading.stints(), reading.problems());
  }

  /** The empty table of the stints that have no record; it is the same for every order. */
  public static byte[] form(SessionState state) {
    int first = state.plan().laps().warmUp() > 0 ? 0 : 1;
    return HelperTable.form(state.plan(), state.codes(), unrecorded(state, first));
  }

  private static List<Integer> unrecorded(SessionState state, int first) {
    return IntStream.rangeClosed(first, state.day().lastStint())
        .filter(stint -> !state.helperRecords().containsKey(stint))
        .boxed()
        .toList();
  }

  /** Stints whose entry is waited for, in their order: none that was passed over. */
  public List<Integer> open(SessionState state) {
    SortedSet<Integer> passed = PassedOver.of(state);
    return day.next(state).stream()
        .flatMap(first -> unrecorded(state, first).stream())
        .filter(stint -> !passed.contains(stint))
        .toList();
  }

  /**
   * Writes the records of stints that were kept on paper, all or none.
   *
   * @param stints in their order, from the next one without an entry on
   */
  public Sessions.Result record(List<KeptOnPaper> stints) {
    Sessions.Result result = day.act(latest -> decide(latest, stints));
    if (result instanceof Sessions.Result.Done done) {
      Optional<HelperEntry> draft = day.records().draft();
      if (draft.filter(e -> done.state().helperRecords().containsKey(e.stint())).isPresent()) {
        day.records().forget();
      }
    }
    return result;
  }

  private Outcome decide(SessionState latest, List<KeptOnPaper> stints) {
    if (!latest.step().day()) {
      return Outcome.refused(SessionFault.RECORDING_IS_OVER, "", latest.step());
    }
    List<Integer> open = unrecorded(latest, day.firstStint());
    SortedSet<Integer> passed = PassedOver.of(latest);
    List<Problem> problems = new ArrayList<>();
    List<Fact> facts = new ArrayList<>();
    if (open.isEmpty() || stints.isEmpty()) {
      return new Outcome.Refused(List.of(Problem.of(DeskFault.NOTHING_ON_PAPER, "")));
    }
    int at = 0;
    for (int i = 0; i < stints.size(); i++) {
      KeptOnPaper kept = stints.get(i);
      // On paper the rest of a void trial may have been carried on, line by line, or passed over.
      while (at < open.size() && open.get(at) < kept.stint() && passed.contains(open.get(at))) {
        at++;
      }
      if (at >= open.size()) {
        problems.add(Problem.of(SessionFault.HANDLED_TWICE, "", kept.stint()));
      } else if (kept.stint() != open.get(at)) {
        problems.add(Problem.of(DeskFault.PAPER_OUT_OF_TURN, "", kept.stint(), open.get(at)));
        break;
      } else {
        problems.addAll(record(latest, kept, i == 0, facts));
        at++;
      }
    }
    return problems.isEmpty() ? new Outcome.Accepted(facts) : new Outcome.Refused(problems);
  }

  private List<Problem> record(
      SessionState latest, KeptOnPaper kept, boolean first, List<Fact> facts) {
    List<Problem> problems = new ArrayList<>();
    if (!kept.confirmed().isEmpty() && kept.confirmedBy().isBlank()) {
      problems.add(Problem.of(DeskFault.PAPER_BY_MISSING, "", kept.stint()));
    }
    HelperEntry entry = entry(kept);
    problems.addAll(
        Tolerance.notNumbers(day.settings(kept.stint(), entry.fitted()), entry.measured()));
    HelperEntry whole = first ? withDraft(latest, entry) : entry;
    problems.addAll(TypedTexts.problems(whole));
    if (problems.isEmpty() && !day.fits(whole)) {
      problems.add(Problem.of(DeskFault.NOTE_TOO_LONG, ""));
    }
    if (problems.isEmpty()) {
      facts.add(new Fact.StintHandled(day.records().sealed(whole)));
    }
    return problems;
  }

  private HelperEntry entry(KeptOnPaper kept) {
    int scheduled = day.work(kept.stint()).setup();
    int fitted = kept.otherwise() == KeptOnPaper.AS_SCHEDULED ? scheduled : kept.otherwise();
    HelperEntry entry =
        HelperEntry.untouched(kept.stint(), day.plan().blinding().helper(), scheduled)
            .withFitted(fitted)
            .withMeasured(kept.measured(), List.of());
    return MeasuredValues.judged(day.settings(kept.stint(), fitted), entry)
        .withConfirmed(kept.confirmed())
        .withNote(kept.note())
        .onPaper(new HelperEntry.Paper(kept.confirmedBy()));
  }

  /** What was said on the page before the pencil was taken up is not lost. */
  private HelperEntry withDraft(SessionState latest, HelperEntry entry) {
    HelperEntry whole = entry.withEarlier(day.records().pending(latest));
    HelperEntry begun = day.unfinished(entry.stint()).map(HelperDraft::entry).orElse(null);
    if (begun == null) {
      return whole;
    }
    for (HelperEntry.Said said : begun.events()) {
      whole = whole.withEvent(said);
    }
    boolean both = !begun.note().isBlank() && !whole.note().isBlank();
    return begun.note().isBlank()
        ? whole
        : whole.withNote(begun.note() + (both ? "; " + whole.note() : ""));
  }

  @Override
  public String toString() {
    return "CaughtUp[" + day.id() + "]";
  }
}
