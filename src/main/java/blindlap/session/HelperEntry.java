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
      String setting, String aim, String measured, @Nullable BigDecimal by, String reason) {
    /** The same, accepted for a reason. */
    public Outside because(String why) {
      return new Outside(setting, aim, measured, by, why);
    }
  }

  public HelperEntry {
    measured = Collections.unmodifiableMap(new LinkedHashMap<>(measured));
    outside = List.copyOf(outside);
    confirmed =
        confirmed.isEmpty() ? Set.of() : Collections.unmodifiableSet(EnumSet.copyOf(confirmed));
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

  /** The same, begun. */
  public HelperEntry begunAt(Instant at) {
    return new HelperEntry(
        stint, helper, planned, fitted, at, done, measured, outside, confirmed, riderFit, note);
  }

  /** The same by another helper. */
  public HelperEntry by(String who) {
    return new HelperEntry(
        stint, who, planned, fitted, begun, done, measured, outside, confirmed, riderFit, note);
  }

  /** The same with another setup really fitted; its settings are measured anew. */
  public HelperEntry withFitted(int setup) {
    return new HelperEntry(
        stint, helper, planned, setup, begun, done, Map.of(), List.of(), confirmed, riderFit, note);
  }

  /** The same with these settings measured. */
  public HelperEntry withMeasured(Map<String, String> values, List<Outside> beyond) {
    return new HelperEntry(
        stint, helper, planned, fitted, begun, done, values, beyond, confirmed, riderFit, note);
  }

  /** The same with these items of the safety list confirmed. */
  public HelperEntry withConfirmed(Set<SafetyCheck> checks) {
    return new HelperEntry(
        stint, helper, planned, fitted, begun, done, measured, outside, checks, riderFit, note);
  }

  /** The same with an answer whether the rider is fit to go on. */
  public HelperEntry withRiderFit(boolean fit) {
    return new HelperEntry(
        stint, helper, planned, fitted, begun, done, measured, outside, confirmed, fit, note);
  }

  /** The same with other words. */
  public HelperEntry withNote(String words) {
    return new HelperEntry(
        stint, helper, planned, fitted, begun, done, measured, outside, confirmed, riderFit, words);
  }

  /** Nothing done yet. */
  public static HelperEntry untouched(int stint, String helper, int planned) {
    return new HelperEntry(
        stint, helper, planned, planned, null, null, Map.of(), List.of(), Set.of(), null, "");
  }

  /** Says which stint only. */
  @Override
  public String toString() {
    return "HelperEntry[stint " + stint + "]";
  }
}
