package blindlap.screen.view;

import blindlap.screen.model.RideModel;
import blindlap.screen.model.RideSheet;
import blindlap.session.Fact;
import blindlap.session.VoidEvent;
import blindlap.wording.RideWords;
import blindlap.wording.Words;
import java.util.ArrayList;
import java.util.List;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.VBox;

/** Something happened: a spoiled lap, the blind broken, a cover off, the day over. No phrase. */
final class RideEventsView extends VBox {
  private final Look look;
  private final RideModel model;
  private final Runnable close;

  RideEventsView(Look look, RideModel model, Runnable close) {
    super(24);
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
    getChildren().addAll(blind(), cover(), cut(), closing());
  }

  private Node spoiled() {
    List<ChoiceRow.Option<VoidEvent>> options = new ArrayList<>();
    for (VoidEvent event : VoidEvent.values()) {
      options.add(new ChoiceRow.Option<>(event, RideWords.say("event." + event)));
    }
    return new ChoiceRow<>(
        look,
        RideWords.say("spoiled") + " " + RideWords.say("spoiled.title"),
        options,
        3,
        event -> {
          model.spoiled(event);
          close.run();
        });
  }

  private Node blind() {
    TextField what = field("blind.broken.what");
    Caution caution =
        new Caution(RideWords.say("caution"), Words.of("cautions").say("emergency"));
    return part(
        title("blind.broken"),
        caution,
        what,
        button("blind.broken", () -> model.blindBroken(what.getText().strip())));
  }

  private Node cover() {
    TextField what = field("cover.off.what");
    return part(
        title("cover.off"),
        what,
        button(
            "cover.off",
            () -> model.deviation(Fact.DeviationKind.COVER_OFF, what.getText().strip())));
  }

  private Node cut() {
    TextField reason = field("cut.reason");
    TextField by = field("cut.by");
    CheckBox knows = new CheckBox(RideWords.say("cut.knows"));
    knows.minHeightProperty().bind(look.touch());
    return part(
        title("cut"),
        reason,
        by,
        knows,
        button(
            "cut",
            () ->
                model.cutShort(
                    reason.getText().strip(), by.getText().strip(), knows.isSelected())));
  }

  private Node closing() {
    Label note = new Label(RideWords.say("close.note"));
    note.setWrapText(true);
    return part(title("close"), note, button("close", model::closeDay));
  }

  private static VBox part(Node... nodes) {
    return new VBox(10, nodes);
  }

  private static Label title(String key) {
    Label label = new Label(RideWords.say(key));
    label.getStyleClass().add("field-title");
    return label;
  }

  private TextField field(String key) {
    TextField field = RidePage.wide(new TextField());
    field.setPromptText(RideWords.say(key));
    field.setAccessibleText(RideWords.say(key));
    field.minHeightProperty().bind(look.touch());
    return field;
  }

  private Button button(String key, Runnable action) {
    Button button = new Button(RideWords.say(key));
    button.minHeightProperty().bind(look.touch());
    button.setOnAction(e -> action.run());
    return button;
  }
}
