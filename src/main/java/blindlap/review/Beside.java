package blindlap.review;

import java.util.List;
import java.util.Optional;

/**
 * What stands beside a finding and is not of its day alone.
 *
 * @param history the other sessions of the question
 * @param unsealed what the session was found to be when it was unsealed, where that can be told
 * @param look the first look under this edition; empty if it was unsealed under this one, and where
 *     neither can be told
 * @param series the session's place in its series, and what that answers; empty outside a series
 * @param profiles who should look at what, as declared in the notebook of whoever reads; nothing in
 *     a data package
 */
public record Beside(
    QuestionHistory history,
    Optional<RecordedFinding> unsealed,
    Optional<FirstLook> look,
    Optional<SeriesPlace> series,
    List<ProfileOnDay> profiles) {
  /** Nothing beside. */
  public static final Beside NOTHING =
      new Beside(QuestionHistory.NONE, Optional.empty(), Optional.empty());

  public Beside {
    profiles = List.copyOf(profiles);
  }

  /** Without profiles. */
  public Beside(
      QuestionHistory history,
      Optional<RecordedFinding> unsealed,
      Optional<FirstLook> look,
      Optional<SeriesPlace> series) {
    this(history, unsealed, look, series, List.of());
  }

  /** Outside a series. */
  public Beside(
      QuestionHistory history, Optional<RecordedFinding> unsealed, Optional<FirstLook> look) {
    this(history, unsealed, look, Optional.empty());
  }

  /** The same in a series. */
  public Beside in(Optional<SeriesPlace> place) {
    return new Beside(history, unsealed, look, place, profiles);
  }

  /** The same with profiles. */
  public Beside with(List<ProfileOnDay> others) {
    return new Beside(history, unsealed, look, series, others);
  }

  /** The edition that the session was unsealed under. */
  public int edition() {
    return unsealed.map(RecordedFinding::edition).orElse(Edition.FIRST);
  }
}
