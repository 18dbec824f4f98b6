package blindlap.screen.part;

import java.util.Locale;
import javafx.beans.InvalidationListener;
import javafx.beans.WeakInvalidationListener;
import javafx.beans.binding.Bindings;
import javafx.beans.binding.DoubleBinding;
import javafx.beans.property.DoubleProperty;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.SimpleDoubleProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.scene.Scene;
import javafx.stage.Screen;

/** Theme and text scale of a window, shared by its parts. */
public final class Look {
  /** Root size in pixels at 100 %. */
  public static final double ROOT = 17;

  private static final double STACKED = 1.3;
  private static final double LEAST = 0.8;
  private static final double MOST = 2;
  private static final double TOUCH = 64;
  private static final double TOUCH_INCHES = 12 / 25.4;

  private final ObjectProperty<Theme> theme = new SimpleObjectProperty<>(Theme.PAPER);
  private final DoubleProperty textScale = new SimpleDoubleProperty(1);

  /** A light look at 100 %. */
  public Look() {
    // A property that nobody reads tells of its first change only.
    theme.addListener((property, old, now) -> {});
    textScale.addListener((property, old, now) -> {});
  }

  /** The theme. */
  public ObjectProperty<Theme> themeProperty() {
    return theme;
  }

  /** The text scale, 1 for 100 %; parts are made for 0.75 to 2. */
  public DoubleProperty textScaleProperty() {
    return textScale;
  }

  /** The text scale now. */
  public double textScale() {
    return textScale.get();
  }

  /** Text of this scale, as far as parts are made for it: 0.8 to 2, in steps of a twentieth. */
  public void scaleText(double scale) {
    textScale.set(Math.max(LEAST, Math.min(MOST, Math.round(scale * 20) / 20.0)));
  }

  /** This many pixels at 100 %, growing with the text. */
  public DoubleBinding px(double atFull) {
    return textScale.multiply(atFull);
  }

  /** True where text is so large that what stands side by side stands one below the other. */
  public boolean stacked() {
    return textScale.get() > STACKED;
  }

  /** Least side of something to touch on Ride and Swap: 64 px or 12 mm, whichever is more. */
  public DoubleBinding touch() {
    double physical = TOUCH_INCHES * Screen.getPrimary().getDpi();
    return Bindings.createDoubleBinding(
        () -> Math.max(TOUCH * Math.max(1, textScale.get()), physical), textScale);
  }

  /** The same where height is short: this many pixels or 12 mm, whichever is more. */
  public DoubleBinding touch(double px) {
    double physical = TOUCH_INCHES * Screen.getPrimary().getDpi();
    return Bindings.createDoubleBinding(
        () -> Math.max(px * Math.max(1, textScale.get()), physical), textScale);
  }

  /**
   * Runs the change whenever theme or text scale change, as long as the caller keeps the returned
   * listener; a part that goes out of use goes silently.
   */
  public InvalidationListener watch(Runnable change) {
    InvalidationListener listener = observable -> change.run();
    WeakInvalidationListener weak = new WeakInvalidationListener(listener);
    theme.addListener(weak);
    textScale.addListener(weak);
    return listener;
  }

  /**
   * Gives the scene this look and keeps it so; its texts are shown safely from now on, and no arrow
   * key chooses anything in it.
   */
  public void dress(Scene scene) {
    Runnable change =
        () -> {
          scene.getStylesheets().setAll(theme.get().sheets());
          scene
              .getRoot()
              .setStyle(
                  String.format(Locale.ROOT, "-fx-font-size: %.2fpx;", ROOT * textScale.get()));
        };
    theme.addListener((property, old, now) -> change.run());
    textScale.addListener((property, old, now) -> change.run());
    scene.rootProperty().addListener((property, old, now) -> change.run());
    change.run();
    ShownTexts.keep(scene);
    ChoiceArrows.keep(scene);
  }
}
