package blindlap.session;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;

/**
 * A recorder went through a gate of the trail, on one lap.
 *
 * @param seconds after the pass of the start gate; null where the pass is missing or not to be used
 * @param uncertainty standard deviation of the time, in seconds; null where there is no pass
 * @param doubtful why it needed a person: {@code gap} or {@code slow}; null where it did not
 */
public record RecordedPass(
    @Nullable BigDecimal seconds, @Nullable BigDecimal uncertainty, @Nullable Doubt doubtful) {
  /** Why a pass needs a person. */
  public enum Doubt {
    /** The recorder stopped or lost its way within five seconds of the gate. */
    GAP,
    /** It crossed below 2 m/s. */
    SLOW
  }
}
