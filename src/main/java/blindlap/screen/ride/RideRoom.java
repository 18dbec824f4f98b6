package blindlap.screen.ride;

import blindlap.screen.part.Look;
import javafx.beans.binding.DoubleBinding;
import javafx.beans.property.ReadOnlyDoubleProperty;

/** What the Ride page has room for in the window as it is. */
final class RideRoom {
  /** Width of the column of code and watch, at 100 %. */
  static final double LEFT = 420;

  /** Least width of a score sheet in two columns, at 100 %. */
  private static final double TWO_COLUMNS = 780;

  /** A window at least this high has room for a code that is read from afar. */
  private static final double HIGH = 960;

  private static final double CODE = 219;
  private static final double LOW_CODE = 76;

  /** With large text, at 100 %: still the largest thing, and the page below it begins in view. */
  private static final double LARGE_LOW_CODE = 110;

  private final Look look;
  private final ReadOnlyDoubleProperty pageWidth;
  private final ReadOnlyDoubleProperty pageHeight;
  private final double side;

  /**
   * @param side free at the left and at the right of the score sheet
   */
  RideRoom(
      Look look, ReadOnlyDoubleProperty pageWidth, ReadOnlyDoubleProperty pageHeight, double side) {
    this.look = look;
    this.pageWidth = pageWidth;
    this.pageHeight = pageHeight;
    this.side = side;
  }

  /** True where the score sheet has room for two columns. */
  boolean wide() {
    double width = pageWidth.get();
    double scale = Math.max(1, look.textScale());
    boolean room = width == 0 || width - LEFT * scale - 2 * side >= TWO_COLUMNS * scale;
    return !look.stacked() && room;
  }

  /** True where two columns must make do with the height of a small laptop. */
  boolean low() {
    return wide() && pageHeight.get() < HIGH;
  }

  /** The least height of what is pressed. */
  DoubleBinding touch() {
    return low() ? look.touch(RideScoreView.LOW) : look.touch();
  }

  /** The largest that the code may be. */
  double code() {
    return pageHeight.get() >= HIGH ? CODE : look.stacked() ? LARGE_LOW_CODE : LOW_CODE;
  }
}
