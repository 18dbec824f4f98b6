package blindlap.screen.ride;

import blindlap.ride.RideQuestions;
import blindlap.ride.RideSheet;
import blindlap.screen.part.AskedOnce;
import blindlap.screen.part.ChoiceRow;
import blindlap.screen.part.DayEventsView;
import blindlap.screen.part.Deaf;
import blindlap.screen.part.Look;
import blindlap.screen.part.WholeInView;
import blindlap.wording.day.RideWords;
import javafx.scene.Node;
import javafx.scene.layout.VBox;

/** Something happened: a spoiled lap, the blind broken, a cover off, the day over. No phrase. */
final class RideEventsView extends VBox {
  private final Look look;
  private final RideModel model;
  private final Runnable close;
  private Runnable withdraw = () -> {};

  RideEventsView(Look look, RideModel model, Deaf deaf, Runnable close) {
    super(16);
    this.look = look;
    this.model = model;
    this.close = close;
    RideSheet now = model.sheetProperty().get();
    if (now.mayBeSpoiled()) {
      getChildren().add(spoiled());
    }
    getChildren().add(new RideVoidsView(look, model));
    RideQuestions questions = model.questions();
    DayEventsView day = new DayEventsView(look, model.events());
    if (questions.labels()) {
      day.withLabels();
    } else if (questions.riderKnows()) {
      day.withoutBlind();
    }
    getChildren().add(day);
    deaf.after(this);
  }

  /** An event asks once before it makes the lap void, below what was pressed. */
  private Node spoiled() {
    VBox asked = new VBox();
    ChoiceRow<String> events =
        new ChoiceRow<>(
            look,
            RideWords.say("spoiled") + " " + RideWords.say("spoiled.title"),
            RideOptions.of(RideQuestions.events()),
            look.stacked() ? 3 : 6,
            event -> ask(event, asked));
    withdraw =
        () -> {
          events.show(null);
          asked.getChildren().clear();
          events.requestFocus();
        };
    return WholeInView.together(new VBox(10, events, asked));
  }

  private void ask(String event, VBox asked) {
    AskedOnce.Words words =
        new AskedOnce.Words(
            model.voids().does(),
            model.voids().follows(RideWords.say("event." + event)),
            RideWords.say("void.not"));
    Runnable spoil =
        () -> {
          model.voids().spoiled(event);
          close.run();
        };
    asked
        .getChildren()
        .setAll(
            look.stacked()
                ? AskedOnce.question(look, words, spoil, withdraw)
                : AskedOnce.beside(look, words, spoil, withdraw));
  }
}
