package blindlap.screen.review;

import static blindlap.screen.part.ReviewParts.words;

import blindlap.screen.part.Fields;
import blindlap.wording.TwoValuesWords;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.TextField;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;

/** Values that machines recorded apart: all of them, which counts, and how another may. */
final class TwoValuesView extends VBox {
  private final TextField who = field("choose.who", 18);
  private final TextField what = field("choose.reason", 34);
  private final CheckBox neither = new CheckBox(TwoValuesWords.say("choose.neither"));

  TwoValuesView(BlindReviewModel model, BlindReviewView view) {
    super(10);
    setId("two-values");
    neither.setId("choose-neither");
    neither.setWrapText(true);
    getChildren()
        .addAll(words(TwoValuesWords.say("title"), "h2"), words(view.twiceLead(), "second"));
    if (view.mayChoose()) {
      getChildren().addAll(new FlowPane(12, 8, who, what), neither);
    }
    for (BlindReviewView.Stands stands : view.twice()) {
      getChildren().add(words(stands.line()));
      if (view.mayChoose()) {
        getChildren().add(choices(model, stands));
      }
    }
  }

  private FlowPane choices(BlindReviewModel model, BlindReviewView.Stands stands) {
    FlowPane row = new FlowPane(12, 8);
    for (BlindReviewView.Other other : stands.others()) {
      Button choose =
          Fields.button(
              TwoValuesWords.say("choose.do", other.words()),
              () ->
                  model.choose(stands, other, what.getText(), who.getText(), neither.isSelected()));
      choose.getStyleClass().add("choose");
      row.getChildren().add(choose);
    }
    return row;
  }

  private static TextField field(String key, int columns) {
    TextField field = new TextField();
    field.setPromptText(TwoValuesWords.say(key));
    field.setAccessibleText(TwoValuesWords.say(key));
    field.setId(key.replace('.', '-'));
    field.setPrefColumnCount(columns);
    return field;
  }
}
