package blindlap.screen.plan;

import blindlap.plan.DayAnswer;
import blindlap.plot.surface.Drawing;
import blindlap.screen.part.Fields;
import blindlap.screen.part.Look;
import blindlap.screen.part.PlotView;
import blindlap.screen.part.SteadyBox;
import blindlap.wording.DivideWords;
import java.util.List;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.RadioButton;
import javafx.scene.control.TitledPane;
import javafx.scene.control.ToggleGroup;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.VBox;

/**
 * How to spend the day: a row for each division, with the day to scale and what it can show; where
 * a table would break words, one under the other.
 */
final class PlanDivideView extends SteadyBox {
  private static final double[] COLUMNS = {19, 27, 13, 21, 20};

  /** Below this many pixels at 100 % a table would break words. */
  private static final double TABLE = 760;

  private final Look look;
  private final PlanDivideModel model;
  private final TitledPane pane;
  private final TitledPane others;
  private final VBox rows = new VBox(12);
  private final VBox more = new VBox(12);
  private ToggleGroup group = new ToggleGroup();
  private boolean narrow;

  PlanDivideView(Look look, PlanDivideModel model) {
    super(8);
    this.look = look;
    this.model = model;
    Label words = Fields.words("", "note");
    words.setId("divide-words");
    words.textProperty().bind(model.wordsProperty());
    words.managedProperty().bind(words.textProperty().isNotEmpty());
    this.others = PlanFieldsView.fold("divide.others", more);
    this.pane = PlanFieldsView.fold("divide.title", new VBox(10, words, rows));
    pane.setId("divide");
    pane.expandedProperty().bindBidirectional(model.openProperty());
    getChildren().setAll(pane);
    model.shownProperty().addListener((o, before, now) -> show(now));
    widthProperty()
        .addListener(
            (o, before, now) -> {
              if (narrow() != narrow) {
                show(model.shownProperty().get());
              }
            });
    show(model.shownProperty().get());
  }

  private boolean narrow() {
    return look.stacked() || getWidth() > 0 && getWidth() < TABLE * look.textScale();
  }

  private void show(PlanDivisions now) {
    boolean held = focusWithin();
    narrow = narrow();
    group = new ToggleGroup();
    rows.getChildren().clear();
    more.getChildren().clear();
    if (now.rows().isEmpty()) {
      return;
    }
    rows.getChildren().add(Fields.words(now.day(), "note", "second"));
    rows.getChildren().add(table(now.rows().subList(0, now.own())));
    if (now.own() < now.rows().size()) {
      more.getChildren().add(table(now.rows().subList(now.own(), now.rows().size())));
      rows.getChildren().add(others);
    }
    now.notes().forEach(note -> rows.getChildren().add(Fields.words(note, "note")));
    if (held && group.getSelectedToggle() instanceof RadioButton chosen) {
      chosen.requestFocus();
    }
  }

  private boolean focusWithin() {
    Node owner = getScene() == null ? null : getScene().getFocusOwner();
    for (Node node = owner; node != null; node = node.getParent()) {
      if (node == this) {
        return true;
      }
    }
    return false;
  }

  private Node table(List<PlanDivisions.Row> divisions) {
    if (narrow) {
      VBox all = new VBox(16);
      divisions.forEach(row -> all.getChildren().add(stacked(row)));
      return all;
    }
    GridPane table = new GridPane();
    List<String> heads = DivideWords.heads();
    for (int i = 0; i < COLUMNS.length; i++) {
      ColumnConstraints column = new ColumnConstraints();
      column.setPercentWidth(COLUMNS[i]);
      table.getColumnConstraints().add(column);
      put(table, i, 0, "table-head", Fields.words(heads.get(i), "second"));
    }
    String rule = "";
    int at = 1;
    for (PlanDivisions.Row row : divisions) {
      Label title = Fields.words(row.rule(), "note", "second");
      title.setVisible(!row.rule().equals(rule));
      title.setManaged(title.isVisible());
      rule = row.rule();
      String style = row.chosen() ? "divide-chosen" : "table-row";
      put(table, 0, at, style, title, choice(row));
      put(table, 1, at, style, plot(row.shape()), Fields.words(row.cells().get(1), "note"));
      put(table, 2, at, style, Fields.words(row.cells().get(2)));
      put(table, 3, at, style, shows(row));
      put(table, 4, at, style, Fields.words(row.cells().get(4), "note"));
      at++;
    }
    return table;
  }

  /** What is no figure of the formula says so in words under its bar. */
  private Node[] shows(PlanDivisions.Row row) {
    return row.division().source() == DayAnswer.Source.FORMULA
        ? new Node[] {plot(row.bar())}
        : new Node[] {plot(row.bar()), Fields.words(row.cells().get(3), "note")};
  }

  private VBox stacked(PlanDivisions.Row row) {
    VBox box =
        new VBox(
            4,
            choice(row),
            Fields.words(row.rule(), "note", "second"),
            plot(row.shape()),
            plot(row.bar()),
            Fields.words(row.line(), "note"));
    box.getStyleClass().add(row.chosen() ? "divide-chosen" : "table-row");
    return box;
  }

  private Node plot(Drawing drawing) {
    return new PlotView(look, drawing);
  }

  private RadioButton choice(PlanDivisions.Row row) {
    RadioButton button = new RadioButton(row.cells().get(0));
    button.setWrapText(true);
    button.setToggleGroup(group);
    button.setSelected(row.chosen());
    button.setAccessibleText(row.line());
    button.setId(
        "divide-"
            + row.division().plan().protocol().name()
            + "-"
            + row.division().stints()
            + "-"
            + row.division().scored());
    button.setOnAction(e -> model.take(row.division()));
    return button;
  }

  private static void put(GridPane table, int column, int row, String style, Node... content) {
    VBox cell = new VBox(4, content);
    cell.getStyleClass().add(style);
    cell.setMaxSize(Double.MAX_VALUE, Double.MAX_VALUE);
    cell.setAlignment(row == 0 ? Pos.BOTTOM_LEFT : Pos.TOP_LEFT);
    table.add(cell, column, row);
  }
}
