package blindlap.plot.surface;

/**
 * An upright rectangle in logical pixels, y downwards.
 *
 * @param x left edge
 * @param y upper edge
 * @param width width, 0 or more
 * @param height height, 0 or more
 */
public record Box(double x, double y, double width, double height) {
  /** The box round a line of words. */
  public static Box around(String words, double x, double baseline, Anchor anchor, Face face) {
    double width = face.room(words);
    return new Box(
        anchor.left(x, width), baseline - face.ascent(), width, face.ascent() + face.descent());
  }

  /** The box round a mark. */
  public static Box around(double x, double y, double radius) {
    return new Box(x - radius, y - radius, 2 * radius, 2 * radius);
  }

  /** Right edge. */
  public double right() {
    return x + width;
  }

  /** Lower edge. */
  public double bottom() {
    return y + height;
  }

  /** This box with a margin on all sides. */
  public Box grown(double margin) {
    return new Box(x - margin, y - margin, width + 2 * margin, height + 2 * margin);
  }

  /** Area shared with another box, in square pixels; 0 when they do not overlap. */
  public double overlap(Box other) {
    double across = Math.min(right(), other.right()) - Math.max(x, other.x);
    double down = Math.min(bottom(), other.bottom()) - Math.max(y, other.y);
    return across > 0 && down > 0 ? across * down : 0;
  }

  /** Whether the other box lies wholly inside this one. */
  public boolean contains(Box other) {
    return other.x >= x && other.y >= y && other.right() <= right() && other.bottom() <= bottom();
  }
}
