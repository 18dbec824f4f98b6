package blindlap.screen.trail;

import blindlap.plot.AlongProfile;
import blindlap.plot.TrailMap;
import blindlap.screen.part.Fields;
import blindlap.screen.part.Look;
import blindlap.screen.part.PlotView;
import blindlap.wording.TrailWords;
import javafx.scene.input.MouseButton;
import javafx.scene.input.MouseEvent;
import javafx.scene.layout.VBox;

/** The trail from above and along its distance; a press on either is a place of the line. */
final class TrailPictureView extends VBox {
  private final Look look;
  private final TrailModel model;
  private final Runnable pressed;

  /**
   * @param pressed run after a press on the line
   */
  TrailPictureView(Look look, TrailModel model, Runnable pressed) {
    super(6);
    this.pressed = pressed;
    this.look = look;
    this.model = model;
    setMinWidth(0);
    model.hand().sightProperty().addListener((o, before, now) -> show(now));
    show(model.hand().sightProperty().get());
  }

  private void show(TrailSight now) {
    getChildren().clear();
    setManaged(now.shape().isPresent());
    if (now.shape().isEmpty()) {
      return;
    }
    TrailMap map = TrailDrawings.map(now);
    PlotView above = new PlotView(look, map);
    above.setOnMousePressed(
        e -> press(e, map.along(e.getX(), e.getY(), above.getWidth(), look.textScale())));
    AlongProfile profile = TrailDrawings.profile(now);
    PlotView along = new PlotView(look, profile);
    along.setOnMousePressed(
        e -> press(e, profile.along(e.getX(), along.getWidth(), look.textScale())));
    above.getStyleClass().addAll("pressed-plot", "from-above");
    along.getStyleClass().addAll("pressed-plot", "along-line");
    getChildren()
        .setAll(
            Fields.words(TrailWords.say("page.map"), "h2"),
            above,
            along,
            Fields.words(TrailWords.say("page.along"), "note", "second"));
  }

  private void press(MouseEvent e, double along) {
    if (e.getButton() == MouseButton.PRIMARY && Double.isFinite(along)) {
      model.hand().press(along);
      pressed.run();
      e.consume(); // what scrolls would take the focus
    }
  }
}
