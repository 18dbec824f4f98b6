package blindlap.session;

import java.util.Collections;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;

/**
 * What the helper's paper says of a stint.
 *
 * @param stint which stint, 0 = the warm-up
 * @param otherwise the setup that was fitted, 0 = A, where it was another than scheduled; -1 where
 *     it was as scheduled
 * @param confirmedBy who ticked the safety list; empty if nobody did
 * @param confirmed what is ticked
 * @param measured settings as measured, by name, as typed; those left empty are missing
 * @param note further words; may be empty
 */
public record KeptOnPaper(
    int stint,
    int otherwise,
    String confirmedBy,
    Set<SafetyCheck> confirmed,
    Map<String, String> measured,
    String note) {
  /** Value of {@link #otherwise} where nothing was fitted otherwise. */
  public static final int AS_SCHEDULED = -1;

  public KeptOnPaper {
    confirmed =
        confirmed.isEmpty() ? Set.of() : Collections.unmodifiableSet(EnumSet.copyOf(confirmed));
    measured = Collections.unmodifiableMap(new LinkedHashMap<>(measured));
  }

  /** Says which stint only. */
  @Override
  public String toString() {
    return "KeptOnPaper[stint " + stint + "]";
  }
}
