package blindlap.plan;

import blindlap.stats.order.Orders;

/**
 * What masked parts are called while it is hidden which is which: X and Y, then Z, W and on from A.
 * The order is drawn over labels, of which the first is X (docs/method.md#blind-levels).
 */
public final class Labels {
  private static final String FIRST = "XYZW";

  private Labels() {}

  /** The label of a place among the setups, from 0. */
  public static String of(int label) {
    return label < FIRST.length()
        ? FIRST.substring(label, label + 1)
        : String.valueOf(Orders.letter(label - FIRST.length()));
  }

  /**
   * What a setup is called on the day: its name, or its label while that is all there is to know.
   *
   * @param setup as the order has it, 0 = A
   */
  public static String name(Plan plan, int setup) {
    return plan.blinding().level() == BlindLevel.MASKED
        ? of(setup)
        : plan.setups().get(setup).name();
  }

  /**
   * A drawn order as people read it: in labels where labels were ridden.
   *
   * @param order letters of setups, A for the first
   */
  public static String order(Plan plan, String order) {
    if (plan.blinding().level() != BlindLevel.MASKED) {
      return order;
    }
    StringBuilder labels = new StringBuilder();
    order.chars().forEach(letter -> labels.append(of(letter - 'A')));
    return labels.toString();
  }
}
