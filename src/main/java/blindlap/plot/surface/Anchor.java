package blindlap.plot.surface;

/** Which point of a line of words stands at the given place. */
public enum Anchor {
  /** The words begin there. */
  START(0, "start"),
  /** The words are centred there. */
  MIDDLE(0.5, "middle"),
  /** The words end there. */
  END(1, "end");

  private final double share;
  private final String svg;

  Anchor(double share, String svg) {
    this.share = share;
    this.svg = svg;
  }

  /** Left edge of words of this width that are anchored at x. */
  public double left(double x, double width) {
    return x - share * width;
  }

  String svg() {
    return svg;
  }
}
