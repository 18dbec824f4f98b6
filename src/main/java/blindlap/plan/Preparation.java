package blindlap.plan;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * What a friend does beforehand so that the rider can swap alone and not know: masks look-alike
 * parts, or codes and covers one unit for every stint (docs/method.md#blind-levels). Since version
 * 5.
 *
 * @param by who masks or prepares; may be empty
 * @param on the day on which that is done; null where it is not said
 * @param masks how the labels of masked parts are kept
 * @param units how many units look alike; null where it is not said
 * @param recovers true if the friend covers and codes again between stints, out of sight
 */
public record Preparation(
    String by, @Nullable LocalDate on, Masks masks, @Nullable Integer units, boolean recovers) {

  /** Nobody prepares anything. */
  public static final Preparation NONE = new Preparation("", null, Masks.FRIEND, null, false);

  /** Where it stands which label is on which part. */
  public enum Masks {
    /** A friend tells the notebook, under a phrase of his own. */
    FRIEND,
    /** Marks on the parts, under tape: read after the review is closed, and never sealed. */
    MARKS
  }
}
