package blindlap.screen.part;

import java.util.List;
import java.util.function.IntConsumer;
import javafx.beans.binding.DoubleBinding;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;

/**
 * Counts from 0. Nothing is given at the start, which is not the same as 0: the first "fewer" gives
 * 0, the first "more" gives 1.
 */
public final class Counter extends VBox {
  /**
   * The words of a counter.
   *
   * @param title what is counted
   * @param fewer spoken name of the left button
   * @param more spoken name of the right button
   * @param notGiven spoken while nothing is given
   */
  public record Words(String title, String fewer, String more, String notGiven) {}

  private static final String OPEN = "–";

  private final Words words;
  private final Label shown = new Label(OPEN);
  private final ReadOnlyObjectWrapper<@Nullable Integer> value = new ReadOnlyObjectWrapper<>();
  private final IntConsumer onChange;
  private final Label title;
  private final Button fewer;
  private final Button more;

  /**
   * A counter with nothing given.
   *
   * @param onChange told of each new value
   */
  public Counter(Look look, Words words, IntConsumer onChange) {
    this.words = words;
    this.onChange = onChange;
    getStyleClass().add("counter");
    WholeInView.together(this);
    title = new Label(words.title());
    title.getStyleClass().add("field-title");
    title.setWrapText(true);
    shown.getStyleClass().addAll("value", "open");
    shown.setMaxWidth(Double.MAX_VALUE);
    shown.setAlignment(Pos.CENTER);
    HBox.setHgrow(shown, Priority.ALWAYS);
    fewer = button(look, "−", words.fewer(), -1);
    more = button(look, "+", words.more(), 1);
    HBox row = new HBox(12, fewer, shown, more);
    row.setAlignment(Pos.CENTER);
    getChildren().setAll(title, row);
    show();
  }

  /** Puts the title beside the buttons, which are this high, where height is short. */
  public void beside(DoubleBinding high) {
    for (Button button : List.of(fewer, more)) {
      button.minHeightProperty().bind(high);
    }
    shown.setMaxWidth(USE_PREF_SIZE);
    title.setMaxWidth(Double.MAX_VALUE);
    HBox.setHgrow(title, Priority.ALWAYS);
    HBox row = new HBox(12, title, fewer, shown, more);
    row.setAlignment(Pos.CENTER_LEFT);
    getChildren().setAll(row);
  }

  private Button button(Look look, String sign, String name, int step) {
    Button button = new Button(sign);
    button.getStyleClass().add("sign");
    button.minWidthProperty().bind(look.touch().multiply(88.0 / 64));
    button.minHeightProperty().bind(look.touch().multiply(76.0 / 64));
    button.setAccessibleText(words.title() + ": " + name);
    button.setOnAction(event -> step(step));
    return button;
  }

  private void step(int by) {
    Integer now = value.get();
    int next = Math.max(0, (now == null ? 0 : now) + by);
    if (now == null || next != now) {
      value.set(next);
      show();
      onChange.accept(next);
    }
  }

  /** Shows a value that is already on record; null for none. Nobody is told. */
  public void show(@Nullable Integer recorded) {
    value.set(recorded);
    show();
  }

  /** The value; null while none is given. */
  public ReadOnlyObjectProperty<@Nullable Integer> valueProperty() {
    return value.getReadOnlyProperty();
  }

  private void show() {
    Integer now = value.get();
    shown.setText(now == null ? OPEN : now.toString());
    shown.setAccessibleText(words.title() + ": " + (now == null ? words.notGiven() : now));
    shown.getStyleClass().remove("open");
    if (now == null) {
      shown.getStyleClass().add("open");
    }
  }
}
