package blindlap.screen.swap;

import blindlap.screen.part.Fields;
import blindlap.screen.part.Look;
import blindlap.wording.SwapWords;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
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
  private final SwapWork work;
  private final Runnable next;
  private final List<Line> lines = new ArrayList<>();

  /** One setting: its row, and below it why it is ridden outside its tolerance. */
  private record Line(String name, TextField measured, HBox beyond, Label outside, TextField why) {
    Optional<Node> open() {
      if (measured.getText().isBlank()) {
        return Optional.of(measured);
      }
      return beyond.isVisible() && why.getText().isBlank() ? Optional.of(why) : Optional.empty();
    }
  }

  /**
   * @param next goes on to what is needed next
   */
  SwapSettingsView(Look look, SwapWork work, SwapSheet now, Runnable next) {
    this.look = look;
    this.work = work;
    this.next = next;
    getStyleClass().add("swap-settings");
    getChildren().add(new SwapHeadingView(SwapWords.say("set")));
    now.settings().forEach(this::line);
    show(now);
  }

  private void line(SwapSheet.Row each) {
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
    TextField measured =
        field(
            each.name() + ", " + SwapWords.say("measured"),
            each.measured(),
            typed -> work.typing(each.name(), typed),
            typed -> work.measured(each.name(), typed));
    name.setLabelFor(measured);
    measured.minWidthProperty().bind(look.px(FIELD));
    measured.maxWidthProperty().bind(look.px(FIELD));
    HBox row = row(name, aim, measured);
    row.minHeightProperty().bind(look.touch(LOW));
    row.prefHeightProperty().bind(look.touch(ROW));
    Label outside = beyond();
    TextField why = why(each);
    HBox beyond = row(outside, why);
    beyond.managedProperty().bind(beyond.visibleProperty());
    lines.add(new Line(each.name(), measured, beyond, outside, why));
    getChildren().addAll(row, beyond);
  }

  private static Label beyond() {
    Label outside = new Label();
    outside.setWrapText(true);
    outside.getStyleClass().addAll("strong", "waits", "note");
    outside.setMaxWidth(Double.MAX_VALUE);
    outside.setMinWidth(0);
    outside.setMinHeight(USE_PREF_SIZE);
    HBox.setHgrow(outside, Priority.ALWAYS);
    return outside;
  }

  private TextField why(SwapSheet.Row each) {
    TextField why =
        field(
            each.name() + ", " + SwapWords.say("reason"),
            each.reason(),
            typed -> work.accept(each.name(), typed),
            typed -> work.accept(each.name(), typed));
    why.getStyleClass().add("swap-why");
    why.setPromptText(SwapWords.say("reason.field"));
    why.prefWidthProperty().bind(look.px(FIELD + AIM));
    why.minWidthProperty().bind(look.px(FIELD + 60));
    return why;
  }

  private static HBox row(Node... parts) {
    HBox row = new HBox(16, parts);
    row.setAlignment(Pos.CENTER_LEFT);
    row.getStyleClass().add("swap-row");
    return row;
  }

  /** Shows which values lie outside. */
  void show(SwapSheet now) {
    for (Line line : lines) {
      String outside =
          now.settings().stream()
              .filter(row -> row.name().equals(line.name()))
              .map(SwapSheet.Row::outside)
              .findFirst()
              .orElse("");
      line.outside().setText(outside);
      line.beyond().setVisible(!outside.isEmpty());
    }
  }

  /** The first field that is still to be filled; empty if none is. */
  Optional<Node> open() {
    return lines.stream().map(Line::open).flatMap(Optional::stream).findFirst();
  }

  private TextField field(
      String name, String text, Consumer<String> typing, Consumer<String> left) {
    TextField field = Fields.wide(new TextField(text));
    field.setAccessibleText(name);
    field.minHeightProperty().bind(look.touch(60));
    field.maxHeightProperty().bind(look.touch(60));
    field.textProperty().addListener((o, before, now) -> typing.accept(now));
    field.setOnAction(
        e -> {
          left.accept(field.getText());
          next.run();
        });
    field
        .focusedProperty()
        .addListener(
            (o, before, now) -> {
              if (!now && field.getScene() != null) {
                left.accept(field.getText());
              }
            });
    return field;
  }
}
