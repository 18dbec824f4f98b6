package blindlap.screen.swap;

import blindlap.screen.part.Look;
import blindlap.screen.part.SettingFields;
import blindlap.wording.SwapWords;
import blindlap.wording.day.SettingRow;
import java.util.Optional;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;

/** Settings dialled anew, each with a field for the measured value. */
final class SwapSettingsView extends VBox {
  private static final double ROW = 72;
  private static final double LOW = 66;
  private static final double FIELD = 104;
  private static final double AIM = 118;

  private final Look look;
  private final SettingFields fields;

  /**
   * @param next goes on to what is needed next
   */
  SwapSettingsView(Look look, SwapWork work, SwapSheet now, Runnable next) {
    this.look = look;
    this.fields = new SettingFields(look.touch(60), work, next);
    getStyleClass().add("swap-settings");
    getChildren().add(new SwapHeadingView(SwapWords.say("set")));
    now.settings().forEach(this::line);
  }

  private void line(SettingRow each) {
    SettingFields.Line line = fields.add(each);
    Label name = new Label(each.name());
    name.setWrapText(true);
    HBox.setHgrow(name, Priority.ALWAYS);
    name.setMaxWidth(Double.MAX_VALUE);
    name.setMinWidth(0);
    Label aim = new Label(each.aim());
    aim.getStyleClass().add("strong");
    aim.setWrapText(true);
    aim.minWidthProperty().bind(look.px(AIM));
    aim.maxWidthProperty().bind(look.px(AIM));
    TextField measured = line.measured();
    name.setLabelFor(measured);
    measured.minWidthProperty().bind(look.px(FIELD));
    measured.maxWidthProperty().bind(look.px(FIELD));
    measured.maxHeightProperty().bind(look.touch(60));
    HBox row = row(name, aim, measured);
    row.minHeightProperty().bind(look.touch(LOW));
    row.prefHeightProperty().bind(look.touch(ROW));
    Label outside = line.outside();
    outside.getStyleClass().add("waits");
    outside.setMaxWidth(Double.MAX_VALUE);
    outside.setMinWidth(0);
    HBox.setHgrow(outside, Priority.ALWAYS);
    TextField why = line.why();
    why.getStyleClass().add("swap-why");
    why.maxHeightProperty().bind(look.touch(60));
    why.prefWidthProperty().bind(look.px(FIELD + AIM));
    why.minWidthProperty().bind(look.px(FIELD + 60));
    getChildren().addAll(row, line.onlyOutside(row(outside, why)));
  }

  private static HBox row(Node... parts) {
    HBox row = new HBox(16, parts);
    row.setAlignment(Pos.CENTER_LEFT);
    row.getStyleClass().add("swap-row");
    return row;
  }

  /** Shows which values lie outside. */
  void show(SwapSheet now) {
    fields.show(now.settings());
  }

  /** The first field that is still to be filled; empty if none is. */
  Optional<Node> open() {
    return fields.open();
  }
}
