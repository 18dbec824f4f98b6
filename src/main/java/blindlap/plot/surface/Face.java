package blindlap.plot.surface;

/**
 * Weight and size of some words.
 *
 * @param weight the weight
 * @param size em size in logical pixels, above 0
 */
public record Face(Weight weight, double size) {
  /** Checks the size. */
  public Face {
    if (!(size > 0)) {
      throw new IllegalArgumentException("A face needs a size above 0, got " + size);
    }
  }

  /**
   * Width to reserve for the words, in logical pixels: regular words are measured as semi-bold, so
   * that a palette which sets them heavier moves nothing.
   */
  public double room(String words) {
    return TextWidth.of(words, weight == Weight.REGULAR ? Weight.SEMIBOLD : weight) * size;
  }

  /** How far letters reach above the baseline. */
  public double ascent() {
    return 0.75 * size;
  }

  /** How far letters reach below the baseline. */
  public double descent() {
    return 0.22 * size;
  }

  /** Distance of two baselines. */
  public double line() {
    return 1.25 * size;
  }
}
