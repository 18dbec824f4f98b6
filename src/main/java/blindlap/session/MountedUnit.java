package blindlap.session;

/**
 * What a rider who swaps alone saw of a prepared unit: its code, and whether its cover held.
 *
 * @param unitOf the stint whose code was on it, from 1; 0 = the warm-up
 * @param whole true if the cover and its seal were whole
 * @param words further words; may be empty
 */
public record MountedUnit(int unitOf, boolean whole, String words) {
  /** The unit of its own stint, whole. */
  public static MountedUnit asPlanned(int stint) {
    return new MountedUnit(stint, true, "");
  }
}
