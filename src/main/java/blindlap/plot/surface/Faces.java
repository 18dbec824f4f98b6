package blindlap.plot.surface;

/**
 * The faces of plot words at a text scale.
 *
 * @param scale 1 for 100 %
 */
public record Faces(double scale) {
  public Faces {
    if (!(scale >= 0.5 && scale <= 4)) {
      throw new IllegalArgumentException("The text scale goes from 0.5 to 4, got " + scale);
    }
  }

  /** Numbers on an axis. */
  public Face number() {
    return new Face(Weight.REGULAR, 14 * scale);
  }

  /** Words. */
  public Face plain() {
    return new Face(Weight.REGULAR, 15 * scale);
  }

  /** Names. */
  public Face strong() {
    return new Face(Weight.SEMIBOLD, 15 * scale);
  }

  /** The result. */
  public Face big() {
    return new Face(Weight.SEMIBOLD, 19 * scale);
  }

  /** A length that grows with the text. */
  public double px(double atFull) {
    return atFull * scale;
  }

  /** Half the size of a mark: grows more slowly than the text, so that marks stay apart. */
  public double mark() {
    return 6 * Math.sqrt(scale);
  }
}
