package blindlap.screen.part;

import java.util.List;
import java.util.function.DoubleConsumer;
import javafx.beans.InvalidationListener;
import javafx.beans.binding.DoubleBinding;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.scene.AccessibleAction;
import javafx.scene.AccessibleAttribute;
import javafx.scene.AccessibleRole;
import javafx.scene.control.Label;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseEvent;
import javafx.scene.layout.Region;
import org.jspecify.annotations.Nullable;

/**
 * A line between two end words, marked by a stroke. No ticks, numbers or handle; no stroke until it
 * is first touched. By keyboard the first arrow places the stroke at that end, further ones move
 * it. A screen reader hears one of five steps, never a number.
 *
 * <p>The value runs from 0 at the left end to 100 at the right end. It is settled, and told, when
 * the finger is lifted, or when the line is left or Enter is pressed after moving it by keyboard.
 */
public final class LineScale extends Region {
  /**
   * The words of a line scale.
   *
   * @param title what is asked
   * @param left end word at 0
   * @param right end word at 100
   * @param steps five phrases from left to right, such as "nearer to none at all"
   * @param untouched spoken while there is no stroke
   */
  public record Words(
      String title, String left, String right, List<String> steps, String untouched) {
    /** Checks the number of steps. */
    public Words {
      steps = List.copyOf(steps);
      if (steps.size() != 5) {
        throw new IllegalArgumentException("A line scale is spoken in five steps, got " + steps);
      }
    }
  }

  private static final double ZONE = 66;
  private static final double STROKE_HEIGHT = 46;
  private static final double STROKE_WIDTH = 6;
  private static final double TRACK = 2.5;

  private final Look look;
  private final Words words;
  private final DoubleConsumer onSettled;
  private final Label title = new Label();
  private final Label left = new Label();
  private final Label right = new Label();
  private final Region frame = new Region();
  private final Region track = new Region();
  private final Region stroke = new Region();
  private final ReadOnlyObjectWrapper<@Nullable Double> value = new ReadOnlyObjectWrapper<>();
  private boolean moved;
  private @Nullable DoubleBinding low;

  @SuppressWarnings({"unused", "FieldCanBeLocal"}) // held so that the look can reach this line
  private final InvalidationListener watch;

  /**
   * A line without a stroke.
   *
   * @param onSettled told the value, 0 to 100, each time it is settled
   */
  public LineScale(Look look, Words words, DoubleConsumer onSettled) {
    this.look = look;
    this.words = words;
    this.onSettled = onSettled;
    title.setText(words.title());
    left.setText(words.left());
    right.setText(words.right());
    getStyleClass().add("line-scale");
    title.getStyleClass().add("field-title");
    left.getStyleClass().add("ends");
    right.getStyleClass().add("ends");
    frame.getStyleClass().add("frame");
    track.getStyleClass().add("track");
    stroke.getStyleClass().add("stroke");
    for (Region part : List.of(title, left, right, frame, track, stroke)) {
      part.setMouseTransparent(part != frame);
    }
    getChildren().setAll(title, frame, track, stroke, left, right);
    setFocusTraversable(true);
    setAccessibleRole(AccessibleRole.SLIDER);
    watch = look.watch(this::requestLayout);
    listen();
    show();
  }

  private void listen() {
    frame.addEventHandler(MouseEvent.MOUSE_PRESSED, this::follow);
    frame.addEventHandler(MouseEvent.MOUSE_DRAGGED, this::follow);
    frame.addEventHandler(MouseEvent.MOUSE_RELEASED, event -> settle());
    addEventHandler(KeyEvent.KEY_PRESSED, this::type);
    focusedProperty()
        .addListener(
            (property, old, now) -> {
              if (!now) {
                settle();
              }
            });
  }

  private void follow(MouseEvent event) {
    requestFocus();
    move(100 * event.getX() / Math.max(1, frame.getWidth()));
    event.consume();
  }

  private void type(KeyEvent event) {
    KeyCode key = event.getCode();
    boolean taken = true;
    switch (key) {
      case LEFT, DOWN -> arrow(-1);
      case RIGHT, UP -> arrow(1);
      case PAGE_DOWN -> arrow(-10);
      case PAGE_UP -> arrow(10);
      case HOME -> move(0);
      case END -> move(100);
      case ENTER -> settle();
      default -> taken = false;
    }
    if (taken) {
      event.consume();
    }
  }

  private void arrow(int by) {
    Double now = value.get();
    if (now == null) {
      move(by < 0 ? 0 : 100);
    } else {
      move(now + by);
    }
  }

  private void move(double to) {
    value.set(Math.max(0, Math.min(100, to)));
    moved = true;
    show();
  }

  private void settle() {
    Double now = value.get();
    if (moved && now != null) {
      moved = false;
      onSettled.accept(now);
    }
  }

  /** Shows a value that is already on record; null for none. Nobody is told. */
  public void show(@Nullable Double recorded) {
    if (moved) {
      return; // a finger is on it: what it leaves there is the answer
    }
    value.set(recorded);
    show();
  }

  /** The value, 0 to 100; null while there is no stroke. */
  public ReadOnlyObjectProperty<@Nullable Double> valueProperty() {
    return value.getReadOnlyProperty();
  }

  private void show() {
    stroke.setVisible(value.get() != null);
    setAccessibleText(spoken());
    notifyAccessibleAttributeChanged(AccessibleAttribute.TEXT);
    requestLayout();
  }

  private String spoken() {
    Double now = value.get();
    String where = now == null ? words.untouched() : words.steps().get((int) Math.min(4, now / 20));
    return words.title() + ": " + where;
  }

  @Override
  public @Nullable Object queryAccessibleAttribute(
      AccessibleAttribute attribute, Object... parameters) {
    return switch (attribute) {
      case TEXT -> spoken();
      case VALUE, MIN_VALUE, MAX_VALUE -> null;
      default -> super.queryAccessibleAttribute(attribute, parameters);
    };
  }

  @Override
  public void executeAccessibleAction(AccessibleAction action, Object... parameters) {
    switch (action) {
      case INCREMENT, BLOCK_INCREMENT -> arrow(10);
      case DECREMENT, BLOCK_DECREMENT -> arrow(-10);
      default -> super.executeAccessibleAction(action, parameters);
    }
  }

  @Override
  protected double computePrefWidth(double height) {
    return 480;
  }

  @Override
  protected double computeMinHeight(double width) {
    return computePrefHeight(width);
  }

  @Override
  protected double computePrefHeight(double width) {
    return title.prefHeight(-1) + zone() + endsHeight(width);
  }

  /** Makes the part to touch this high, where height is short. */
  public void zone(DoubleBinding high) {
    low = high;
    requestLayout();
  }

  private double zone() {
    if (low != null) {
      return low.get();
    }
    return Math.max(ZONE * look.textScale(), look.touch().get());
  }

  // End words stand side by side where they fit, else one below the other.
  private double endsHeight(double width) {
    double line = left.prefHeight(-1);
    return stacked(width) ? 2 * line : line;
  }

  private boolean stacked(double width) {
    return width > 0 && left.prefWidth(-1) + right.prefWidth(-1) + 24 > width;
  }

  @Override
  protected void layoutChildren() {
    double width = getWidth();
    double head = title.prefHeight(-1);
    double zone = zone();
    title.resizeRelocate(0, 0, width, head);
    frame.resizeRelocate(0, head, width, zone);
    double middle = head + zone / 2;
    double thick = look.themeProperty().get() == Theme.SUNLIGHT ? 4 : TRACK;
    track.resizeRelocate(0, Math.round(middle - thick / 2), width, thick);
    double high = STROKE_HEIGHT * look.textScale();
    double wide = STROKE_WIDTH * look.textScale();
    Double now = value.get();
    double at = (now == null ? 0 : now) / 100 * width;
    stroke.resizeRelocate(at - wide / 2, middle - high / 2, wide, high);
    double line = left.prefHeight(-1);
    double below = head + zone;
    double room = Math.min(width, right.prefWidth(-1));
    left.resizeRelocate(0, below, Math.min(width, left.prefWidth(-1)), line);
    right.resizeRelocate(width - room, below + (stacked(width) ? line : 0), room, line);
  }
}
