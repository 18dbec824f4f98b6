package blindlap.screen.ride;

import blindlap.screen.part.Look;
import blindlap.session.day.LapId;
import blindlap.session.day.VoidEvent;
import blindlap.wording.day.RideWords;
import javafx.beans.value.ChangeListener;
import javafx.beans.value.WeakChangeListener;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;

/** Laps that are void, each with what takes the void back. It follows what any window writes. */
final class RideVoidsView extends VBox {
  private final Look look;
  private final RideModel model;

  @SuppressWarnings("FieldCanBeLocal") // held, so that it lives as long as this view
  private final ChangeListener<Object> changed = (o, before, now) -> show();

  RideVoidsView(Look look, RideModel model) {
    super(8);
    this.look = look;
    this.model = model;
    model.voidsProperty().addListener(new WeakChangeListener<>(changed));
    show();
  }

  private void show() {
    getChildren().clear();
    model.voidsProperty().get().forEach((lap, event) -> getChildren().add(row(lap, event)));
    setVisible(!getChildren().isEmpty());
    setManaged(isVisible());
  }

  private Node row(LapId lap, VoidEvent event) {
    Label words = new Label(model.voids().stands(lap, RideWords.say("event." + event.name())));
    String takes = RideWords.say("take.back", model.voids().called(lap));
    Button back = new Button(takes);
    back.minHeightProperty().bind(look.touch());
    back.setMinWidth(USE_PREF_SIZE);
    back.setOnAction(e -> model.voids().takeBack(lap));
    FlowPane row = new FlowPane(12, 6, words, back);
    row.setRowValignment(javafx.geometry.VPos.CENTER);
    row.setAlignment(Pos.CENTER_LEFT);
    return row;
  }
}
