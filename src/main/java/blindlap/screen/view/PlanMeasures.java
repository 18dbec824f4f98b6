package blindlap.screen.view;

import blindlap.screen.model.PlanForm;
import blindlap.screen.model.PlanModel;
import blindlap.screen.model.PlanOptions;
import blindlap.wording.PlanWords;
import javafx.scene.control.ComboBox;
import javafx.scene.layout.VBox;

/** The measures, with the starter list. */
final class PlanMeasures extends VBox {
  PlanMeasures(PlanModel model) {
    super(16);
    ComboBox<String> starters = new ComboBox<>();
    starters.getItems().setAll(model.starters().measureNames());
    starters.setPromptText(PlanWords.say("starter.measure"));
    starters.setAccessibleText(PlanWords.say("starter.measure"));
    starters.setId("starter-measure");
    starters.setOnAction(
        e -> {
          String chosen = starters.getValue();
          if (chosen != null) {
            model.starters().addMeasure(chosen);
          }
        });
    getChildren()
        .setAll(
            new PlanRows(
                model.form().list("measures"),
                PlanWords.field("measures.one"),
                PlanMeasures::measure),
            PlanFields.row(
                PlanFields.button(PlanWords.say("add.measure"), () -> model.form().add("measures")),
                starters));
  }

  private static VBox measure(PlanForm measure) {
    return new VBox(
        8,
        PlanFields.row(
            PlanFields.text(measure, "name", 14),
            PlanFields.choice(measure, "kind", PlanOptions.of("kind")),
            PlanFields.text(measure, "unit", 6),
            PlanFields.choice(measure, "role", PlanOptions.of("role")),
            PlanFields.choice(measure, "better", PlanOptions.of("better")),
            PlanFields.text(measure, "worthwhile", 6)),
        PlanFields.row(
            PlanFields.text(measure, "low_words", 14),
            PlanFields.text(measure, "high_words", 14),
            PlanFields.text(measure, "worthwhile_reason", 20),
            PlanFields.text(measure, "definition", 20),
            PlanFields.choice(measure, "drift", PlanOptions.of("drift")),
            PlanFields.choice(measure, "scale", PlanOptions.of("scale"))));
  }
}
