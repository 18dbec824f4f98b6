package blindlap.plot.surface;

/** The stroke that means "look here". */
public final class Highlight {
  private Highlight() {}

  /** Marks the box: filled on screen, underlined on paper, where a pale fill gets lost. */
  public static void under(Surface surface, Box box) {
    if (surface.palette().underlinesHighlight()) {
      surface.rectangle(box, Ink.PAPER);
      surface.rectangle(new Box(box.x(), box.bottom() - 3, box.width(), 3), Ink.INK);
    } else {
      surface.rectangle(box, Ink.HIGHLIGHT);
    }
  }
}
