package blindlap.screen.swap;

import blindlap.screen.part.Look;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Consumer;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import org.jspecify.annotations.Nullable;

/** A choice where height is short: boxes that share their borders, beside what is asked. */
final class SwapChoiceView<T> extends HBox {
  /** Room for a word of what is asked. */
  private static final double LEAST = 60;

  private static final double HIGH = 60;

  private final ToggleGroup group = new ToggleGroup();
  private final Map<T, ToggleButton> boxes = new LinkedHashMap<>();

  /**
   * A choice.
   *
   * @param asked what stands beside the boxes
   * @param whole what is asked, in full, for who cannot see it
   * @param options the boxes in order, by value
   * @param least width of a box at 100 %
   * @param chosen told of each new choice
   */
  SwapChoiceView(
      Look look,
      String asked,
      String whole,
      Map<T, String> options,
      double least,
      Consumer<T> chosen) {
    spacingProperty().bind(look.px(12));
    setAlignment(Pos.CENTER_LEFT);
    Label words = new Label(asked);
    words.getStyleClass().add("strong");
    words.setWrapText(true);
    words.minWidthProperty().bind(look.px(LEAST));
    words.setMinHeight(USE_PREF_SIZE);
    HBox row = new HBox();
    row.getStyleClass().add("segments");
    HBox.setHgrow(words, Priority.ALWAYS);
    options.forEach(
        (value, name) -> {
          ToggleButton box = new ToggleButton(name);
          box.setToggleGroup(group);
          box.setWrapText(true);
          box.minHeightProperty().bind(look.touch(HIGH));
          box.minWidthProperty().bind(look.touch(least));
          box.prefWidthProperty().bind(look.touch(least));
          box.setAccessibleText(whole + ": " + name);
          // A second touch must not take the answer away unnoticed.
          box.setOnAction(
              event -> {
                boolean again = !box.isSelected();
                box.setSelected(true);
                if (!again) {
                  chosen.accept(value);
                }
              });
          boxes.put(value, box);
          row.getChildren().add(box);
        });
    getChildren().setAll(words, row);
  }

  /** Shows a choice that is already on record; null for none. Nobody is told. */
  void show(@Nullable T recorded) {
    group.selectToggle(recorded == null ? null : boxes.get(recorded));
  }

  /** True while nothing is chosen. */
  boolean open() {
    return group.getSelectedToggle() == null;
  }

  /** The first box. */
  Node first() {
    return boxes.values().iterator().next();
  }
}
