package blindlap.review;

import java.math.BigDecimal;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * What the helper wrote down for a stint, read after unsealing.
 *
 * @param stint which stint, from 1
 * @param fitted index of the setup that was on; null if not written down
 * @param measured settings as measured, by name
 * @param note further words; may be empty
 */
public record HelperFit(
    int stint, @Nullable Integer fitted, Map<String, BigDecimal> measured, String note) {
  public HelperFit {
    measured = Map.copyOf(measured);
  }
}
