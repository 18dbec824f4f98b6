package blindlap.screen.plan;

import blindlap.screen.part.Caution;
import blindlap.screen.part.Fields;
import blindlap.wording.PlanWords;
import blindlap.wording.day.Words;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.VBox;

/** Practice before the day: real swaps there and back, timed; the plan takes its swap time. */
final class PracticePane extends VBox {
  PracticePane(PracticeModel model) {
    super(10);
    Label now = Fields.words("", "strong");
    now.textProperty().bind(model.nowProperty());
    Label proposal = Fields.words("", "strong");
    proposal.textProperty().bind(model.proposalProperty());
    proposal.managedProperty().bind(proposal.textProperty().isNotEmpty());
    Button begin = Fields.button(PlanWords.say("practice.begin"), model::begin);
    Button done = Fields.button(PlanWords.say("practice.done"), model::done);
    Button stop = Fields.button(PlanWords.say("practice.stop"), model::stop);
    Button back = Fields.button(PlanWords.say("practice.back"), model::takeBack);
    Button take = Fields.button(PlanWords.say("practice.take"), model::take);
    begin.setId("practice-begin");
    done.setId("practice-done");
    take.setId("practice-take");
    begin.disableProperty().bind(model.runningProperty());
    done.disableProperty().bind(model.runningProperty().not());
    stop.disableProperty().bind(model.runningProperty().not());
    back.disableProperty().bind(model.runningProperty().or(model.proposalProperty().isEmpty()));
    take.disableProperty().bind(model.proposalProperty().isEmpty());
    getChildren()
        .setAll(
            Fields.words(PlanWords.say("practice.what"), "second"),
            now,
            Fields.row(begin, done, stop, back),
            proposal,
            Fields.row(take),
            new Caution(PlanWords.say("caution") + ".", Words.of("cautions").say("short")));
  }
}
