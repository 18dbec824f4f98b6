package blindlap.screen.onestint;

import blindlap.desk.OneStints;
import blindlap.plan.Setting;
import blindlap.screen.cover.HelperDoorView;
import blindlap.screen.cover.HelperFrameView;
import blindlap.screen.part.BigWords;
import blindlap.screen.part.Caution;
import blindlap.screen.part.Deaf;
import blindlap.screen.part.Fields;
import blindlap.screen.part.Look;
import blindlap.screen.part.WholeInView;
import blindlap.wording.OneStintWords;
import blindlap.wording.SwapWords;
import blindlap.wording.day.Words;
import java.util.List;
import java.util.Optional;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.PasswordField;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextField;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;

/**
 * The Swap page, and in its place what somebody who is not the helper is shown for one stint. What
 * to set is in the scene while it is in sight and at no other time.
 */
public final class OneStintPage extends StackPane {
  private static final double NAME = 96;

  private final Look look;
  private final OneStintModel model;
  private final Node swap;
  private final Runnable ride;
  private final Deaf deaf;
  private final VBox door = new VBox(16);
  private final StackPane content = new StackPane();
  private final HelperFrameView frame;

  /**
   * @param swap the helper's page, or the friend's
   * @param ride leads to the rider's page
   */
  public OneStintPage(Look look, OneStintModel model, Node swap, Runnable ride) {
    this.look = look;
    this.model = model;
    this.swap = swap;
    this.ride = ride;
    this.deaf = new Deaf(model.monotonic());
    deaf.guard(door);
    door.setAlignment(Pos.CENTER_LEFT);
    door.maxWidthProperty().bind(look.px(HelperDoorView.WIDTH));
    frame =
        new HelperFrameView(
            look,
            new HelperFrameView.Words(
                OneStintWords.say("page.who"), SwapWords.say("away"), SwapWords.say("hide")),
            scrolled(content),
            scrolled(door),
            model::hide);
    HelperDoorView.watch(frame, () -> {}, model::hide, model::tick);
    model.leftProperty().addListener((o, before, now) -> frame.idle(now));
    model.phaseProperty().addListener((o, before, now) -> show(now));
    show(model.phaseProperty().get());
  }

  private ScrollPane scrolled(Node content) {
    ScrollPane scroll = HelperDoorView.scrolled(content);
    WholeInView.keep(scroll, deaf::begin);
    return scroll;
  }

  private void show(OneStintModel.Phase phase) {
    content.getChildren().clear();
    door.getChildren().clear();
    Optional<OneStints.Shown.Setup> shown = model.shown();
    frame.blankProperty().set(shown.isEmpty());
    if (phase == OneStintModel.Phase.CLOSED) {
      getChildren().setAll(swap);
      return;
    }
    deaf.begin(); // what was pressed to come here must not press what stands here
    getChildren().setAll(frame);
    switch (phase) {
      case CLOSED -> {}
      case ASKS -> asks();
      case SHOWN -> shown.ifPresent(this::shown);
      case GONE -> gone();
      case REFUSED -> said(trouble());
    }
  }

  private Label trouble() {
    Label trouble = Fields.words("", "strong");
    trouble.textProperty().bind(model.troubleProperty());
    return trouble;
  }

  private void asks() {
    TextField name = field("page.name", new TextField());
    TextField stint = field("page.stint", new TextField());
    TextField words = field("page.words", new PasswordField());
    Runnable go =
        () -> {
          String typed = words.getText();
          words.clear();
          model.show(name.getText(), stint.getText(), typed);
        };
    name.setOnAction(e -> stint.requestFocus());
    stint.setOnAction(e -> words.requestFocus());
    words.setOnAction(e -> go.run());
    Button show = button("page.show", go);
    show.getStyleClass().add("next");
    door.setSpacing(8);
    door.getChildren()
        .add(
            HelperDoorView.lead(OneStintWords.say("page.how", OneStintModel.IN_SIGHT.toSeconds())));
    for (TextField field : List.of(name, stint, words)) {
      Label title = Fields.words(field.getAccessibleText(), "field-title");
      title.setLabelFor(field);
      door.getChildren().addAll(title, field);
    }
    door.getChildren().addAll(trouble(), show, leave());
    focus(name);
  }

  private void focus(Node first) {
    if (first.getScene() == null && getScene() != null) {
      applyCss(); // what scrolls is in the scene only once it has been laid out
      layout();
    }
    first.requestFocus();
  }

  private TextField field(String key, TextField field) {
    field.setAccessibleText(OneStintWords.say(key));
    field.minHeightProperty().bind(look.touch());
    return field;
  }

  private void shown(OneStints.Shown.Setup setup) {
    Label lead =
        HelperDoorView.lead(
            OneStintWords.say(
                setup.real() ? "real" : "dummy", setup.stint(), setup.setup(), setup.code()));
    lead.setFocusTraversable(true); // a key that bounces finds words and no button
    BigWords name = BigWords.setupName(look);
    name.atMost(NAME);
    name.say(setup.setup());
    VBox settings = new VBox(4);
    for (Setting each : setup.settings()) {
      settings
          .getChildren()
          .add(
              Fields.words(
                  OneStintWords.say("setting", each.name(), SwapWords.aim(each)).strip(),
                  "field-title"));
    }
    setup.steps().forEach(step -> settings.getChildren().add(Fields.words(step)));
    Label once = Fields.words(OneStintWords.say("page.once"), "note");
    once.setFocusTraversable(true); // with large text Tab brings what is below into view
    Label left = Fields.words("", "field-title");
    left.textProperty().bind(model.leftProperty());
    VBox page =
        new VBox(
            14,
            name,
            lead,
            settings,
            new Caution(SwapWords.say("caution"), Words.of("cautions").say("short")),
            left,
            once);
    page.setAlignment(Pos.CENTER_LEFT);
    page.maxWidthProperty().bind(look.px(HelperDoorView.WIDTH));
    content.getChildren().setAll(page);
    focus(lead);
  }

  private void gone() {
    said(
        HelperDoorView.lead(OneStintWords.say("page.gone")),
        Fields.words(OneStintWords.say("page.gone.ask")));
  }

  private void said(Node... words) {
    door.setSpacing(16);
    door.getChildren().setAll(words);
    Button on =
        button(
            "page.ride",
            () -> {
              model.leave();
              ride.run();
            });
    on.getStyleClass().add("next");
    door.getChildren().addAll(on, leave());
  }

  private Button leave() {
    return button("page.back", model::leave);
  }

  private Button button(String key, Runnable work) {
    Button button = Fields.button(OneStintWords.say(key), work);
    button.setWrapText(true);
    button.minHeightProperty().bind(look.touch());
    return button;
  }
}
