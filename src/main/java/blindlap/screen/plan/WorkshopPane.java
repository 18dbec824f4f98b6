package blindlap.screen.plan;

import blindlap.screen.part.Fields;
import java.util.List;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;

/**
 * Workshop arithmetic: a line per calculation, its result beside it as soon as it can be worked
 * out.
 */
final class WorkshopPane extends VBox {
  /** Held here: bindings in both directions hold neither of their ends. */
  @SuppressWarnings({"unused", "FieldCanBeLocal"})
  private final WorkshopModel model;

  WorkshopPane(WorkshopModel model) {
    super(14);
    this.model = model;
    model.lines().forEach(line -> getChildren().add(line(line)));
  }

  /** The fields of a calculation's numbers. */
  static FlowPane inputs(WorkshopModel.Line line) {
    FlowPane row = Fields.row();
    List<String> names = line.names();
    for (int i = 0; i < names.size(); i++) {
      Label label = Fields.words(names.get(i), "note");
      TextField field = new TextField();
      field.setPrefColumnCount(6);
      field.setAccessibleText(line.title() + ": " + names.get(i));
      field.textProperty().bindBidirectional(line.inputs().get(i));
      label.setLabelFor(field);
      row.getChildren().add(new VBox(2, label, field));
    }
    return row;
  }

  private static VBox line(WorkshopModel.Line line) {
    FlowPane row = inputs(line);
    Label result = Fields.words("", "strong");
    result.textProperty().bind(line.resultProperty());
    row.getChildren().add(result);
    return new VBox(
        4,
        Fields.words(line.title(), "strong"),
        Fields.words(line.formula(), "note", "second"),
        row);
  }
}
