package blindlap.screen.friend;

import blindlap.screen.part.Caution;
import blindlap.screen.part.Fields;
import blindlap.screen.part.Look;
import blindlap.screen.part.WholeInView;
import blindlap.wording.FriendWords;
import blindlap.wording.SwapWords;
import blindlap.wording.day.Words;
import java.util.List;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;

/** Every unit with what is measured of it, and the one button that records them all. */
final class FriendUnitsView extends VBox {
  private static final double FIELD = 120;

  private final Look look;
  private final FriendUnits units;
  private final Label missing = Fields.words("", "note");

  FriendUnitsView(Look look, FriendModel model) {
    super(12);
    this.look = look;
    this.units = model.units();
    getChildren()
        .setAll(
            Fields.words(FriendWords.say("friend.units.title"), "h2"),
            Fields.words(FriendWords.say("friend.units.how")),
            new Caution(SwapWords.say("caution"), Words.of("cautions").say("short")));
    for (int unit = 0; unit < units.count(); unit++) {
      getChildren().add(unit(unit));
    }
    Button write = Fields.button(FriendWords.say("friend.write"), this::write);
    write.getStyleClass().add("next");
    write.setWrapText(true);
    write.minHeightProperty().bind(look.touch());
    Label trouble = Fields.words("", "strong");
    trouble.textProperty().bind(model.troubleProperty());
    trouble.managedProperty().bind(trouble.textProperty().isNotEmpty());
    getChildren().addAll(write, missing, trouble);
  }

  private void write() {
    List<String> open = units.missing();
    missing.setText(String.join("\n", open));
    if (open.isEmpty()) {
      units.write();
    }
  }

  private VBox unit(int unit) {
    VBox box = WholeInView.together(new VBox(4, Fields.words(units.title(unit), "strong")));
    List<String> settings = units.settings(unit);
    for (int setting = 0; setting < settings.size(); setting++) {
      box.getChildren().add(row(unit, setting, settings.get(setting)));
    }
    box.getStyleClass().add("swap-row");
    return box;
  }

  private VBox row(int unit, int setting, String name) {
    Label words = Fields.words(FriendWords.say("unit.setting", name, units.aim(unit, setting)));
    words.setMaxWidth(Double.MAX_VALUE);
    words.setMinWidth(0);
    HBox.setHgrow(words, Priority.ALWAYS);
    String title = units.title(unit) + ", " + name;
    TextField value = field(title + ", " + SwapWords.say("measured"));
    value.minWidthProperty().bind(look.px(FIELD));
    value.maxWidthProperty().bind(look.px(FIELD));
    Label outside = Fields.words("", "strong", "note");
    TextField why = field(title + ", " + SwapWords.say("reason"));
    why.setPromptText(SwapWords.say("reason.field"));
    why.textProperty().addListener((o, before, now) -> units.accept(unit, setting, now));
    VBox beyond = new VBox(4, outside, why);
    beyond.setVisible(false);
    beyond.managedProperty().bind(beyond.visibleProperty());
    value
        .textProperty()
        .addListener(
            (o, before, now) -> {
              units.measured(unit, setting, now);
              outside.setText(units.outside(unit, setting));
              beyond.setVisible(!outside.getText().isEmpty());
            });
    HBox row = new HBox(12, words, value);
    row.setAlignment(Pos.CENTER_LEFT);
    return new VBox(4, row, beyond);
  }

  private TextField field(String name) {
    TextField field = Fields.wide(new TextField());
    field.setAccessibleText(name);
    field.minHeightProperty().bind(look.touch(46));
    return field;
  }
}
