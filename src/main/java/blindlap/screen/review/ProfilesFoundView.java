package blindlap.screen.review;

import static blindlap.screen.part.ReviewParts.lines;
import static blindlap.screen.part.ReviewParts.words;

import blindlap.screen.part.Look;
import blindlap.wording.ProfilesFoundWords;
import java.util.List;
import javafx.beans.InvalidationListener;
import javafx.scene.Node;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;

/**
 * Who should look at what: a row a profile, with the finding's own sentences. With large text name,
 * measures and sentences stand below one another.
 */
final class ProfilesFoundView extends VBox {
  private static final double[] SHARES = {20, 20, 60};
  private static final double LARGE_TEXT = 1.3;

  private final Look look;
  private final ProfilesFoundWords words;
  private boolean stacked;

  @SuppressWarnings({"unused", "FieldCanBeLocal"}) // held so that the look can reach this view
  private final InvalidationListener watch;

  ProfilesFoundView(Look look, ProfilesFoundWords words) {
    this.look = look;
    this.words = words;
    setSpacing(10);
    setId("profiles-found");
    watch = look.watch(this::refold);
    stacked = large();
    build();
  }

  private boolean large() {
    return look.textScale() > LARGE_TEXT;
  }

  private void refold() {
    if (stacked != large()) {
      stacked = large();
      build();
    }
  }

  private void build() {
    getChildren()
        .setAll(
            words(ProfilesFoundWords.title(), "h2"),
            stacked ? stack() : grid(),
            words(ProfilesFoundWords.note(), "note", "second"));
  }

  private VBox stack() {
    VBox rows = new VBox();
    for (ProfilesFoundWords.Row row : words.rows()) {
      VBox box = new VBox(6, name(row), words(row.measures(), "note"), lines(row.sentences()));
      box.getStyleClass().add("record-row");
      rows.getChildren().add(box);
    }
    return rows;
  }

  private GridPane grid() {
    GridPane grid = new GridPane();
    for (double share : SHARES) {
      ColumnConstraints column = new ColumnConstraints();
      column.setPercentWidth(share);
      column.setHgrow(Priority.ALWAYS);
      grid.getColumnConstraints().add(column);
    }
    List<String> heads = ProfilesFoundWords.heads();
    for (int i = 0; i < heads.size(); i++) {
      put(grid, words(heads.get(i), "second"), i, 0, "table-head");
    }
    List<ProfilesFoundWords.Row> rows = words.rows();
    for (int i = 0; i < rows.size(); i++) {
      put(grid, name(rows.get(i)), 0, i + 1, "table-row");
      put(grid, words(rows.get(i).measures()), 1, i + 1, "table-row");
      put(grid, lines(rows.get(i).sentences()), 2, i + 1, "table-row");
    }
    return grid;
  }

  private static VBox name(ProfilesFoundWords.Row row) {
    VBox name = new VBox(2, words(row.name(), "strong"));
    if (!row.mark().isEmpty()) {
      name.getChildren().add(words(row.mark(), "note"));
    }
    return name;
  }

  private static void put(GridPane grid, Node content, int column, int row, String style) {
    VBox cell = new VBox(content);
    cell.getStyleClass().add(style);
    cell.setMaxSize(Double.MAX_VALUE, Double.MAX_VALUE);
    grid.add(cell, column, row);
  }
}
