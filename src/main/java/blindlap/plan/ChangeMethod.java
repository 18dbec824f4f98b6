package blindlap.plan;

/** How the helper goes from one setup to another. */
public enum ChangeMethod {
  /** Parts are taken off and fitted, or settings turned. */
  REFIT,
  /** Whole wheels are changed. */
  WHEEL_CHANGE,
  /**
   * Two bikes; their own differences join the comparison, and the hardware changes bikes at half
   * day.
   */
  TWO_BIKES
}
