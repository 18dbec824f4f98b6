package blindlap.desk;

import blindlap.exchange.TypedTexts;
import blindlap.fault.Problem;
import blindlap.session.HelperEntry;
import blindlap.session.SessionState;
import java.time.Clock;
import java.util.List;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * A wrong fit that was noticed after its bike was handed over. It goes into the helper's draft at
 * once and with it into the next record that is written anyway: that of the next stint, or the one
 * that closes the helper's day. So nothing that anyone can see tells that there was one.
 */
public final class FitCorrections {
  private final HelperDay day;
  private final Clock clock;

  public FitCorrections(HelperDay day, Clock clock) {
    this.day = day;
    this.clock = clock;
  }

  /** The same with what an entry in hand corrects. */
  public SortedMap<Integer, Integer> known(SessionState state, HelperEntry inHand) {
    SortedMap<Integer, Integer> known = known(state);
    inHand.corrections().forEach(each -> known.replace(each.stint(), each.fitted()));
    return known;
  }

  /** What is known to have been on, by stint, for the stints that can be corrected. */
  public SortedMap<Integer, Integer> known(SessionState state) {
    SortedMap<Integer, Integer> known = new TreeMap<>();
    state.helperRecords().keySet().stream()
        .filter(stint -> stint <= day.plan().stints())
        .forEach(stint -> known.put(stint, day.on(stint)));
    return known;
  }

  /** Those of some corrections that stand in no record yet. */
  public List<HelperEntry.Correction> notSealed(
      SessionState state, List<HelperEntry.Correction> said) {
    List<HelperEntry.Correction> sealed =
        day.records().of(state).stream().flatMap(entry -> entry.corrections().stream()).toList();
    return said.stream().filter(each -> !sealed.contains(each)).toList();
  }

  /** A correction that is said now. */
  public HelperEntry.Correction now(int stint, int setup, String words) {
    return new HelperEntry.Correction(stint, setup, words.strip(), clock.instant());
  }

  /** What stands against a correction in an entry in hand; nothing where it may be kept. */
  public List<Problem> problems(
      SessionState state, HelperEntry inHand, HelperEntry.Correction correction) {
    List<Problem> late = late(state);
    if (!late.isEmpty()) {
      return late;
    }
    int stint = correction.stint();
    Integer on = known(state, inHand).get(stint);
    if (on == null) {
      return List.of(Problem.of(DeskFault.FIT_NOT_YET, "", stint));
    }
    if (on == correction.fitted()) {
      String name = day.plan().setups().get(on).name();
      return List.of(Problem.of(DeskFault.FIT_AS_RECORDED, "", stint, name));
    }
    HelperEntry with = inHand.withCorrection(correction);
    List<Problem> unfit = TypedTexts.problems(with);
    return unfit.isEmpty() && !day.fits(with)
        ? List.of(Problem.of(DeskFault.NOTE_TOO_LONG, ""))
        : unfit;
  }

  private static List<Problem> late(SessionState state) {
    if (!state.step().day()) {
      return List.of(Problem.of(DeskFault.FIT_AFTER_DAY, ""));
    }
    return HelperOver.closed(state)
        ? List.of(Problem.of(DeskFault.FIT_AFTER_HELPER, ""))
        : List.of();
  }

  /** The entry in hand as it stands on disk: of the next stint, or the closing one. */
  public HelperEntry inHand(SessionState state) {
    return day.next(state)
        .map(
            stint ->
                day.unfinished(stint)
                    .map(HelperDraft::entry)
                    .orElseGet(
                        () ->
                            HelperEntry.untouched(
                                stint, day.plan().blinding().helper(), day.work(stint).setup())))
        .orElseGet(() -> new HelperOver(day, clock).entry(state));
  }

  /**
   * Keeps a correction in the draft on disk, for whoever has no page open.
   *
   * @return what is wrong; nothing once it is kept
   */
  public List<Problem> keep(SessionState state, HelperEntry.Correction correction) {
    HelperEntry entry = inHand(state);
    List<Problem> problems = problems(state, entry, correction);
    if (problems.isEmpty()) {
      HelperEntry corrected = entry.withCorrection(correction);
      day.keep(
          day.unfinished(entry.stint())
              .map(draft -> draft.with(corrected))
              .orElseGet(() -> new HelperDraft(corrected, Set.of())));
    }
    return problems;
  }

  /** True while a stint is handled and a record is still to come that takes corrections in. */
  public boolean open(SessionState state) {
    return late(state).isEmpty() && !known(state).isEmpty();
  }

  @Override
  public String toString() {
    return "FitCorrections[" + day.id() + "]";
  }
}
