package blindlap.screen.part;

import java.util.List;
import javafx.beans.property.DoubleProperty;
import javafx.beans.value.ObservableStringValue;
import javafx.scene.control.Button;

/**
 * The way from a page of the day to its phones; its words say how they stand.
 *
 * @param state such as "Phones: on, 2 connected …"; never so long that it takes another line
 * @param opens opens the page
 */
public record PhonesDoor(ObservableStringValue state, Runnable opens) {
  /** As wide as its longest words, at 100 %. */
  private static final double WIDE = 304;

  /** The same in two lines. */
  private static final double NARROW = 172;

  private static final double TWO_LINES = 60;

  /** A button on a page; each page has its own. */
  public Button button(Look look) {
    Button button = button();
    button.minHeightProperty().bind(look.touch());
    button.minWidthProperty().bind(look.px(WIDE));
    return button;
  }

  /** The same in two lines, of one size whatever it says. */
  public Button small(Look look) {
    Button button = button();
    button.setWrapText(true);
    button.getStyleClass().add("phones-door");
    for (DoubleProperty width : List.of(button.minWidthProperty(), button.maxWidthProperty())) {
      width.bind(look.px(NARROW));
    }
    for (DoubleProperty height : List.of(button.minHeightProperty(), button.maxHeightProperty())) {
      height.bind(look.px(TWO_LINES));
    }
    return button;
  }

  private Button button() {
    Button button = new Button();
    button.textProperty().bind(state);
    button.setOnAction(e -> opens.run());
    return button;
  }
}
