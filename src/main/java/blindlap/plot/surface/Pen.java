package blindlap.plot.surface;

/**
 * How a line is drawn.
 *
 * @param ink its ink
 * @param width nominal width in logical pixels, above 0; the palette may draw it heavier
 * @param dash its pattern
 */
public record Pen(Ink ink, double width, Dash dash) {
  /** Checks the width. */
  public Pen {
    if (!(width > 0)) {
      throw new IllegalArgumentException("A pen needs a width above 0, got " + width);
    }
  }

  /** An unbroken line. */
  public static Pen of(Ink ink, double width) {
    return new Pen(ink, width, Dash.SOLID);
  }
}
