package blindlap.screen.part;

import blindlap.wording.day.Shown;
import javafx.beans.InvalidationListener;
import javafx.geometry.Orientation;
import javafx.geometry.VPos;
import javafx.scene.AccessibleRole;
import javafx.scene.layout.Region;
import javafx.scene.text.Font;
import javafx.scene.text.Text;

/**
 * The largest words of a page, bold: the code on Ride, the setup on Swap. Words that are too wide
 * are set smaller, down to a least size, and then broken into lines. Words that fit on one line
 * take the same height whatever they are.
 */
public final class BigWords extends Region {
  private static final String FACE = "Source Sans 3 Bold";
  // Cap height and a little air above and below, in em.
  private static final double CAPS = 0.66;
  private static final double HEIGHT = 0.86;

  private final Look look;
  private double size;
  private final double least;
  private final Text letters = new Text();

  @SuppressWarnings({"unused", "FieldCanBeLocal"}) // held so that the look can reach these words
  private final InvalidationListener watch;

  private BigWords(Look look, double size, double least) {
    this.look = look;
    this.size = size;
    this.least = least;
    getStyleClass().add("big-words");
    letters.getStyleClass().add("letters");
    letters.setTextOrigin(VPos.BASELINE);
    getChildren().add(letters);
    setAccessibleRole(AccessibleRole.TEXT);
    watch = look.watch(this::requestLayout);
  }

  /** Words for a code of three digits. */
  public static BigWords code(Look look) {
    return new BigWords(look, 219, 72);
  }

  /** Words for the name of a setup. */
  public static BigWords setupName(Look look) {
    return new BigWords(look, 136, 72);
  }

  /** Sets the words no larger than this many pixels at 100 %, where the page is low. */
  public void atMost(double most) {
    if (size != most) {
      size = most;
      requestLayout();
    }
  }

  /** Says the words. */
  public void say(String words) {
    // Measured before it comes into a scene.
    letters.setText(Shown.text(words));
    setAccessibleText(words);
    requestLayout();
  }

  @Override
  public Orientation getContentBias() {
    return Orientation.HORIZONTAL;
  }

  @Override
  protected double computeMinWidth(double height) {
    return 0;
  }

  @Override
  protected double computePrefWidth(double height) {
    return Math.ceil(width(size * look.textScale()));
  }

  @Override
  protected double computeMinHeight(double width) {
    return computePrefHeight(width);
  }

  @Override
  protected double computePrefHeight(double width) {
    double one = HEIGHT * wanted();
    if (width <= 0 || width(fitting(width)) <= width + 1) {
      return one;
    }
    Text broken = new Text(letters.getText());
    broken.setFont(new Font(FACE, fitting(width)));
    broken.setWrappingWidth(width);
    return Math.max(one, broken.getLayoutBounds().getHeight());
  }

  private double wanted() {
    return size * Math.min(1.25, look.textScale());
  }

  /** The size at which the words fit a width on one line, not below the least. */
  private double fitting(double width) {
    double share = Math.min(1, width / Math.max(1, width(wanted())));
    return Math.max(Math.min(least, wanted()), wanted() * share);
  }

  private double width(double fontSize) {
    Text measured = new Text(letters.getText());
    measured.setFont(new Font(FACE, fontSize));
    return measured.getLayoutBounds().getWidth();
  }

  @Override
  protected void layoutChildren() {
    double set = fitting(getWidth());
    boolean broken = width(set) > getWidth() + 1;
    letters.setFont(new Font(FACE, set));
    letters.setWrappingWidth(broken ? getWidth() : 0);
    letters.setTextOrigin(broken ? VPos.TOP : VPos.BASELINE);
    letters.setLayoutX(0);
    letters.setLayoutY(broken ? 0 : getHeight() / 2 + CAPS * set / 2);
  }
}
