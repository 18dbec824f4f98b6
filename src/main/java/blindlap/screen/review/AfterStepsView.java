package blindlap.screen.review;

import blindlap.desk.AfterSteps;
import blindlap.screen.part.Fields;
import blindlap.wording.AfterStepsWords;
import blindlap.wording.HandlingWords;
import blindlap.wording.day.Words;
import javafx.scene.control.Button;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;

/**
 * From a steps day into new plans: its two best levels compared, or a level taken. Every level that
 * is offered has a button of the same kind: which one to ride is the tester's to say.
 */
final class AfterStepsView extends VBox {
  AfterStepsView(AfterStepsModel model, AfterSteps.Offer offer) {
    super(6);
    setId("after-steps");
    getChildren().add(Fields.words(AfterStepsWords.say("legend"), "strong"));
    if (offer.levels().isEmpty()) {
      getChildren().add(Fields.words(AfterStepsWords.say("none"), "note", "second"));
      return;
    }
    FlowPane buttons = Fields.row();
    if (!offer.best().isEmpty()) {
      Button compare =
          Fields.button(
              AfterStepsWords.say(
                  "compare", name(offer, offer.best().get(0)), name(offer, offer.best().get(1))),
              model::compareTwoBest);
      compare.setId("compare-two-best");
      buttons.getChildren().add(compare);
    }
    for (String level : offer.names()) {
      buttons
          .getChildren()
          .add(Fields.button(AfterStepsWords.say("take", level), () -> model.take(level)));
    }
    getChildren()
        .addAll(
            buttons,
            Fields.words(AfterStepsWords.say("worthwhile"), "note", "second"),
            Fields.words(
                HandlingWords.limits(offer.plan()).map(said -> said + ". ").orElse("")
                    + Words.of("cautions").say("trust"),
                "note",
                "second"));
  }

  private static String name(AfterSteps.Offer offer, int level) {
    return offer.plan().setups().get(level).name();
  }
}
