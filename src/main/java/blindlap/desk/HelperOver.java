package blindlap.desk;

import blindlap.exchange.TypedTexts;
import blindlap.fault.Problem;
import blindlap.session.HelperEntry;
import blindlap.session.LifeCommands;
import blindlap.session.SessionState;
import blindlap.session.day.Step;
import java.time.Clock;
import java.util.List;

/**
 * The end of the helper's day: one closing record after those of all stints, of the same size, with
 * what was corrected since the last hand-over, or with nothing. Every day with a helper's page gets
 * one, so that its being there says nothing.
 */
public final class HelperOver {
  private final HelperDay day;
  private final Clock clock;

  public HelperOver(HelperDay day, Clock clock) {
    this.day = day;
    this.clock = clock;
  }

  /** True once the closing record is there. */
  public static boolean closed(SessionState state) {
    return state.helperRecords().containsKey(HelperEntry.closing(state.plan()));
  }

  /** True of a day that was closed, with the helper's page in use, before its helper's day was. */
  public static boolean missing(SessionState state) {
    return state.step() == Step.DAY_CLOSED && !state.helperRecords().isEmpty() && !closed(state);
  }

  /**
   * The closing entry as it stands: the draft of it, or a new one that carries what was said beside
   * a stint that is not to be ridden any more.
   */
  public HelperEntry entry(SessionState state) {
    int closing = HelperEntry.closing(day.plan());
    HelperEntry left = day.records().draft().orElse(null);
    if (left != null && left.stint() == closing) {
      return left;
    }
    int last = state.helperRecords().headMap(closing).isEmpty() ? day.firstStint() : last(state);
    HelperEntry entry =
        HelperEntry.untouched(closing, day.plan().blinding().helper(), day.on(last))
            .withEarlier(day.records().pending(state));
    if (left == null || state.helperRecords().containsKey(left.stint())) {
      return entry;
    }
    for (HelperEntry.Said said : left.events()) {
      entry = entry.withEvent(said);
    }
    return entry.withNote(left.note());
  }

  private int last(SessionState state) {
    return state.helperRecords().headMap(HelperEntry.closing(day.plan())).lastKey();
  }

  /**
   * Writes the closing record, encrypted, at the time by the clock.
   *
   * @param entry the closing entry
   */
  public Sessions.Result write(HelperEntry entry) {
    SessionState now = day.state().orElseThrow();
    if (now.step().day()) {
      int open = day.next(now).orElse(-1);
      if (open >= 0) {
        return refused(Problem.of(DeskFault.HELPER_NOT_DONE, "", open));
      }
    }
    HelperEntry whole = entry.withEarlier(day.records().pending(now)).doneAt(clock.instant());
    List<Problem> unfit = TypedTexts.problems(whole);
    if (!unfit.isEmpty()) {
      return new Sessions.Result.Refused(unfit);
    }
    if (!day.fits(whole)) {
      return refused(Problem.of(DeskFault.NOTE_TOO_LONG, ""));
    }
    Sessions.Result written =
        day.act(latest -> new LifeCommands(latest).helperOver(day.records().sealed(whole)));
    if (written instanceof Sessions.Result.Done) {
      day.records().forget();
    }
    return written;
  }

  private static Sessions.Result refused(Problem problem) {
    return new Sessions.Result.Refused(List.of(problem));
  }

  @Override
  public String toString() {
    return "HelperOver[" + day.id() + "]";
  }
}
