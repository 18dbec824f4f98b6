package blindlap.screen.review;

import static blindlap.screen.part.ReviewParts.words;

import blindlap.desk.ScoredByCode;
import blindlap.plan.Measure;
import blindlap.screen.part.ChoiceRow;
import blindlap.screen.part.Look;
import blindlap.wording.AloneWords;
import java.util.List;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.VBox;

/** The page of somebody who scores by code: codes by size, and nothing of the day beside them. */
final class ByCodeView extends VBox {
  private final Look look;
  private final ByCodeModel model;

  /**
   * @param back back to the review
   */
  ByCodeView(Look look, ByCodeModel model, Runnable back) {
    super(14);
    this.look = look;
    this.model = model;
    TextField who = new TextField(model.assessor());
    who.setAccessibleText(AloneWords.say("code.who"));
    who.minHeightProperty().bind(look.touch());
    who.setMaxWidth(360);
    who.textProperty().addListener((o, before, now) -> model.who(now));
    Label asked = words(AloneWords.say("code.who"));
    asked.setLabelFor(who);
    ChoiceRow<Boolean> knows =
        new ChoiceRow<>(
            look,
            AloneWords.say("code.knows"),
            List.of(
                new ChoiceRow.Option<>(false, AloneWords.say("no")),
                new ChoiceRow.Option<>(true, AloneWords.say("yes"))),
            2,
            model::knows);
    knows.setMaxWidth(480);
    Button record = button("code.record", model::record);
    record.getStyleClass().add("next");
    Label trouble = words("", "strong");
    trouble.textProperty().bind(model.troubleProperty());
    trouble.managedProperty().bind(trouble.textProperty().isNotEmpty());
    getChildren()
        .setAll(
            words(AloneWords.say("code.title"), "h2"),
            words(AloneWords.say("code.how")),
            asked,
            who,
            knows,
            table(),
            trouble,
            new FlowPane(12, 8, record, button("code.back", back)));
  }

  private Button button(String key, Runnable work) {
    Button button = new Button(AloneWords.say(key));
    button.minHeightProperty().bind(look.touch());
    button.setOnAction(e -> work.run());
    return button;
  }

  private GridPane table() {
    GridPane table = new GridPane();
    table.setHgap(16);
    table.setVgap(6);
    List<Measure> measures = model.measures();
    table.add(words(AloneWords.say("code.head"), "second"), 0, 0);
    for (int i = 0; i < measures.size(); i++) {
      table.add(words(title(measures.get(i)), "second"), i + 1, 0);
    }
    int at = 1;
    for (ScoredByCode.Row row : model.rows()) {
      Label code = words(model.title(row), "strong");
      code.setWrapText(false);
      code.setMinWidth(USE_PREF_SIZE);
      table.add(code, 0, at);
      for (int i = 0; i < measures.size(); i++) {
        String name = measures.get(i).name();
        TextField value = new TextField();
        value.setPrefColumnCount(6);
        value.setAccessibleText(model.title(row) + ", " + name);
        value.minHeightProperty().bind(look.touch(46));
        value.textProperty().addListener((o, before, now) -> model.type(row.lap(), name, now));
        table.add(value, i + 1, at);
      }
      at++;
    }
    return table;
  }

  private static String title(Measure measure) {
    return measure.unit().isBlank()
        ? measure.name()
        : AloneWords.say("code.measure", measure.name(), measure.unit());
  }
}
