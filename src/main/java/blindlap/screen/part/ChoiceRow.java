package blindlap.screen.part;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import javafx.beans.binding.DoubleBinding;
import javafx.scene.control.Label;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;

/**
 * One of several, in boxes of equal size whatever their words; none is chosen at the start.
 *
 * @param <T> what is chosen
 */
public final class ChoiceRow<T> extends VBox {
  /**
   * A thing to choose and its words.
   *
   * @param value what is chosen
   * @param words what stands on its box
   * @param <T> what is chosen
   */
  public record Option<T>(T value, String words) {}

  private final ToggleGroup group = new ToggleGroup();
  private final Map<T, ToggleButton> boxes = new LinkedHashMap<>();

  /**
   * A row of choices.
   *
   * @param title what is asked; empty for none
   * @param options the boxes in order
   * @param columns boxes side by side
   * @param onChosen told of each new choice
   */
  public ChoiceRow(
      Look look, String title, List<Option<T>> options, int columns, Consumer<T> onChosen) {
    super(8);
    WholeInView.together(this);
    GridPane grid = new GridPane();
    grid.getStyleClass().add("choices");
    for (int i = 0; i < columns; i++) {
      ColumnConstraints column = new ColumnConstraints();
      column.setPercentWidth(100.0 / columns);
      grid.getColumnConstraints().add(column);
    }
    for (int i = 0; i < options.size(); i++) {
      ToggleButton box = box(look, title, options.get(i), onChosen);
      boxes.put(options.get(i).value(), box);
      grid.add(box, i % columns, i / columns);
    }
    if (!title.isEmpty()) {
      Label asked = new Label(title);
      asked.getStyleClass().add("field-title");
      asked.setWrapText(true);
      getChildren().add(asked);
    }
    getChildren().add(grid);
  }

  private ToggleButton box(Look look, String title, Option<T> option, Consumer<T> onChosen) {
    ToggleButton box = new ToggleButton(option.words());
    box.setToggleGroup(group);
    box.setMaxWidth(Double.MAX_VALUE);
    box.setMaxHeight(Double.MAX_VALUE);
    box.minHeightProperty().bind(look.touch());
    box.setAccessibleText(title.isEmpty() ? option.words() : title + ": " + option.words());
    // A second touch must not take the answer away unnoticed.
    box.setOnAction(
        event -> {
          boolean again = !box.isSelected();
          box.setSelected(true);
          if (!again) {
            onChosen.accept(option.value());
          }
        });
    return box;
  }

  /** Makes the boxes at least this high, where height is short. */
  public void atLeast(DoubleBinding high) {
    boxes.values().forEach(box -> box.minHeightProperty().bind(high));
  }

  /** Shows a choice that is already on record; null for none. Nobody is told. */
  public void show(@Nullable T recorded) {
    group.selectToggle(recorded == null ? null : boxes.get(recorded));
  }
}
