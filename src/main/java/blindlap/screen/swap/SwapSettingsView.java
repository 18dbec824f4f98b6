package blindlap.screen.swap;

import blindlap.screen.part.ChoiceRow;
import blindlap.screen.part.Fields;
import blindlap.screen.part.Look;
import blindlap.wording.SwapWords;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Consumer;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;

/** Settings dialled anew, each with a field for the measured value; then what was really fitted. */
final class SwapSettingsView extends VBox {
  private final Look look;
  private final SwapModel model;
  private final Map<String, Label> outside = new LinkedHashMap<>();
  private final Map<String, TextField> reasons = new LinkedHashMap<>();

  SwapSettingsView(Look look, SwapModel model, SwapSheet now) {
    super(12);
    this.look = look;
    this.model = model;
    getChildren().add(new SwapHeadingView(SwapWords.say("set")));
    GridPane grid = new GridPane();
    grid.setHgap(16);
    grid.setVgap(10);
    ColumnConstraints names = new ColumnConstraints();
    names.setHgrow(Priority.ALWAYS);
    ColumnConstraints fields = new ColumnConstraints();
    fields.minWidthProperty().bind(look.px(110));
    fields.prefWidthProperty().bind(look.px(120));
    grid.getColumnConstraints().addAll(names, fields);
    int row = 0;
    for (SwapSheet.Row each : now.settings()) {
      row = row(grid, row, each);
    }
    getChildren().add(grid);
    getChildren().add(fitted(now));
    TextField note = field(SwapWords.say("note"), now.note(), model.work()::note);
    Label asked = new Label(SwapWords.say("note"));
    asked.setLabelFor(note);
    getChildren().addAll(asked, note);
    update(now);
    model.work().sheetProperty().addListener((o, before, after) -> update(after));
  }

  private int row(GridPane grid, int row, SwapSheet.Row each) {
    Label name = new Label(each.name());
    name.setWrapText(true);
    Label aim = new Label(each.aim());
    aim.getStyleClass().add("strong");
    aim.setWrapText(true);
    TextField measured =
        field(
            each.name() + ", " + SwapWords.say("measured"),
            each.measured(),
            typed -> model.work().measured(each.name(), typed));
    name.setLabelFor(measured);
    grid.addRow(row, new VBox(2, name, aim), measured);
    Label beyond = new Label();
    beyond.setWrapText(true);
    beyond.getStyleClass().addAll("strong", "waits");
    TextField reason =
        field(
            each.name() + ", " + SwapWords.say("reason"),
            each.reason(),
            why -> model.work().accept(each.name(), why));
    outside.put(each.name(), beyond);
    reasons.put(each.name(), reason);
    grid.add(new VBox(6, beyond, reason), 0, row + 1, 2, 1);
    return row + 2;
  }

  private void update(@Nullable SwapSheet now) {
    if (now == null) {
      return;
    }
    for (SwapSheet.Row each : now.settings()) {
      Label beyond = outside.get(each.name());
      TextField reason = reasons.get(each.name());
      if (beyond != null && reason != null) {
        boolean shown = !each.outside().isEmpty();
        beyond.setText(each.outside());
        beyond.setVisible(shown);
        beyond.setManaged(shown);
        reason.setVisible(shown);
        reason.setManaged(shown);
      }
    }
  }

  private VBox fitted(SwapSheet now) {
    java.util.List<ChoiceRow.Option<Integer>> options = new java.util.ArrayList<>();
    for (int i = 0; i < now.setups().size(); i++) {
      options.add(new ChoiceRow.Option<>(i, now.setups().get(i)));
    }
    ChoiceRow<Integer> row =
        new ChoiceRow<>(look, SwapWords.say("fitted"), options, 2, model.work()::fitted);
    row.show(now.fitted());
    return row;
  }

  private TextField field(String name, String text, Consumer<String> left) {
    TextField field = Fields.wide(new TextField(text));
    field.setAccessibleText(name);
    field.minHeightProperty().bind(look.touch());
    field.setOnAction(e -> left.accept(field.getText()));
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
