package blindlap.paper.sheet;

/** Paper a sheet is made for, in millimetres, upright. */
public enum SheetFormat {
  A4(210, 297),
  LETTER(215.9, 279.4);

  private final double width;
  private final double height;

  SheetFormat(double width, double height) {
    this.width = width;
    this.height = height;
  }

  /** Width in millimetres. */
  public double width() {
    return width;
  }

  /** Height in millimetres. */
  public double height() {
    return height;
  }
}
