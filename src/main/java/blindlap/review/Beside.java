package blindlap.review;

import java.util.Optional;

/**
 * What stands beside a finding and is not of its day alone.
 *
 * @param history the other sessions of the question
 * @param unsealed what the session was found to be when it was unsealed, where that can be told
 * @param look the first look under this edition; empty if it was unsealed under this one, and where
 *     neither can be told
 * @param series the session's place in its series, and what that answers; empty outside a series
 */
public record Beside(
    QuestionHistory history,
    Optional<RecordedFinding> unsealed,
    Optional<FirstLook> look,
    Optional<SeriesPlace> series) {
  /** Nothing beside. */
  public static final Beside NOTHING =
      new Beside(QuestionHistory.NONE, Optional.empty(), Optional.empty());

  /** Outside a series. */
  public Beside(
      QuestionHistory history, Optional<RecordedFinding> unsealed, Optional<FirstLook> look) {
    this(history, unsealed, look, Optional.empty());
  }

  /** The same in a series. */
  public Beside in(Optional<SeriesPlace> place) {
    return new Beside(history, unsealed, look, place);
  }

  /** The edition that the session was unsealed under. */
  public int edition() {
    return unsealed.map(RecordedFinding::edition).orElse(Edition.FIRST);
  }
}
