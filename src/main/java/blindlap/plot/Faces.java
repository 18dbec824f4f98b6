package blindlap.plot;

/**
 * The faces of plot words at a text scale.
 *
 * @param scale 1 for 100 %
 */
record Faces(double scale) {
  Faces {
    if (!(scale >= 0.5 && scale <= 4)) {
      throw new IllegalArgumentException("The text scale goes from 0.5 to 4, got " + scale);
    }
  }

  /** Numbers on an axis. */
  Face number() {
    return new Face(Weight.REGULAR, 14 * scale);
  }

  /** Words. */
  Face plain() {
    return new Face(Weight.REGULAR, 15 * scale);
  }

  /** Names. */
  Face strong() {
    return new Face(Weight.SEMIBOLD, 15 * scale);
  }

  /** The result. */
  Face big() {
    return new Face(Weight.SEMIBOLD, 19 * scale);
  }

  /** A length that grows with the text. */
  double px(double atFull) {
    return atFull * scale;
  }

  /** Half the size of a mark: grows more slowly than the text, so that marks stay apart. */
  double mark() {
    return 6 * Math.sqrt(scale);
  }
}
