package blindlap.screen.plan;

import blindlap.plot.SetupMark;
import blindlap.screen.part.Fields;
import blindlap.screen.part.Look;
import blindlap.screen.part.SetupName;
import blindlap.screen.part.SteadyBox;
import blindlap.wording.PlanWords;
import java.util.List;
import javafx.beans.InvalidationListener;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;

/**
 * The settings of all setups beside each other; only what differs has the highlighter. Where a
 * table would squeeze its columns, every setting has a few lines instead.
 */
final class PlanDifferencesView extends SteadyBox {
  /** A column below this many pixels at 100 % would break words. */
  private static final double COLUMN = 130;

  private final Look look;
  private PlanAnswerModel.Shown shown = PlanAnswerModel.Shown.NOTHING;
  private boolean folded;

  @SuppressWarnings({"unused", "FieldCanBeLocal"}) // held so that the look can reach this view
  private final InvalidationListener watch;

  PlanDifferencesView(Look look, PlanAnswerModel model) {
    super(8);
    this.look = look;
    watch = look.watch(this::refold);
    widthProperty().addListener((o, before, now) -> refold());
    model.shownProperty().addListener((o, before, now) -> show(now));
    show(model.shownProperty().get());
  }

  private void show(PlanAnswerModel.Shown now) {
    boolean same =
        now.differences().equals(shown.differences()) && now.setups().equals(shown.setups());
    shown = now;
    if (!same) {
      folded = narrow();
      build();
    }
  }

  private boolean narrow() {
    double columns = shown.setups().size() + 2.0;
    return look.stacked() || getWidth() > 0 && getWidth() / columns < COLUMN * look.textScale();
  }

  private void refold() {
    if (narrow() != folded) {
      folded = !folded;
      build();
    }
  }

  private void build() {
    getChildren().clear();
    if (shown.differences().isEmpty()) {
      return;
    }
    getChildren().add(Fields.words(PlanWords.say("head.differences"), "strong"));
    if (folded) {
      shown.differences().forEach(row -> getChildren().add(lines(row)));
    } else {
      getChildren().add(table());
    }
  }

  private Node lines(PlanDiffers.Row row) {
    VBox lines = new VBox(2);
    lines.getStyleClass().add("record-row");
    lines.getChildren().add(Fields.words(row.name(), "strong"));
    for (int i = 0; i < row.values().size(); i++) {
      lines.getChildren().add(Fields.row(name(i), value(row, i)));
    }
    lines.getChildren().add(note(row));
    return lines;
  }

  private Node name(int setup) {
    String typed = shown.setups().get(setup);
    String name =
        typed.isBlank()
            ? PlanWords.say("row.numbered", PlanWords.field("setups.one"), setup + 1)
            : typed;
    return setup < SetupMark.values().length
        ? new SetupName(look, SetupMark.of(setup), name)
        : Fields.words(name, "strong");
  }

  private static Label value(PlanDiffers.Row row, int setup) {
    Label value = Fields.words(row.values().get(setup));
    if (row.differs()) {
      value.getStyleClass().add("differs");
    }
    return value;
  }

  private static Label note(PlanDiffers.Row row) {
    return Fields.words(row.note(), row.differs() ? "strong" : "second");
  }

  private GridPane table() {
    GridPane table = new GridPane();
    int setups = shown.setups().size();
    column(table, 26);
    for (int i = 0; i < setups; i++) {
      column(table, 50.0 / setups);
    }
    column(table, 24);
    put(table, Fields.words(PlanWords.say("table.setting"), "second"), 0, 0);
    for (int i = 0; i < setups; i++) {
      put(table, name(i), i + 1, 0);
    }
    put(table, Fields.words(PlanWords.say("table.check"), "second"), setups + 1, 0);
    List<PlanDiffers.Row> rows = shown.differences();
    for (int at = 0; at < rows.size(); at++) {
      PlanDiffers.Row row = rows.get(at);
      put(table, Fields.words(row.name()), 0, at + 1);
      for (int i = 0; i < row.values().size(); i++) {
        put(table, new HBox(value(row, i)), i + 1, at + 1);
      }
      put(table, note(row), setups + 1, at + 1);
    }
    return table;
  }

  private static void column(GridPane table, double share) {
    ColumnConstraints column = new ColumnConstraints();
    column.setPercentWidth(share);
    column.setHgrow(Priority.ALWAYS);
    table.getColumnConstraints().add(column);
  }

  private static void put(GridPane table, Node content, int column, int row) {
    VBox cell = new VBox(content);
    cell.getStyleClass().add(row == 0 ? "table-top" : "table-row");
    cell.setMaxSize(Double.MAX_VALUE, Double.MAX_VALUE);
    table.add(cell, column, row);
  }
}
