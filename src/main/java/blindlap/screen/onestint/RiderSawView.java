package blindlap.screen.onestint;

import blindlap.screen.part.Deaf;
import blindlap.screen.part.Fields;
import blindlap.screen.part.Look;
import blindlap.wording.OneStintWords;
import java.util.Optional;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;

/** On the rider's page: whether anything was seen of what somebody was shown to set. */
public final class RiderSawView extends VBox {
  private final Label asks = Fields.words("", "strong");
  private final Deaf deaf;

  /** The question of a model; nothing while there is none. */
  public RiderSawView(Look look, OneStintModel model) {
    super(8);
    this.deaf = new Deaf(model.monotonic());
    deaf.guard(this);
    FlowPane answers = new FlowPane(12, 8);
    for (boolean saw : new boolean[] {false, true}) {
      Button answer =
          Fields.button(
              OneStintWords.say(saw ? "page.saw.yes" : "page.saw.no"), () -> model.answer(saw));
      answer.minHeightProperty().bind(look.touch(46));
      answers.getChildren().add(answer);
    }
    Label trouble = Fields.words("", "strong", "note");
    trouble.textProperty().bind(model.troubleProperty());
    trouble.managedProperty().bind(trouble.textProperty().isNotEmpty());
    getChildren().setAll(asks, answers, trouble);
    managedProperty().bind(visibleProperty());
    model.askedProperty().addListener((o, before, now) -> show(now));
    show(model.askedProperty().get());
  }

  private void show(Optional<OneStintModel.Asked> now) {
    setVisible(now.isPresent());
    asks.setText("");
    now.ifPresent(
        asked -> {
          deaf.begin(); // it stands where something else may just have been pressed
          asks.setText(OneStintWords.say("page.saw", asked.stint(), asked.name()));
        });
  }
}
