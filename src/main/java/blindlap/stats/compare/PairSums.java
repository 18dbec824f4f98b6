package blindlap.stats.compare;

/** Takes the sums of an order of a two-setup walk; its mirror image has −a, −b and c. */
public interface PairSums {
  /**
   * An order and its mirror image.
   *
   * @param a z'x for the first vector of the walk, z = ±1/2
   * @param b z'y for the second
   * @param c z'Wz
   */
  void orderAndMirror(double a, double b, double c);
}
