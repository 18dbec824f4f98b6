package blindlap.session;

/** The safety list, the same for real and dummy swaps. Every item is confirmed before a lap. */
public enum SafetyCheck {
  AXLES,
  PIVOTS_AND_MOUNTS,
  SPRING_SEATED,
  PRESSURES,
  BRAKES,
  WHEELS,
  NOTHING_LOOSE
}
