package blindlap.plot;

/** The two sizes of a card, in pixels: wide for a page, tall for a phone. */
public enum CardFormat {
  /** 1600 by 900. */
  WIDE(1600, 900, 64),
  /** 1080 by 1350. */
  TALL(1080, 1350, 56);

  private final int width;
  private final int height;
  private final int margin;

  CardFormat(int width, int height, int margin) {
    this.width = width;
    this.height = height;
    this.margin = margin;
  }

  /** Width in pixels. */
  public int width() {
    return width;
  }

  /** Height in pixels. */
  public int height() {
    return height;
  }

  /** Empty on all four sides. */
  int margin() {
    return margin;
  }

  /** Letters are not smaller while there is something that may leave. */
  int leastLetters() {
    return this == WIDE ? 18 : 20;
  }

  /** Width between the margins. */
  double inner() {
    return width - 2.0 * margin;
  }
}
