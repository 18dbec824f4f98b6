package blindlap.review;

import blindlap.session.SessionState;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * What a series says as its sessions stand, worked out when it is first asked for and kept: for it
 * a reference set is drawn that takes seconds. It is given its sessions whenever it is asked, so
 * that it holds none of them. For any thread; whoever asks while it is worked out waits for it.
 */
public final class SeriesAnswers {
  private final Function<SessionState, DayRecord> open;
  private volatile @Nullable SeriesFinding answer;
  private @Nullable SeriesFinding whole;

  /**
   * Answers of one series.
   *
   * @param open makes the record of an unsealed session
   */
  public SeriesAnswers(Function<SessionState, DayRecord> open) {
    this.open = open;
  }

  /**
   * For the primary measure alone, which takes a fraction of the time.
   *
   * @param sessions every session that names the series, at least one, always with the same entries
   */
  public synchronized SeriesFinding answer(List<SessionState> sessions) {
    SeriesFinding known = answer;
    if (known == null) {
      known = SeriesAnalysis.answer(sessions, open);
      answer = known;
    }
    return known;
  }

  /** With the measures beside the primary one, of the same sessions. */
  public synchronized SeriesFinding whole(List<SessionState> sessions) {
    SeriesFinding known = whole;
    if (known == null) {
      known = SeriesAnalysis.measured(answer(sessions), sessions, open);
      whole = known;
    }
    return known;
  }

  /** The answer, unless it is still to be worked out; before the end of a series nothing is. */
  public Optional<SeriesFinding> known(List<SessionState> sessions) {
    SeriesFinding known = answer;
    if (known != null) {
      return Optional.of(known);
    }
    boolean told = SeriesAnalysis.progress(sessions, open).stage() == SeriesFinding.Stage.OPEN;
    return told ? Optional.empty() : Optional.of(answer(sessions));
  }
}
