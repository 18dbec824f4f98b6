package blindlap.review;

import java.math.BigDecimal;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * What the helper wrote down for a stint, read after unsealing.
 *
 * @param stint which stint, from 1
 * @param fitted index of the setup that was on; null if not written down
 * @param measured settings as measured, by name
 * @param words settings for which something other than a number was written down, by name, as it
 *     was typed; there is no parity to check, but nothing of it is lost
 * @param note further words; may be empty
 */
public record HelperFit(
    int stint,
    @Nullable Integer fitted,
    Map<String, BigDecimal> measured,
    Map<String, String> words,
    String note) {
  public HelperFit {
    measured = Collections.unmodifiableMap(new LinkedHashMap<>(measured));
    words = Collections.unmodifiableMap(new LinkedHashMap<>(words));
  }

  /** A record without settings in words. */
  public HelperFit(
      int stint, @Nullable Integer fitted, Map<String, BigDecimal> measured, String note) {
    this(stint, fitted, measured, Map.of(), note);
  }

  /** The same with another setup on, as it was found out later. */
  public HelperFit with(int setup) {
    return new HelperFit(stint, setup, measured, words, note);
  }
}
