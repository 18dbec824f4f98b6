package blindlap.screen.ride;

import blindlap.screen.part.Look;
import blindlap.screen.part.PhonesDoor;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;

/** Which stint and where; beside it the way to the phones of the day, which takes no height. */
final class RideHeadView extends HBox {
  /**
   * @param phones null where no phone comes
   */
  RideHeadView(Look look, Label head, Label place, @Nullable PhonesDoor phones) {
    super(12);
    VBox words = new VBox(6, head, place);
    HBox.setHgrow(words, Priority.ALWAYS);
    words.setMinWidth(0);
    getChildren().setAll(words);
    if (phones != null) {
      getChildren().add(phones.small(look));
    }
  }
}
