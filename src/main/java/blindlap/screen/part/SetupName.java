package blindlap.screen.part;

import blindlap.plot.LoneMark;
import blindlap.plot.SetupMark;
import blindlap.plot.surface.Spoken;
import java.util.Locale;
import javafx.geometry.Pos;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;

/** A setup's mark and name in its ink; only on pages where the key is open. */
public final class SetupName extends HBox {
  /** A name with its mark. */
  public SetupName(Look look, SetupMark mark, String name) {
    super(8);
    PlotView picture = new PlotView(look, LoneMark.of(mark, new Spoken(name, "")));
    picture.minWidthProperty().bind(look.px(18));
    picture.prefWidthProperty().bind(look.px(18));
    picture.maxWidthProperty().bind(look.px(18));
    picture.maxHeightProperty().bind(look.px(18));
    // The name beside it says it already.
    picture.setAccessibleText("");
    Label words = new Label(name);
    words.getStyleClass().addAll("strong", "setup-" + mark.name().toLowerCase(Locale.ROOT));
    words.setWrapText(true);
    setAlignment(Pos.CENTER_LEFT);
    getChildren().setAll(picture, words);
  }
}
