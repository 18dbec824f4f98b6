package blindlap.desk;

import blindlap.review.SeriesAnswers;
import blindlap.review.SeriesFinding;
import blindlap.session.Head;
import blindlap.session.SessionState;
import blindlap.session.day.SessionId;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Answers of series that were worked out, by what is written in their sessions: the heads name
 * every entry by its hash, so that an answer is never older than its sessions. List, room, review
 * and report ask for the same one.
 */
final class KeptSeries {
  private static final int MOST = 6;

  private record Written(SessionId session, List<Head> heads) {}

  private final Map<List<Written>, SeriesAnswers> kept =
      new LinkedHashMap<>(MOST, 0.75f, true) {
        @Override
        protected boolean removeEldestEntry(Map.Entry<List<Written>, SeriesAnswers> eldest) {
          return size() > MOST;
        }
      };

  private synchronized SeriesAnswers of(List<SessionState> sessions) {
    List<Written> written =
        sessions.stream().map(each -> new Written(each.id(), each.heads())).toList();
    return kept.computeIfAbsent(written, any -> new SeriesAnswers(OpenedDays::of));
  }

  /**
   * What a series answers for its primary measure.
   *
   * @param sessions every session that names it, at least one, as they stand
   */
  SeriesFinding answer(List<SessionState> sessions) {
    return of(sessions).answer(sessions);
  }

  /** The same with the measures beside the primary one. */
  SeriesFinding whole(List<SessionState> sessions) {
    return of(sessions).whole(sessions);
  }

  /** The answer, unless it would have to be worked out and nobody has asked for it yet. */
  Optional<SeriesFinding> known(List<SessionState> sessions) {
    return of(sessions).known(sessions);
  }
}
