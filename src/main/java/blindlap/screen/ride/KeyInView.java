package blindlap.screen.ride;

import blindlap.screen.part.Deaf;
import blindlap.screen.part.Look;
import blindlap.wording.day.RideWords;
import java.util.ArrayList;
import java.util.List;
import javafx.beans.binding.Bindings;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextField;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.VBox;

/** A table to key paper into, row by row; Enter goes on to the next cell. */
final class KeyInView extends VBox {
  private static final int FIXED = 2;

  /** So narrow that five measures and the conditions fit beside each other on a small laptop. */
  private static final double CELL = 68;

  /** With large text, where a table is wider than any page. */
  private static final double LARGE_CELL = 96;

  /**
   * Lines of the grid for a lap: what it is if that stands above, its cells, what is wrong; one
   * more above for the name of its trial.
   */
  private static final int LINES = 3;

  private final Look look;
  private final KeyInModel model;
  private final VBox body = new VBox(16);
  private final Deaf deaf;

  /** Answers to trials: Enter goes from one to the next, past voids and notes, which are few. */
  private final List<TextField> answers = new ArrayList<>();

  KeyInView(Look look, KeyInModel model, Deaf deaf) {
    super(16);
    this.look = look;
    this.model = model;
    this.deaf = deaf;
    Label trouble = new Label();
    trouble.setWrapText(true);
    trouble.getStyleClass().add("strong");
    trouble.textProperty().bind(model.troubleProperty());
    trouble.managedProperty().bind(trouble.textProperty().isNotEmpty());
    getChildren().setAll(trouble, body);
    model.stageProperty().addListener((o, before, now) -> show(now));
    show(model.stageProperty().get());
  }

  private void show(KeyInModel.Stage stage) {
    deaf.begin();
    String recorded = model.recordedProperty().get();
    boolean told = stage == KeyInModel.Stage.DONE && !recorded.isEmpty();
    Label words = new Label(told ? recorded : model.words());
    words.getStyleClass().add("lead");
    words.setWrapText(true);
    body.getChildren().setAll(words);
    switch (stage) {
      case FIRST, AGAIN -> body.getChildren().addAll(table(stage));
      case SETTLE -> body.getChildren().addAll(settling());
      case DONE -> {} // the words say it
    }
  }

  private List<Node> table(KeyInModel.Stage stage) {
    GridPane grid = new GridPane();
    grid.setHgap(8);
    grid.setVgap(8);
    ScrollPane wide = new ScrollPane(grid);
    List<String> columns = model.columns();
    for (int i = first(); i < columns.size(); i++) {
      Label head = new Label(columns.get(i));
      head.setWrapText(true);
      if (i < FIXED) {
        head.setMinWidth(USE_PREF_SIZE);
      }
      grid.add(head, i - first(), 0);
    }
    List<TextField> chain = new ArrayList<>();
    answers.clear();
    for (int r = 0; r < model.rows().size(); r++) {
      row(stage, wide, grid, r, chain);
    }
    Button done = button("key.in.next", model::typed);
    goOn(chain, done);
    goOn(answers, done);
    VBox known = new VBox(4, new Label(RideWords.say("key.in.knows")));
    model.measures().forEach(measure -> known.getChildren().add(knowsKey(measure)));
    wide.setVbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
    wide.setFitToWidth(true);
    wide.setFocusTraversable(false);
    whole(wide, grid);
    return model.measures().isEmpty() ? List.of(wide, done) : List.of(wide, known, done);
  }

  /** As high as its table: a heading that takes two lines would cut the last lap off. */
  private static void whole(ScrollPane wide, GridPane grid) {
    wide.minHeightProperty()
        .bind(
            Bindings.createDoubleBinding(
                () -> {
                  double seen = wide.getViewportBounds().getHeight();
                  return grid.getHeight() + (seen > 0 ? wide.getHeight() - seen : 0);
                },
                grid.heightProperty(),
                wide.heightProperty(),
                wide.viewportBoundsProperty()));
  }

  private CheckBox knowsKey(String measure) {
    CheckBox knows = new CheckBox(measure);
    knows.setWrapText(true);
    knows.setAccessibleText(RideWords.say("key.in.knows") + " " + measure);
    knows.minHeightProperty().bind(look.touch());
    knows.setSelected(model.knowsKey(measure));
    knows.setOnAction(e -> model.knowsKey(measure, knows.isSelected()));
    return knows;
  }

  /** The first column of the grid; with large text lap and code stand above their cells. */
  private int first() {
    return look.stacked() ? FIXED : 0;
  }

  /** Stays in view where the table is moved sideways. */
  private static void stay(ScrollPane wide, GridPane grid, Label words) {
    words
        .translateXProperty()
        .bind(
            Bindings.createDoubleBinding(
                () ->
                    wide.getHvalue()
                        * Math.max(0, grid.getWidth() - wide.getViewportBounds().getWidth()),
                wide.hvalueProperty(),
                grid.widthProperty(),
                wide.viewportBoundsProperty()));
    words
        .maxWidthProperty()
        .bind(wide.viewportBoundsProperty().map(seen -> Math.max(1, seen.getWidth())));
  }

  /** A lap, and below it what is wrong with it as it was typed so far. */
  private void row(
      KeyInModel.Stage stage, ScrollPane wide, GridPane grid, int r, List<TextField> chain) {
    List<String> cells = model.rows().get(r);
    int lines = LINES + (model.ofTrials() ? 1 : 0);
    int line = lines * (r + 1) - 1;
    above(wide, grid, r, line - 2);
    if (look.stacked()) {
      Label lap = new Label(RideWords.say("key.in.row", cells.get(0), cells.get(1)));
      lap.getStyleClass().add("strong");
      stay(wide, grid, lap);
      grid.add(lap, 0, line - 1, cells.size() - FIXED, 1);
    }
    for (int c = first(); c < cells.size(); c++) {
      if (c < FIXED || model.given(r, c) || !model.asked(r, c)) {
        Label fixed = new Label(fixed(r, c));
        fixed.setMinWidth(USE_PREF_SIZE);
        grid.add(fixed, c - first(), line);
        continue;
      }
      TextField field = cell(stage, r, c, cells.get(c));
      field.setAccessibleText(model.cellWords(r, c));
      chain.add(field);
      if (model.ofAnswer(c)) {
        answers.add(field);
      }
      grid.add(field, c - first(), line);
    }
    Label wrong = new Label();
    wrong.getStyleClass().add("strong");
    wrong.setWrapText(true);
    wrong.textProperty().bind(Bindings.valueAt(model.wrong(), r).orElse(""));
    wrong.managedProperty().bind(wrong.textProperty().isNotEmpty());
    wrong.visibleProperty().bind(wrong.managedProperty());
    stay(wide, grid, wrong);
    grid.add(wrong, FIXED - first(), line + 1, Math.max(1, cells.size() - FIXED), 1);
  }

  /** What stands where nothing is typed. */
  private String fixed(int row, int column) {
    if (column < FIXED) {
      return model.rows().get(row).get(column);
    }
    return model.asked(row, column) ? RideWords.say("key.in.given") : "";
  }

  /** The name of a trial above the first of its rows. */
  private void above(ScrollPane wide, GridPane grid, int row, int line) {
    String words = model.above(row);
    if (!words.isEmpty()) {
      Label trial = new Label(words);
      trial.getStyleClass().add("strong");
      stay(wide, grid, trial);
      grid.add(trial, 0, line, Math.max(1, model.columns().size() - first()), 1);
    }
  }

  /** A cell; kept when it is left, or when the page is. */
  private TextField cell(KeyInModel.Stage stage, int row, int column, String typed) {
    TextField field = new TextField(typed);
    field.minHeightProperty().bind(look.touch());
    field.minWidthProperty().bind(look.px(look.stacked() ? LARGE_CELL : CELL));
    Runnable keep = () -> model.cell(stage, row, column, field.getText().strip());
    field.focusedProperty().addListener((o, before, now) -> leave(!now, keep));
    field.sceneProperty().addListener((o, before, now) -> leave(now == null, keep));
    return field;
  }

  private static void leave(boolean left, Runnable keep) {
    if (left) {
      keep.run();
    }
  }

  private static void goOn(List<TextField> chain, Button done) {
    for (int i = 0; i < chain.size(); i++) {
      Node next = i + 1 < chain.size() ? chain.get(i + 1) : done;
      chain.get(i).setOnAction(e -> next.requestFocus());
    }
  }

  private List<Node> settling() {
    List<Node> parts = new ArrayList<>();
    List<TextField> fields = new ArrayList<>();
    for (KeyInModel.Row row : model.differences()) {
      Label words =
          new Label(RideWords.say("key.in.differs", row.words(), row.first(), row.second()));
      words.setWrapText(true);
      TextField field = new TextField();
      field.setAccessibleText(row.words());
      field.minHeightProperty().bind(look.touch());
      fields.add(field);
      parts.add(new VBox(6, words, field));
    }
    Button done =
        button(
            "key.in.settled",
            () -> model.settle(fields.stream().map(f -> f.getText().strip()).toList()));
    goOn(fields, done);
    parts.add(done);
    return parts;
  }

  private Button button(String key, Runnable action) {
    Button button = new Button(RideWords.say(key));
    button.getStyleClass().add("next");
    button.minHeightProperty().bind(look.touch());
    button.setOnAction(e -> deaf.hear(action));
    return button;
  }
}
