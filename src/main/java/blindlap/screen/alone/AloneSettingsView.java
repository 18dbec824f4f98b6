package blindlap.screen.alone;

import blindlap.screen.part.Fields;
import blindlap.screen.part.Look;
import blindlap.screen.part.SettingFields;
import blindlap.screen.part.WholeInView;
import blindlap.wording.AloneWords;
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
final class AloneSettingsView extends VBox {
  private static final double FIELD = 104;
  private static final double HIGH = 42;

  private final Look look;
  private final SettingFields fields;

  /**
   * @param next goes on to what is needed next
   */
  AloneSettingsView(Look look, AloneModel model, AloneSheet now, Runnable next) {
    super(4);
    this.look = look;
    this.fields = new SettingFields(look.touch(HIGH), model, next);
    if (!now.settings().isEmpty()) {
      getChildren().add(Fields.words(AloneWords.say("set"), "h2"));
      now.settings().forEach(this::line);
    }
  }

  private void line(SettingRow each) {
    SettingFields.Line line = fields.add(each);
    Label name = Fields.words(each.name());
    Label aim = Fields.words(each.aim(), "strong");
    VBox words = new VBox(name, aim);
    words.setMinWidth(0);
    words.setMaxWidth(Double.MAX_VALUE);
    words.setAlignment(Pos.CENTER_LEFT);
    HBox.setHgrow(words, Priority.ALWAYS);
    TextField measured = line.measured();
    name.setLabelFor(measured);
    measured.minWidthProperty().bind(look.px(FIELD));
    measured.maxWidthProperty().bind(look.px(FIELD));
    HBox row = new HBox(12, words, measured);
    row.setAlignment(Pos.CENTER_LEFT);
    VBox beyond = line.onlyOutside(new VBox(4, line.outside(), line.why()));
    VBox all = WholeInView.together(new VBox(4, row, beyond));
    all.getStyleClass().add("swap-row");
    getChildren().add(all);
  }

  /** Shows which values lie outside. */
  void show(AloneSheet now) {
    fields.show(now.settings());
  }

  /** The first field that is still to be filled; empty if none is. */
  Optional<Node> open() {
    return fields.open();
  }
}
