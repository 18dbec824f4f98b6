package blindlap.screen.ride;

import blindlap.ride.RideCovariates;
import blindlap.screen.part.Fields;
import blindlap.screen.part.Look;
import blindlap.session.day.CovariateAt;
import blindlap.wording.day.RideWords;
import java.util.ArrayList;
import java.util.List;
import java.util.function.BiConsumer;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;

/** Fields for covariates: saved when they are left. Nothing stands here where none are asked. */
final class RideCovariatesView extends VBox {
  private static final double FIELD = 200;

  private final Look look;
  private final RideModel model;
  private final List<BiConsumer<CovariateAt, String>> restore = new ArrayList<>();

  /**
   * @param lead key of the sentence above them
   */
  RideCovariatesView(Look look, RideModel model, String lead) {
    super(10);
    this.look = look;
    this.model = model;
    List<RideCovariates.Asked> asked = model.covariates().asked();
    setManaged(!asked.isEmpty());
    if (asked.isEmpty()) {
      return;
    }
    Label words = words(RideWords.say(lead));
    words.getStyleClass().add("note");
    FlowPane fields = new FlowPane(30, 12);
    asked.forEach(each -> fields.getChildren().add(field(each)));
    model
        .covariates()
        .whenRestored((at, typed) -> restore.forEach(field -> field.accept(at, typed)));
    getChildren().addAll(words, fields);
  }

  private VBox field(RideCovariates.Asked asked) {
    Label title = words(asked.title());
    title.getStyleClass().add("field-title");
    Label who = words(asked.who());
    who.getStyleClass().add("note");
    TextField field = Fields.wide(new TextField(asked.given()));
    field.setId("covariate-" + asked.at().covariate());
    field.setAccessibleText(asked.title() + ", " + asked.who());
    field.minHeightProperty().bind(look.touch());
    field.prefWidthProperty().bind(look.px(FIELD));
    title.setLabelFor(field);
    String[] kept = {asked.given()};
    // What was taken back stands no longer; what is being typed stays.
    restore.add(
        (at, typed) -> {
          if (at.equals(asked.at()) && field.getText().equals(kept[0])) {
            kept[0] = typed;
            field.setText(typed);
          }
        });
    Runnable leave =
        () -> {
          if (!field.getText().equals(kept[0])) {
            kept[0] = field.getText();
            model.covariates().say(asked.at(), field.getText());
          }
        };
    field.setOnAction(e -> leave.run());
    field
        .focusedProperty()
        .addListener(
            (o, before, now) -> {
              if (!now) {
                leave.run();
              }
            });
    return new VBox(4, title, who, field);
  }

  private static Label words(String text) {
    Label label = new Label(text);
    label.setWrapText(true);
    label.setMinHeight(USE_PREF_SIZE);
    return label;
  }
}
