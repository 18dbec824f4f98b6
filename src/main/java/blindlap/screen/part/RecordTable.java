package blindlap.screen.part;

import static blindlap.screen.part.ReviewParts.words;

import java.util.ArrayList;
import java.util.List;
import javafx.beans.InvalidationListener;
import javafx.scene.Node;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;

/**
 * A short table of words. With large text a row becomes a few lines, each with the name of its
 * column, so that nothing is squeezed.
 */
public final class RecordTable extends VBox {
  /** A row; made again whenever the size of the text changes. */
  public interface Row {
    /** As many cells as there are columns. */
    List<Node> cells();

    /** The same below one another. */
    List<Node> stacked();
  }

  private static final double LARGE_TEXT = 1.3;

  private final Look look;
  private final double[] shares;
  private final List<String> heads;
  private final List<? extends Row> rows;
  private boolean stacked;

  @SuppressWarnings({"unused", "FieldCanBeLocal"}) // held so that the look can reach this table
  private final InvalidationListener watch;

  /**
   * @param shares width of each column in per cent
   * @param heads names of the columns; none for names and values side by side
   * @param rows cells, as many a row as there are heads
   */
  public RecordTable(Look look, double[] shares, List<String> heads, List<List<String>> rows) {
    this(heads, look, shares, rows.stream().map(row -> new Words(heads, row)).toList());
  }

  /**
   * @param shares width of each column in per cent
   * @param heads names of the columns
   */
  public RecordTable(List<String> heads, Look look, double[] shares, List<? extends Row> rows) {
    this.look = look;
    this.shares = shares.clone();
    this.heads = List.copyOf(heads);
    this.rows = List.copyOf(rows);
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
    if (stacked) {
      getChildren().setAll(rows.stream().map(RecordTable::stack).toList());
    } else {
      getChildren().setAll(grid());
    }
  }

  private static Node stack(Row row) {
    VBox lines = new VBox(2);
    lines.getStyleClass().add("record-row");
    lines.getChildren().setAll(row.stacked());
    return lines;
  }

  private GridPane grid() {
    GridPane grid = new GridPane();
    for (double share : shares) {
      ColumnConstraints column = new ColumnConstraints();
      column.setPercentWidth(share);
      column.setHgrow(Priority.ALWAYS);
      grid.getColumnConstraints().add(column);
    }
    for (int i = 0; i < heads.size(); i++) {
      put(grid, words(heads.get(i), "second"), i, 0, "table-head");
    }
    for (int row = 0; row < rows.size(); row++) {
      List<Node> cells = rows.get(row).cells();
      for (int i = 0; i < cells.size(); i++) {
        put(grid, cells.get(i), i, row + 1, "table-row");
      }
    }
    return grid;
  }

  private static void put(GridPane grid, Node content, int column, int row, String style) {
    VBox cell = new VBox(content);
    cell.getStyleClass().add(style);
    cell.setMaxSize(Double.MAX_VALUE, Double.MAX_VALUE);
    grid.add(cell, column, row);
  }

  private record Words(List<String> heads, List<String> row) implements Row {
    @Override
    public List<Node> cells() {
      return row.stream().<Node>map(cell -> words(cell)).toList();
    }

    @Override
    public List<Node> stacked() {
      List<Node> lines = new ArrayList<>();
      lines.add(words(row.get(0), "strong"));
      for (int i = 1; i < row.size(); i++) {
        if (!row.get(i).isEmpty()) {
          String head = heads.isEmpty() ? "" : heads.get(i) + ": ";
          lines.add(words(head + row.get(i), "note"));
        }
      }
      return lines;
    }
  }
}
