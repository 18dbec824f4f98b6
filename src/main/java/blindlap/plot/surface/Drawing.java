package blindlap.plot.surface;

/** A picture that can be drawn on any surface, at any width and text scale. */
public interface Drawing {
  /** What a reader who cannot see the picture is told. */
  Spoken spoken();

  /**
   * Height the drawing needs, in logical pixels.
   *
   * @param width the width it is given, in logical pixels
   * @param textScale 1 for 100 %
   */
  double heightFor(double width, double textScale);

  /** Draws into the rectangle from 0, 0 to the width and its {@link #heightFor height}. */
  void draw(Surface surface, double width, double textScale);
}
