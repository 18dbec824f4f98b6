package blindlap.screen.swap;

import blindlap.screen.part.Caution;
import blindlap.screen.part.ChoiceRow;
import blindlap.screen.part.Fields;
import blindlap.screen.part.Look;
import blindlap.wording.SwapWords;
import blindlap.wording.day.Words;
import java.util.List;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import javafx.scene.layout.VBox;

/** The safety list and the gate: the same for real and dummy swaps. */
final class SwapSafetyView extends VBox {
  SwapSafetyView(Look look, SwapModel model, SwapSheet now) {
    super(8);
    getChildren().add(new SwapHeadingView(SwapWords.say("safe")));
    for (SwapSheet.Check check : now.confirmed()) {
      CheckBox box = Fields.wide(new CheckBox(check.words()));
      box.setWrapText(true);
      box.minHeightProperty().bind(look.touch());
      box.setSelected(check.yes());
      box.setOnAction(e -> model.work().confirm(check.key(), box.isSelected()));
      getChildren().add(box);
    }
    if (now.fitAsked()) {
      ChoiceRow<Boolean> fit =
          new ChoiceRow<>(
              look,
              SwapWords.say("rider.fit"),
              List.of(
                  new ChoiceRow.Option<>(true, SwapWords.say("rider.fit.yes")),
                  new ChoiceRow.Option<>(false, SwapWords.say("rider.fit.no"))),
              2,
              model.work()::riderFit);
      fit.show(now.riderFit());
      model
          .work()
          .sheetProperty()
          .addListener(
              (o, before, after) -> {
                if (after != null && getScene() != null) {
                  fit.show(after.riderFit());
                }
              });
      getChildren().add(fit);
    }
    gate(look, model, now);
  }

  /** The lap may start only when nothing is waited for; what is waited for stands below. */
  private void gate(Look look, SwapModel model, SwapSheet now) {
    Button go =
        Fields.wide(
            new Button(
                now.stint() == 0 ? SwapWords.say("go.warm.up") : SwapWords.say("go", now.stint())));
    go.getStyleClass().add("next");
    go.minHeightProperty().bind(look.touch());
    go.disableProperty().bind(model.work().waitsProperty().isNotEmpty());
    go.setOnAction(e -> model.work().handOver());
    Label waits = new Label();
    waits.setWrapText(true);
    waits.textProperty().bind(model.work().waitsProperty());
    Label trouble = new Label();
    trouble.setWrapText(true);
    trouble.getStyleClass().add("strong");
    trouble.textProperty().bind(model.work().troubleProperty());
    trouble.managedProperty().bind(trouble.textProperty().isNotEmpty());
    Label saved = new Label();
    saved.getStyleClass().add("strong");
    saved.textProperty().bind(model.work().savedProperty());
    Caution caution = new Caution(SwapWords.say("caution"), Words.of("cautions").say("emergency"));
    getChildren().addAll(go, waits, trouble, saved, caution);
  }
}
