package blindlap.screen.view;

import javafx.beans.InvalidationListener;
import javafx.geometry.VPos;
import javafx.scene.AccessibleRole;
import javafx.scene.layout.Region;
import javafx.scene.text.Font;
import javafx.scene.text.Text;

/**
 * The largest words of a page, bold and on one line: the code on Ride, the setup on Swap. Words
 * that are too wide are set smaller, down to a least size; the height never depends on the words.
 */
public final class BigWords extends Region {
  private static final String FACE = "Source Sans 3 Bold";
  // Cap height and a little air above and below, in em.
  private static final double CAPS = 0.66;
  private static final double HEIGHT = 0.86;

  private final Look look;
  private final double size;
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

  /** Says the words. */
  public void say(String words) {
    letters.setText(words);
    setAccessibleText(words);
    requestLayout();
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
    return HEIGHT * size * Math.min(1.25, look.textScale());
  }

  private double width(double fontSize) {
    Text measured = new Text(letters.getText());
    measured.setFont(new Font(FACE, fontSize));
    return measured.getLayoutBounds().getWidth();
  }

  @Override
  protected void layoutChildren() {
    double wanted = size * Math.min(1.25, look.textScale());
    double share = Math.min(1, getWidth() / Math.max(1, width(wanted)));
    double set = Math.max(Math.min(least, wanted), wanted * share);
    letters.setFont(new Font(FACE, set));
    letters.setLayoutX(0);
    letters.setLayoutY(getHeight() / 2 + CAPS * set / 2);
  }
}
