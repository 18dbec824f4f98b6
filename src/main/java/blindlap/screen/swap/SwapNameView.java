package blindlap.screen.swap;

import blindlap.screen.part.Look;
import blindlap.wording.day.Shown;
import javafx.beans.InvalidationListener;
import javafx.geometry.VPos;
import javafx.scene.AccessibleRole;
import javafx.scene.layout.Region;
import javafx.scene.text.Font;
import javafx.scene.text.Text;

/**
 * The name of the setup to fit, as large as its place allows: on one line down to a least size,
 * then broken into lines of smaller words. Two setups may differ in the last word of a long name,
 * so it is cut off only where not even small words have room.
 */
final class SwapNameView extends Region {
  static final double MOST = 92;
  static final double LEAST = 72;
  private static final double WIDE = 200;
  private static final double SMALLEST = 20;
  private static final double STEP = 2;
  private static final String FACE = "Source Sans 3 Bold";
  private static final double CAPS = 0.66;
  private static final double HEIGHT = 0.86;

  private final Look look;
  private final String name;
  private final Text letters = new Text();

  @SuppressWarnings({"unused", "FieldCanBeLocal"}) // held so that the look can reach these words
  private final InvalidationListener watch;

  SwapNameView(Look look, String name) {
    this.look = look;
    this.name = Shown.text(name);
    getStyleClass().add("big-words");
    letters.getStyleClass().add("letters");
    getChildren().add(letters);
    setAccessibleRole(AccessibleRole.TEXT);
    setAccessibleText(name);
    watch = look.watch(this::requestLayout);
  }

  private double scaled(double size) {
    return size * Math.min(1.25, look.textScale());
  }

  @Override
  protected double computeMinWidth(double height) {
    return Math.min(scaled(WIDE), computePrefWidth(height));
  }

  @Override
  protected double computePrefWidth(double height) {
    return Math.ceil(size(name, scaled(MOST), 0).getWidth()) + 1;
  }

  @Override
  protected double computeMinHeight(double width) {
    return HEIGHT * scaled(LEAST);
  }

  @Override
  protected double computePrefHeight(double width) {
    return HEIGHT * scaled(MOST);
  }

  private static javafx.geometry.Bounds size(String words, double font, double width) {
    Text measured = new Text(words);
    measured.setFont(new Font(FACE, font));
    measured.setWrappingWidth(width);
    return measured.getLayoutBounds();
  }

  private static double widestWord(String words, double font) {
    double widest = 0;
    for (String word : words.split(" ")) {
      widest = Math.max(widest, size(word, font, 0).getWidth());
    }
    return widest;
  }

  @Override
  protected void layoutChildren() {
    double width = getWidth();
    double height = getHeight();
    double one = Math.min(scaled(MOST), height / HEIGHT);
    one *= Math.min(1, width / Math.max(1, size(name, one, 0).getWidth()));
    letters.setText(name);
    if (one >= Math.min(scaled(LEAST), height / HEIGHT) - 1) {
      letters.setFont(new Font(FACE, one));
      letters.setWrappingWidth(0);
      letters.setTextOrigin(VPos.BASELINE);
      letters.setLayoutY(height / 2 + CAPS * one / 2);
      return;
    }
    broken(width, height);
  }

  private void broken(double width, double height) {
    double font = scaled(LEAST);
    while (font > SMALLEST
        && (size(name, font, width).getHeight() > height || widestWord(name, font) > width)) {
      font -= STEP;
    }
    String shown = name;
    for (int end = name.length() - 1;
        end > 0 && size(shown, font, width).getHeight() > height;
        end--) {
      shown = name.substring(0, end).strip() + "…";
    }
    letters.setText(shown);
    letters.setFont(new Font(FACE, font));
    letters.setWrappingWidth(width);
    letters.setTextOrigin(VPos.TOP);
    letters.setLayoutY(Math.max(0, (height - size(shown, font, width).getHeight()) / 2));
  }

  /** True if the page shows the whole name. */
  boolean whole() {
    return letters.getText().equals(name);
  }
}
