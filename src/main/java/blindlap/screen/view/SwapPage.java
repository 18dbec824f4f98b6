package blindlap.screen.view;

import blindlap.screen.model.SwapModel;
import blindlap.wording.SwapWords;
import javafx.animation.Animation;
import javafx.animation.KeyFrame;
import javafx.animation.Timeline;
import javafx.geometry.Insets;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.PasswordField;
import javafx.scene.control.ScrollPane;
import javafx.scene.input.InputEvent;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.Priority;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import javafx.util.Duration;

/**
 * The Swap page, unmistakably the helper's. Nothing of it is in the scene while it is blank. Escape
 * hides it at once, as the big key does.
 */
public final class SwapPage extends StackPane {
  private static final double DOOR = 620;

  private final Look look;
  private final SwapModel model;
  private final VBox door = new VBox(16);
  private final StackPane content = new StackPane();
  private final HelperFrame frame;

  /**
   * The page of a model.
   *
   * @param back leaves the page; it is hidden first
   */
  public SwapPage(Look look, SwapModel model, Runnable back) {
    this.look = look;
    this.model = model;
    getStyleClass().add("swap");
    door.setAlignment(Pos.CENTER_LEFT);
    door.maxWidthProperty().bind(look.px(DOOR));
    ScrollPane scroll = new ScrollPane(content);
    scroll.setFitToWidth(true);
    content.setPadding(new Insets(0, 24, 0, 0));
    scroll.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
    scroll.setFocusTraversable(false);
    VBox.setVgrow(scroll, Priority.ALWAYS);
    HelperFrame.Words words =
        new HelperFrame.Words(SwapWords.say("who"), SwapWords.say("away"), SwapWords.say("hide"));
    frame = new HelperFrame(look, words, scroll, door, model::hide);
    getChildren().setAll(frame);
    addEventFilter(InputEvent.ANY, e -> model.touch());
    addEventFilter(
        KeyEvent.KEY_PRESSED,
        e -> {
          if (e.getCode() == KeyCode.ESCAPE) {
            model.hide();
            e.consume();
          }
        });
    model.phaseProperty().addListener((o, before, now) -> show(now, back));
    model.timeProperty().addListener((o, before, now) -> frame.idle(now.idle()));
    show(model.phaseProperty().get(), back);
    everySecond();
  }

  private void everySecond() {
    Timeline ticks = new Timeline(new KeyFrame(Duration.seconds(1), e -> model.tick()));
    ticks.setCycleCount(Animation.INDEFINITE);
    sceneProperty()
        .addListener(
            (o, before, scene) -> {
              if (scene == null) {
                model.hide(); // whoever leaves the page leaves it closed
                ticks.stop();
              } else {
                ticks.play();
              }
            });
  }

  private void show(SwapModel.Phase phase, Runnable back) {
    boolean open = phase == SwapModel.Phase.OPEN || phase == SwapModel.Phase.ALL_DONE;
    content.getChildren().clear();
    if (open) {
      content.getChildren().setAll(new SwapStintView(look, model));
    } else {
      frame.idle("");
      door.getChildren().setAll(door(phase));
      door.getChildren().add(leave(back));
    }
    frame.blankProperty().set(!open);
  }

  private Node leave(Runnable back) {
    Button leave = new Button(SwapWords.say("back"));
    leave.setOnAction(e -> back.run());
    return leave;
  }

  private Node[] door(SwapModel.Phase phase) {
    return switch (phase) {
      case PHRASE ->
          secret(
              SwapWords.say("phrase"),
              SwapWords.say("phrase.title"),
              SwapWords.say("phrase.open"),
              model::phrase);
      case CHOOSE_PIN ->
          secret(
              SwapWords.say("pin.choose"),
              SwapWords.say("pin.title"),
              SwapWords.say("pin.keep"),
              model::choosePin);
      case BLANK ->
          secret(
              SwapWords.say("pin.ask"),
              SwapWords.say("pin.title"),
              SwapWords.say("phrase.open"),
              model::reopen);
      case OVER -> new Node[] {lead(SwapWords.say("over"))};
      default -> new Node[] {lead(SwapWords.say("no.session"))};
    };
  }

  private static Label lead(String words) {
    Label label = new Label(words);
    label.getStyleClass().add("lead");
    label.setWrapText(true);
    return label;
  }

  private Node[] secret(
      String asked, String title, String button, java.util.function.Consumer<String> typed) {
    Label name = new Label(title);
    name.getStyleClass().add("field-title");
    PasswordField field = new PasswordField();
    field.setAccessibleText(title);
    field.minHeightProperty().bind(look.touch());
    name.setLabelFor(field);
    Button open = new Button(button);
    open.getStyleClass().add("next");
    open.minHeightProperty().bind(look.touch());
    Runnable go =
        () -> {
          String words = field.getText();
          field.clear();
          typed.accept(words);
        };
    open.setOnAction(e -> go.run());
    field.setOnAction(e -> go.run());
    Label trouble = new Label();
    trouble.setWrapText(true);
    trouble.getStyleClass().add("strong");
    trouble.textProperty().bind(model.troubleProperty());
    return new Node[] {lead(asked), name, field, open, trouble};
  }
}
