package blindlap.screen.review;

import static blindlap.screen.part.ReviewParts.words;

import blindlap.screen.part.Look;
import blindlap.screen.part.MarginNote;
import blindlap.screen.part.PageGrid;
import blindlap.screen.part.PlotView;
import blindlap.wording.WhereSectorWords;
import blindlap.wording.WhereWords;
import java.util.ArrayList;
import java.util.List;
import javafx.scene.Node;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** Where on the trail the difference arises: the sentence, the picture, a row a sector. */
final class WhereView {
  private static final double[] SHARES = {26, 18, 18, 38};

  private final Look look;
  private final WhereReview view;

  WhereView(Look look, WhereReview view) {
    this.look = look;
    this.view = view;
  }

  void addTo(PageGrid page) {
    VBox head = new VBox(10, words(WhereWords.title(), "h2"), words(view.headline(), "lead"));
    head.setId("where");
    view.line()
        .ifPresent(
            line ->
                head.getChildren()
                    .addAll(words(view.pictured(), "strong"), new PlotView(look, line)));
    page.add(head, notes());
    if (!view.rows().isEmpty()) {
      page.addWide(table());
    }
  }

  private MarginNote[] notes() {
    List<MarginNote> notes = new ArrayList<>();
    note(notes, "how", view.how());
    note(notes, "worth", view.worth());
    note(notes, "recorder", view.recorder().stream().toList());
    return notes.toArray(new MarginNote[0]);
  }

  private static void note(List<MarginNote> notes, String key, List<String> lines) {
    if (!lines.isEmpty()) {
      notes.add(new MarginNote(WhereWords.say(key), String.join(" ", lines)));
    }
  }

  private GridPane table() {
    GridPane table = new GridPane();
    table.setId("where-sectors");
    for (double share : SHARES) {
      ColumnConstraints column = new ColumnConstraints();
      column.setPercentWidth(share);
      column.setHgrow(Priority.ALWAYS);
      table.getColumnConstraints().add(column);
    }
    for (int i = 0; i < SHARES.length; i++) {
      put(table, words(view.columns().get(i), "second"), i, 0, "table-head");
    }
    for (int row = 0; row < view.rows().size(); row++) {
      add(table, view.rows().get(row), row + 1);
    }
    return table;
  }

  private void add(GridPane table, WhereReview.Row row, int at) {
    WhereSectorWords.Row words = row.words();
    put(table, both(words.name(), words.under()), 0, at, "table-row");
    Region interval =
        row.interval().<Region>map(drawing -> new PlotView(look, drawing)).orElseGet(Region::new);
    put(table, interval, 1, at, "table-row");
    put(table, both(words.difference(), words.limits()), 2, at, "table-row");
    VBox says = new VBox(2, words(words.answer(), "strong"));
    if (!words.evidence().isEmpty()) {
      says.getChildren().add(words(words.evidence(), "note"));
    }
    put(table, says, 3, at, "table-row");
  }

  private static VBox both(String strong, String note) {
    VBox both = new VBox(2);
    if (!strong.isEmpty()) {
      both.getChildren().addAll(words(strong, "strong"), words(note, "note"));
    }
    return both;
  }

  private static void put(GridPane table, Node content, int column, int row, String style) {
    VBox cell = new VBox(content);
    cell.getStyleClass().add(style);
    cell.setMaxSize(Double.MAX_VALUE, Double.MAX_VALUE);
    table.add(cell, column, row);
  }
}
