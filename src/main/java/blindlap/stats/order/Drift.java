package blindlap.stats.order;

/**
 * What is removed from a day before setups are compared (docs/method.md#statistic): a constant, a
 * straight line over the stint positions, or a curve of second degree.
 */
public enum Drift {
  NONE(0),
  LINE(1),
  CURVE(2);

  private final int degree;

  Drift(int degree) {
    this.degree = degree;
  }

  /** Degree of the polynomial in the stint position. */
  public int degree() {
    return degree;
  }

  /** Number of nuisance columns, the constant included. */
  public int columns() {
    return degree + 1;
  }

  /** The name used in files and requests. */
  public String text() {
    return name().toLowerCase(java.util.Locale.ROOT);
  }
}
