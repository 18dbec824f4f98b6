package blindlap.screen;

import blindlap.desk.RememberedWindow;
import blindlap.screen.part.Look;
import blindlap.screen.part.Theme;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Executor;
import javafx.beans.InvalidationListener;
import javafx.geometry.Rectangle2D;
import javafx.stage.Screen;
import javafx.stage.Stage;
import javafx.stage.WindowEvent;

/** Opens the window where and as it was left, as far as the screens of today allow. */
final class WindowPlace {
  /** What a page is drawn for; a larger screen does not make it larger. */
  static final double WIDE = 1360;

  static final double HIGH = 860;

  /** What every page can be used in. */
  static final double LEAST_WIDE = 900;

  static final double LEAST_HIGH = 600;

  /** Enough of the title bar to take hold of. */
  private static final double HOLD = 120;

  private static final double BESIDE = 32;

  private final RememberedWindow remembered;
  private final Stage stage;
  private final Look look;
  private Rectangle2D place = Rectangle2D.EMPTY;

  private WindowPlace(RememberedWindow remembered, Stage stage, Look look) {
    this.remembered = remembered;
    this.stage = stage;
    this.look = look;
  }

  /**
   * Gives the window its size, place, theme and text size, and remembers them whenever theme or
   * text change, and when it closes.
   *
   * @param later writes what is remembered, off the interface thread
   */
  static WindowPlace of(RememberedWindow remembered, Stage stage, Look look, Executor later) {
    WindowPlace window = new WindowPlace(remembered, stage, look);
    window.open(remembered.left());
    look.themeProperty().addListener((o, before, now) -> later.execute(window.keep()));
    look.textScaleProperty().addListener((o, before, now) -> later.execute(window.keep()));
    InvalidationListener moved = changed -> window.note();
    stage.xProperty().addListener(moved);
    stage.yProperty().addListener(moved);
    stage.widthProperty().addListener(moved);
    stage.heightProperty().addListener(moved);
    stage.addEventHandler(WindowEvent.WINDOW_HIDING, e -> window.keep().run());
    return window;
  }

  /** Places a second window a little below and beside the first, as large as that. */
  static void beside(Stage first, Stage second) {
    second.setMinWidth(LEAST_WIDE);
    second.setMinHeight(LEAST_HIGH);
    RememberedWindow.Left at =
        new RememberedWindow.Left(
            number(first.getX()) + BESIDE,
            number(first.getY()) + BESIDE,
            number(first.getWidth()),
            number(first.getHeight()),
            false,
            "",
            1);
    List<Rectangle2D> screens = Screen.getScreens().stream().map(Screen::getVisualBounds).toList();
    Rectangle2D place = fit(Optional.of(at), Screen.getPrimary().getVisualBounds(), screens);
    second.setX(place.getMinX());
    second.setY(place.getMinY());
    second.setWidth(place.getWidth());
    second.setHeight(place.getHeight());
  }

  private void open(Optional<RememberedWindow.Left> left) {
    left.ifPresent(this::dress);
    stage.setMinWidth(LEAST_WIDE);
    stage.setMinHeight(LEAST_HIGH);
    List<Rectangle2D> screens = Screen.getScreens().stream().map(Screen::getVisualBounds).toList();
    place = fit(left, Screen.getPrimary().getVisualBounds(), screens);
    stage.setX(place.getMinX());
    stage.setY(place.getMinY());
    stage.setWidth(place.getWidth());
    stage.setHeight(place.getHeight());
    stage.setMaximized(left.map(RememberedWindow.Left::maximised).orElse(false));
  }

  private void dress(RememberedWindow.Left left) {
    for (Theme theme : Theme.values()) {
      if (theme.name().equals(left.theme())) {
        look.themeProperty().set(theme);
      }
    }
    look.scaleText(left.textScale());
  }

  /**
   * Where the window opens.
   *
   * @param left as it was left; empty the first time
   * @param primary the screen on which it opens the first time
   * @param screens all screens without their task bars
   */
  static Rectangle2D fit(
      Optional<RememberedWindow.Left> left, Rectangle2D primary, List<Rectangle2D> screens) {
    double width = left.map(RememberedWindow.Left::width).orElse(WIDE);
    double height = left.map(RememberedWindow.Left::height).orElse(HIGH);
    if (left.isPresent()) {
      Rectangle2D bar = new Rectangle2D(left.get().x(), left.get().y(), Math.max(1, width), 1);
      for (Rectangle2D screen : screens) {
        double shown =
            Math.min(bar.getMaxX(), screen.getMaxX()) - Math.max(bar.getMinX(), screen.getMinX());
        boolean high = bar.getMinY() >= screen.getMinY() && bar.getMinY() < screen.getMaxY() - HOLD;
        if (high && shown >= HOLD) {
          return new Rectangle2D(
              bar.getMinX(),
              bar.getMinY(),
              within(width, LEAST_WIDE, screen.getWidth()),
              within(height, LEAST_HIGH, screen.getHeight()));
        }
      }
    }
    double wide = within(width, LEAST_WIDE, primary.getWidth());
    double high = within(height, LEAST_HIGH, primary.getHeight());
    return new Rectangle2D(
        primary.getMinX() + (primary.getWidth() - wide) / 2,
        primary.getMinY() + (primary.getHeight() - high) / 2,
        wide,
        high);
  }

  private static double within(double wanted, double least, double most) {
    return Math.min(Math.max(wanted, least), most);
  }

  /** Work that writes the window as it is now. */
  Runnable keep() {
    note();
    RememberedWindow.Left now =
        new RememberedWindow.Left(
            place.getMinX(),
            place.getMinY(),
            place.getWidth(),
            place.getHeight(),
            stage.isMaximized(),
            look.themeProperty().get().name(),
            look.textScale());
    return () -> remembered.keep(now);
  }

  /** The place is that of a window that does not fill its screen: it goes back there. */
  private void note() {
    Rectangle2D now =
        new Rectangle2D(
            number(stage.getX()),
            number(stage.getY()),
            Math.max(0, number(stage.getWidth())),
            Math.max(0, number(stage.getHeight())));
    boolean fills =
        stage.isMaximized()
            || Screen.getScreens().stream()
                .map(Screen::getVisualBounds)
                .anyMatch(
                    screen ->
                        now.getWidth() >= screen.getWidth()
                            && now.getHeight() >= screen.getHeight());
    if (!fills && !stage.isIconified() && stage.isShowing() && now.getWidth() > 0) {
      place = now;
    }
  }

  private static double number(double value) {
    return Double.isNaN(value) ? 0 : value;
  }
}
