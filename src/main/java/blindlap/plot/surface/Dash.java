package blindlap.plot.surface;

/** Patterns of lines; each setup has its own, for black and white. */
public enum Dash {
  /** Unbroken. */
  SOLID,
  /** 8 on, 4 off. */
  DASHED(8, 4),
  /** 2 on, 4 off. */
  DOTTED(2, 4),
  /** 12 on, 4 off, 2 on, 4 off. */
  DASH_DOT(12, 4, 2, 4),
  /** 7 on, 5 off: the interval of what only follows. */
  FOLLOWS(7, 5),
  /** 3 on, 4 off: guides from one part of a plot to another. */
  GUIDE(3, 4);

  private final double[] lengths;

  Dash(double... lengths) {
    this.lengths = lengths;
  }

  /** Lengths on and off in logical pixels; empty for an unbroken line. */
  public double[] lengths() {
    return lengths.clone();
  }
}
