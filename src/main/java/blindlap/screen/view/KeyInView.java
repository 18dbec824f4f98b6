package blindlap.screen.view;

import blindlap.screen.model.KeyInModel;
import blindlap.wording.RideWords;
import java.util.ArrayList;
import java.util.List;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.VBox;

/** A table to key paper into, row by row; Enter goes on to the next cell. */
final class KeyInView extends VBox {
  private static final int FIXED = 2;

  private final Look look;
  private final KeyInModel model;
  private final VBox body = new VBox(16);

  KeyInView(Look look, KeyInModel model) {
    super(16);
    this.look = look;
    this.model = model;
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
    Label words = new Label(RideWords.say("key.in." + stage));
    words.getStyleClass().add("lead");
    words.setWrapText(true);
    body.getChildren().setAll(words);
    switch (stage) {
      case FIRST, AGAIN -> body.getChildren().addAll(table());
      case SETTLE -> body.getChildren().addAll(settling());
      case DONE -> {} // the words say it
    }
  }

  private List<Node> table() {
    GridPane grid = new GridPane();
    grid.setHgap(8);
    grid.setVgap(8);
    List<String> columns = model.columns();
    for (int i = 0; i < columns.size(); i++) {
      Label head = new Label(columns.get(i));
      head.setWrapText(true);
      grid.add(head, i, 0);
    }
    List<List<TextField>> fields = new ArrayList<>();
    List<TextField> chain = new ArrayList<>();
    List<List<String>> rows = model.rows();
    for (int r = 0; r < rows.size(); r++) {
      List<TextField> row = new ArrayList<>();
      for (int c = 0; c < columns.size(); c++) {
        if (c < FIXED) {
          grid.add(new Label(rows.get(r).get(c)), c, r + 1);
          continue;
        }
        TextField field = new TextField();
        field.setAccessibleText(RideWords.say("key.in.cell", rows.get(r).get(0), columns.get(c)));
        field.minHeightProperty().bind(look.touch());
        row.add(field);
        chain.add(field);
        grid.add(field, c, r + 1);
      }
      fields.add(row);
    }
    Button done = button("key.in.next", () -> model.typed(read(rows, fields)));
    goOn(chain, done);
    return List.of(grid, done);
  }

  private static void goOn(List<TextField> chain, Button done) {
    for (int i = 0; i < chain.size(); i++) {
      Node next = i + 1 < chain.size() ? chain.get(i + 1) : done;
      chain.get(i).setOnAction(e -> next.requestFocus());
    }
  }

  private static List<List<String>> read(List<List<String>> rows, List<List<TextField>> fields) {
    List<List<String>> typed = new ArrayList<>();
    for (int r = 0; r < rows.size(); r++) {
      List<String> row = new ArrayList<>(rows.get(r).subList(0, FIXED));
      fields.get(r).forEach(field -> row.add(field.getText().strip()));
      typed.add(row);
    }
    return typed;
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
    button.setOnAction(e -> action.run());
    return button;
  }
}
