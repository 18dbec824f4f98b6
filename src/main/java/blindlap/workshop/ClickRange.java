package blindlap.workshop;

import blindlap.fault.Unusable;

/**
 * An adjuster with clicks: counted from fully closed, or from fully open.
 *
 * <p>fromOpen = clicks − fromClosed, and the same way back. Zero is the stop itself.
 *
 * @param clicks clicks from one stop to the other, at least 1
 */
public record ClickRange(int clicks) {
  /**
   * @throws Unusable if there is no click
   */
  public ClickRange {
    if (clicks < 1) {
      throw new Unusable(
          "clicks", "must be at least 1, but is " + clicks + ".", WorkshopFault.NO_CLICKS, clicks);
    }
  }

  /**
   * @param fromClosed 0 to the number of clicks
   * @throws Unusable if the adjuster has no such position
   */
  public int fromOpen(int fromClosed) {
    return clicks - within("from_closed", fromClosed);
  }

  /**
   * The way back.
   *
   * @throws Unusable if the adjuster has no such position
   */
  public int fromClosed(int fromOpen) {
    return clicks - within("from_open", fromOpen);
  }

  private int within(String argument, int position) {
    if (position < 0 || position > clicks) {
      throw new Unusable(
          argument,
          "must lie between 0 and %d, but is %d.".formatted(clicks, position),
          WorkshopFault.OUTSIDE,
          argument,
          0,
          clicks,
          position);
    }
    return position;
  }
}
