package blindlap.session;

import java.math.BigDecimal;
import java.util.Collections;
import java.util.Map;
import java.util.TreeMap;

/**
 * A lap of an old day, as its file had it. It was not ridden blind and carries no verdict.
 *
 * @param position place on track that day, from 1
 * @param setup what was on, in the file's words; empty if the file does not say
 * @param values by name of measure, times in seconds
 * @param voided true if the file marks the lap as spoiled
 */
public record PlainLap(int position, String setup, Map<String, BigDecimal> values, boolean voided) {
  public PlainLap {
    Map<String, BigDecimal> plain = new TreeMap<>();
    values.forEach((name, value) -> plain.put(name, value.stripTrailingZeros()));
    values = Collections.unmodifiableMap(plain);
  }
}
