package blindlap.desk;

import blindlap.review.Beside;
import blindlap.review.DayRecord;
import blindlap.review.Edition;
import blindlap.review.FirstLook;
import blindlap.review.QuestionHistory;
import blindlap.review.RecordedFinding;
import blindlap.session.FindingSeenAgain;
import blindlap.session.NotebookException;
import blindlap.session.Outcome;
import blindlap.session.SessionState;
import blindlap.wording.EditionWords;
import java.util.List;
import java.util.Optional;

/**
 * Dates the first look at a session under another edition of the method than it was unsealed under,
 * together with what the earlier edition gave (docs/method.md#editions). A later edition need not
 * know the earlier one's rules.
 */
final class FirstLooks {
  private final Sessions sessions;

  FirstLooks(Sessions sessions) {
    this.sessions = sessions;
  }

  /** What stands beside the finding of an unsealed session that is being looked at. */
  Beside beside(SessionState state, QuestionHistory history) {
    DayRecord day = OpenedDays.of(state);
    Optional<RecordedFinding> unsealed = RecordedFinding.atUnsealing(state, day);
    if (unsealed.isEmpty() || unsealed.get().edition() == Edition.CURRENT) {
      return new Beside(history, unsealed, Optional.empty());
    }
    Optional<FirstLook> kept = FirstLook.kept(state);
    if (kept.isPresent()) {
      return new Beside(history, unsealed, kept);
    }
    boolean same =
        new EditionWords(day.plan()).beside(unsealed.get(), RecordedFinding.today(day)).isEmpty();
    return written(state, unsealed.get().seenAgain(same))
        .map(now -> new Beside(history, RecordedFinding.atUnsealing(now, day), FirstLook.kept(now)))
        .orElseGet(
            () ->
                new Beside(
                    history,
                    unsealed,
                    Optional.of(new FirstLook(Edition.CURRENT, Optional.empty(), same))));
  }

  /** Reading goes on where nothing can be written; then the look has no date, and this is said. */
  private Optional<SessionState> written(SessionState state, FindingSeenAgain fact) {
    try {
      Sessions.Result result =
          sessions.act(
              state.id(),
              now ->
                  new Outcome.Accepted(
                      now.seenAgain().containsKey(fact.edition()) ? List.of() : List.of(fact)));
      return result instanceof Sessions.Result.Done done
          ? Optional.of(done.state())
          : Optional.empty();
    } catch (NotebookException unwritable) {
      return Optional.empty();
    }
  }
}
