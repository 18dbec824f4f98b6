package blindlap.screen.review;

import static blindlap.screen.part.ReviewParts.WORDS;
import static blindlap.screen.part.ReviewParts.h2;
import static blindlap.screen.part.ReviewParts.words;

import blindlap.plot.surface.Drawing;
import blindlap.screen.part.Look;
import blindlap.screen.part.MarginNote;
import blindlap.screen.part.PageGrid;
import blindlap.screen.part.PlotView;
import blindlap.wording.TrendWords;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.geometry.HPos;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import javafx.scene.text.TextAlignment;

/**
 * What a steps day found, in place of the rows of two setups: every stint by its level with the
 * trend, whether the middle is better, every level; beside it what may lie beyond, and every pair.
 */
final class LevelsView {
  private static final double[] SHARES = {16, 20, 24, 40};

  private static final double PAIRS = 320;

  private final Look look;
  private final TrendWords words;

  LevelsView(Look look, TrendWords words) {
    this.look = look;
    this.words = words;
  }

  /** Adds it; what follows from the day, such as a next comparison, goes under the levels. */
  void addTo(PageGrid page, Optional<Drawing> drawing) {
    VBox section = new VBox(10, h2("picture.levels"));
    section.setId("levels");
    drawing.ifPresent(d -> section.getChildren().add(new PlotView(look, d)));
    section
        .getChildren()
        .addAll(
            words(WORDS.say("levels.each", words.perUnit())),
            new VBox(2, words(words.bendTitle(), "strong"), words(words.bend())));
    if (!words.levels().isEmpty()) {
      section.getChildren().addAll(levels(), words(WORDS.say("levels.note"), "note", "second"));
    }
    page.add(section, notes());
  }

  private MarginNote[] notes() {
    List<MarginNote> notes = new ArrayList<>();
    words
        .beyondTitle()
        .ifPresent(title -> notes.add(new MarginNote(title, words.beyond().orElse(""))));
    if (!words.pairs().isEmpty()) {
      notes.add(new MarginNote(WORDS.say("levels.pairs"), pairs(), words.pairsNote()));
    }
    notes.add(new MarginNote(WORDS.say("picture.note"), WORDS.say("picture.note.levels")));
    return notes.toArray(new MarginNote[0]);
  }

  private GridPane levels() {
    GridPane table = new GridPane();
    table.setId("level-means");
    for (double share : SHARES) {
      ColumnConstraints column = new ColumnConstraints();
      column.setPercentWidth(share);
      table.getColumnConstraints().add(column);
    }
    int row = 0;
    cells(table, row++, "table-head", "levels.level", "levels.stints", "levels.mean", "levels.95");
    for (TrendWords.Level level : words.levels()) {
      cell(table, words(level.name(), "strong"), 0, row, "table-row");
      cell(table, words(level.stints()), 1, row, "table-row");
      cell(table, words(level.mean()), 2, row, "table-row");
      cell(table, words(level.interval()), 3, row++, "table-row");
    }
    return table;
  }

  private static void cells(GridPane table, int row, String style, String... keys) {
    for (int i = 0; i < keys.length; i++) {
      cell(table, words(WORDS.say(keys[i]), "second"), i, row, style);
    }
  }

  private GridPane pairs() {
    GridPane table = new GridPane();
    table.setId("level-pairs");
    // Under its section, as in a narrow window, both columns stay near one another.
    table.maxWidthProperty().bind(look.px(PAIRS));
    ColumnConstraints levels = new ColumnConstraints();
    levels.setPercentWidth(36);
    ColumnConstraints said = new ColumnConstraints();
    said.setPercentWidth(64);
    table.getColumnConstraints().addAll(levels, said);
    int row = 0;
    for (TrendWords.Pair pair : words.pairs()) {
      cell(table, words(pair.levels(), "body"), 0, row, "table-row");
      Label answer =
          pair.shown() ? words(pair.said(), "note", "strong") : words(pair.said(), "body");
      answer.setTextAlignment(TextAlignment.RIGHT);
      cell(table, answer, 1, row++, "table-row");
    }
    return table;
  }

  private static void cell(GridPane table, Node content, int column, int row, String style) {
    VBox cell = new VBox(content);
    cell.getStyleClass().add(style);
    cell.setMaxSize(Double.MAX_VALUE, Double.MAX_VALUE);
    if (content instanceof Label label && label.getTextAlignment() == TextAlignment.RIGHT) {
      cell.setAlignment(javafx.geometry.Pos.TOP_RIGHT);
    }
    table.add(cell, column, row);
    GridPane.setHgrow(cell, Priority.ALWAYS);
    GridPane.setHalignment(cell, HPos.LEFT);
  }
}
