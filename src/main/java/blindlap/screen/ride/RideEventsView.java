package blindlap.screen.ride;

import blindlap.ride.RideQuestions;
import blindlap.ride.RideSheet;
import blindlap.screen.part.ChoiceRow;
import blindlap.screen.part.DayEventsView;
import blindlap.screen.part.Look;
import blindlap.wording.day.RideWords;
import javafx.scene.Node;
import javafx.scene.layout.VBox;

/** Something happened: a spoiled lap, the blind broken, a cover off, the day over. No phrase. */
final class RideEventsView extends VBox {
  private final Look look;
  private final RideModel model;
  private final Runnable close;

  RideEventsView(Look look, RideModel model, Runnable close) {
    super(16);
    this.look = look;
    this.model = model;
    this.close = close;
    RideSheet now = model.sheetProperty().get();
    boolean riding =
        now.lap() != null
            && !now.voided()
            && (now.stage() == RideSheet.Stage.SCORED || now.stage() == RideSheet.Stage.DONE);
    if (riding) {
      getChildren().add(spoiled());
    }
    getChildren().add(new DayEventsView(look, model.events()));
  }

  private Node spoiled() {
    return new ChoiceRow<>(
        look,
        RideWords.say("spoiled") + " " + RideWords.say("spoiled.title"),
        RideOptions.of(RideQuestions.events()),
        look.stacked() ? 3 : 6,
        event -> {
          model.spoiled(event);
          close.run();
        });
  }
}
