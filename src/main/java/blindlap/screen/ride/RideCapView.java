package blindlap.screen.ride;

import blindlap.ride.RideSheet;
import blindlap.screen.part.Deaf;
import blindlap.screen.part.Fields;
import blindlap.screen.part.Look;
import blindlap.screen.part.WholeInView;
import blindlap.wording.day.RideWords;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.VBox;

/** Every lap agreed to is ridden: the question that stands before any further lap. */
final class RideCapView extends VBox {
  /**
   * The question.
   *
   * @param deaf the page's ears
   * @param end opens what ends the day
   */
  RideCapView(Look look, RideModel model, Deaf deaf, Runnable end) {
    super(18);
    Label question = new Label(RideWords.say("cap.question"));
    question.getStyleClass().add("question");
    question.setWrapText(true);
    Label lead = new Label(RideWords.say("cap.lead"));
    lead.getStyleClass().add("lead");
    lead.setWrapText(true);
    Button over = new Button(RideWords.say("cap.end"));
    over.getStyleClass().add("next");
    over.minHeightProperty().bind(look.touch());
    over.setOnAction(e -> end.run());
    Label asked = new Label(RideWords.say("cap.why"));
    asked.setWrapText(true);
    TextField why = Fields.wide(new TextField());
    why.setAccessibleText(RideWords.say("cap.why"));
    why.minHeightProperty().bind(look.touch());
    asked.setLabelFor(why);
    Button more = new Button(RideWords.say("cap.button"));
    more.minHeightProperty().bind(look.touch());
    more.setOnAction(e -> deaf.hear(() -> model.pastCap(why.getText())));
    why.setOnAction(e -> deaf.hear(() -> model.pastCap(why.getText())));
    Label trouble = new Label();
    trouble.setWrapText(true);
    trouble.getStyleClass().add("strong");
    trouble.textProperty().bind(model.troubleProperty());
    trouble.managedProperty().bind(trouble.textProperty().isNotEmpty());
    getChildren()
        .setAll(question, lead, over, WholeInView.together(new VBox(6, asked, why)), more, trouble);
  }

  /** How many of the laps agreed to are ridden, in words; empty where no lap is in hand. */
  static String said(RideSheet now) {
    Integer most = now.most();
    if (most == null || now.number() == 0) {
      return "";
    }
    return now.ridden() >= most
        ? RideWords.say("cap.reached", most)
        : RideWords.say("cap", now.ridden() + 1, most);
  }
}
