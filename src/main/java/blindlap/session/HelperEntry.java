package blindlap.session;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.Collections;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * What the helper did and found before a stint. It goes into that stint's encrypted entry and is
 * read after unsealing only.
 *
 * @param stint from 1; 0 = before the warm-up laps
 * @param helper who swapped
 * @param planned the setup that was to be fitted, 0 = A
 * @param fitted the setup that was really fitted
 * @param begun when the handling began; null if not known
 * @param done when the bike was ready; null while it is not
 * @param measured settings as measured, by name, as typed
 * @param outside settings outside their tolerance that were accepted, each with its reason
 * @param confirmed items of the safety list
 * @param riderFit whether the rider was fit to go on; null before the first lap
 * @param note further words
 */
public record HelperEntry(
    int stint,
    String helper,
    int planned,
    int fitted,
    @Nullable Instant begun,
    @Nullable Instant done,
    Map<String, String> measured,
    List<Outside> outside,
    Set<SafetyCheck> confirmed,
    @Nullable Boolean riderFit,
    String note) {

  /**
   * A setting outside its tolerance.
   *
   * @param setting its name
   * @param aim value aimed at, with its unit
   * @param measured value as typed
   * @param by measured less aimed at, in the setting's unit; null where the value is words
   * @param reason why it was accepted; empty while it is not
   */
  public record Outside(
      String setting, String aim, String measured, @Nullable BigDecimal by, String reason) {}

  public HelperEntry {
    measured = Collections.unmodifiableMap(new LinkedHashMap<>(measured));
    outside = List.copyOf(outside);
    confirmed =
        confirmed.isEmpty()
            ? Set.of()
            : Collections.unmodifiableSet(EnumSet.copyOf(confirmed));
  }

  /** True if another setup was fitted than planned. */
  public boolean wrongFit() {
    return fitted != planned;
  }

  /** The same with the time at which the bike was ready. */
  public HelperEntry doneAt(Instant at) {
    return new HelperEntry(
        stint, helper, planned, fitted, begun, at, measured, outside, confirmed, riderFit, note);
  }

  /** Says which stint only. */
  @Override
  public String toString() {
    return "HelperEntry[stint " + stint + "]";
  }
}
