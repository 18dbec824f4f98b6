package blindlap.screen.part;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import javafx.beans.InvalidationListener;
import javafx.beans.binding.Bindings;
import javafx.beans.binding.DoubleBinding;
import javafx.geometry.HPos;
import javafx.geometry.Insets;
import javafx.geometry.VPos;
import javafx.scene.Node;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/**
 * A page: a reading column, and a margin whose notes stand beside the section they belong to. On a
 * narrow window, or with large text, the notes fall under their section.
 */
public final class PageGrid extends ScrollPane {
  private static final double READING = 744;
  private static final double MARGIN = 256;
  private static final double GAP = 40;
  private static final double SECTIONS = 44;
  // A window of 1100 less the page names at the left.
  private static final double NARROW = 1100 - 184;
  private static final double LARGE_TEXT = 1.3;

  private record Row(Region section, List<MarginNote> notes, boolean wide) {}

  private final Look look;
  private final GridPane grid = new GridPane();
  private final VBox column = new VBox();
  private final List<Row> rows = new ArrayList<>();
  private final VBox whole = new VBox();
  private boolean narrow;

  /** Above every section but the first: a gap of the grid would stand above hidden ones, too. */
  private final DoubleBinding between;

  @SuppressWarnings({"unused", "FieldCanBeLocal"}) // held so that the look can reach this page
  private final InvalidationListener watch;

  /** An empty page. */
  public PageGrid(Look look) {
    this.look = look;
    grid.getStyleClass().add("page");
    grid.hgapProperty().bind(look.px(GAP));
    between = look.px(SECTIONS);
    between.addListener((o, before, now) -> apart());
    // In a wide window the margin keeps to the reading column, and does not go to the far edge.
    DoubleBinding most = look.px(READING + GAP + MARGIN);
    grid.maxWidthProperty()
        .bind(
            Bindings.createDoubleBinding(
                () -> most.get() + grid.getInsets().getLeft() + grid.getInsets().getRight(),
                most,
                grid.insetsProperty()));
    column.getStyleClass().add("page");
    column.spacingProperty().bind(look.px(SECTIONS));
    setContent(grid);
    setFitToWidth(true);
    setHbarPolicy(ScrollBarPolicy.NEVER);
    setFocusTraversable(false);
    widthProperty().addListener((property, old, now) -> refold());
    watch = look.watch(this::refold);
  }

  /** Adds a section of the reading column with the notes beside it. */
  public void add(Region section, MarginNote... notes) {
    rows.add(new Row(section, List.of(notes), false));
    build();
  }

  /** Adds a section as wide as reading column and margin together, such as a table. */
  public void addWide(Region section) {
    rows.add(new Row(section, List.of(), true));
    build();
  }

  /** Takes everything off the page. */
  public void clear() {
    rows.clear();
    build();
  }

  /**
   * What stands above the first section from edge to edge, and goes with the page as it scrolls.
   *
   * @param bar its parent must have let go of it
   */
  void above(Region bar) {
    whole.getChildren().setAll(bar, narrow ? column : grid);
    setContent(whole);
  }

  /** Lets go of what stands above. */
  void nothingAbove() {
    whole.getChildren().clear();
    setContent(narrow ? column : grid);
  }

  /** Whether notes fall under their sections now. */
  public boolean narrow() {
    return narrow;
  }

  private void refold() {
    boolean now = getWidth() < NARROW || look.textScale() > LARGE_TEXT;
    if (now != narrow) {
      narrow = now;
      build();
    }
  }

  private void build() {
    grid.getChildren().clear();
    column.getChildren().clear();
    if (whole.getChildren().isEmpty()) {
      setContent(narrow ? column : grid);
    } else {
      whole.getChildren().set(1, narrow ? column : grid);
    }
    for (int i = 0; i < rows.size(); i++) {
      place(rows.get(i), i);
    }
    apart();
  }

  private void apart() {
    for (Node node : grid.getChildren()) {
      boolean first = Objects.equals(GridPane.getRowIndex(node), 0);
      GridPane.setMargin(node, new Insets(first ? 0 : between.get(), 0, 0, 0));
    }
  }

  private void place(Row row, int index) {
    Region section = row.section();
    if (narrow || row.wide()) {
      section.maxWidthProperty().bind(look.px(READING + GAP + MARGIN));
      if (narrow) {
        column.getChildren().add(row.notes().isEmpty() ? section : under(row));
      } else {
        put(section, 0, index, 2);
      }
      return;
    }
    section.maxWidthProperty().bind(look.px(READING));
    put(section, 0, index, 1);
    if (!row.notes().isEmpty()) {
      VBox notes = new VBox();
      notes.getChildren().setAll(row.notes());
      notes.prefWidthProperty().bind(look.px(MARGIN));
      notes.minWidthProperty().bind(look.px(MARGIN));
      notes.maxWidthProperty().bind(look.px(MARGIN));
      with(notes, section);
      put(notes, 1, index, 1);
      GridPane.setHgrow(notes, Priority.NEVER);
    }
  }

  private static VBox under(Row row) {
    VBox both = new VBox(16, row.section());
    both.getChildren().addAll(row.notes());
    with(both, row.section());
    return both;
  }

  /** A note that explains what is not shown would be a riddle. */
  private static void with(Node notes, Region section) {
    notes.visibleProperty().bind(section.managedProperty());
    notes.managedProperty().bind(section.managedProperty());
  }

  private void put(Node node, int column, int row, int span) {
    grid.add(node, column, row, span, 1);
    GridPane.setValignment(node, VPos.TOP);
    GridPane.setHalignment(node, HPos.LEFT);
    GridPane.setHgrow(node, column == 0 ? Priority.ALWAYS : Priority.NEVER);
    GridPane.setFillWidth(node, true);
  }
}
