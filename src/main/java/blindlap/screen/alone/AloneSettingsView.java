package blindlap.screen.alone;

import blindlap.screen.part.Fields;
import blindlap.screen.part.Look;
import blindlap.screen.part.WholeInView;
import blindlap.wording.AloneWords;
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
final class AloneSettingsView extends VBox {
  private static final double FIELD = 104;
  private static final double HIGH = 42;

  private final Look look;
  private final AloneModel model;
  private final Runnable next;
  private final List<Line> lines = new ArrayList<>();

  /** One setting: its row, and below it why it is ridden outside its tolerance. */
  private record Line(String name, TextField measured, VBox beyond, Label outside, TextField why) {
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
  AloneSettingsView(Look look, AloneModel model, AloneSheet now, Runnable next) {
    super(4);
    this.look = look;
    this.model = model;
    this.next = next;
    if (now.settings().isEmpty()) {
      return;
    }
    Label head = Fields.words(AloneWords.say("set"), "h2");
    getChildren().add(head);
    now.settings().forEach(this::line);
    show(now);
  }

  private void line(AloneSheet.Row each) {
    Label name = Fields.words(each.name());
    Label aim = Fields.words(each.aim(), "strong");
    VBox words = new VBox(name, aim);
    words.setMinWidth(0);
    words.setMaxWidth(Double.MAX_VALUE);
    words.setAlignment(Pos.CENTER_LEFT);
    HBox.setHgrow(words, Priority.ALWAYS);
    TextField measured =
        field(
            each.name() + ", " + SwapWords.say("measured"),
            each.measured(),
            typed -> model.typing(each.name(), typed),
            typed -> model.measured(each.name(), typed));
    name.setLabelFor(measured);
    measured.minWidthProperty().bind(look.px(FIELD));
    measured.maxWidthProperty().bind(look.px(FIELD));
    HBox row = new HBox(12, words, measured);
    row.setAlignment(Pos.CENTER_LEFT);
    Label outside = Fields.words("", "strong", "note");
    TextField why =
        field(
            each.name() + ", " + SwapWords.say("reason"),
            each.reason(),
            typed -> {},
            typed -> model.accept(each.name(), typed));
    why.setPromptText(SwapWords.say("reason.field"));
    VBox beyond = new VBox(4, outside, why);
    beyond.managedProperty().bind(beyond.visibleProperty());
    lines.add(new Line(each.name(), measured, beyond, outside, why));
    VBox all = WholeInView.together(new VBox(4, row, beyond));
    all.getStyleClass().add("swap-row");
    getChildren().add(all);
  }

  private TextField field(
      String name, String text, Consumer<String> typing, Consumer<String> left) {
    TextField field = Fields.wide(new TextField(text));
    field.setAccessibleText(name);
    field.minHeightProperty().bind(look.touch(HIGH));
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

  /** Shows which values lie outside. */
  void show(AloneSheet now) {
    for (Line line : lines) {
      String outside =
          now.settings().stream()
              .filter(row -> row.name().equals(line.name()))
              .map(AloneSheet.Row::outside)
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
}
