package blindlap.screen.phones;

import blindlap.screen.part.Fields;
import blindlap.screen.part.Look;
import blindlap.screen.part.PlotView;
import blindlap.session.day.PhoneRole;
import blindlap.wording.day.PhonesWords;
import java.util.Optional;
import javafx.geometry.Pos;
import javafx.scene.control.Label;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;

/**
 * A code to scan at arm's length, with what it says below it. Its place is kept while there is
 * none.
 */
final class PhonesCodeView extends VBox {
  /** At 100 %; 74 mm at 96 dots an inch. */
  static final double SIDE = 280;

  /** The address takes so many lines at most. */
  private static final double ADDRESS = 84;

  private final Look look;
  private final StackPane place = new StackPane();
  private final Label address = new Label();
  private PhonesShown.@Nullable Code drawn;

  PhonesCodeView(Look look, PhoneRole role) {
    super(6);
    this.look = look;
    getStyleClass().add("phones-code");
    Label title = Fields.words(PhonesWords.say("page.code." + role), "field-title");
    place.getStyleClass().add("phones-place");
    for (var side :
        java.util.List.of(
            place.minWidthProperty(),
            place.prefWidthProperty(),
            place.maxWidthProperty(),
            place.minHeightProperty(),
            place.prefHeightProperty(),
            place.maxHeightProperty(),
            address.minWidthProperty(),
            address.prefWidthProperty(),
            address.maxWidthProperty())) {
      side.bind(look.px(SIDE));
    }
    address.setWrapText(true);
    address.setAlignment(Pos.TOP_LEFT);
    address.getStyleClass().addAll("note", "second");
    address.minHeightProperty().bind(look.px(ADDRESS));
    setMinWidth(Region.USE_PREF_SIZE);
    getChildren().setAll(title, place, address);
    show(Optional.empty());
  }

  /** Shows a code, or that there is none. */
  void show(Optional<PhonesShown.Code> now) {
    PhonesShown.Code code = now.orElse(null);
    if (code == null) {
      drawn = null;
      Label none = Fields.words(PhonesWords.say("page.code.none"), "second");
      place.getChildren().setAll(none);
      address.setText("");
    } else if (!code.equals(drawn)) {
      drawn = code;
      place.getChildren().setAll(new PlotView(look, code.drawing()));
      address.setText(code.address());
    }
  }
}
