package blindlap.screen.swap;

import blindlap.screen.cover.HelperDoorView;
import blindlap.screen.cover.HelperFrameView;
import blindlap.screen.part.Deaf;
import blindlap.screen.part.Look;
import blindlap.screen.part.PhonesDoor;
import blindlap.wording.OneStintWords;
import blindlap.wording.SwapWords;
import java.util.List;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.HBox;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;

/**
 * The Swap page, unmistakably the helper's. Nothing of it is in the scene while it is blank. Escape
 * hides it at once, as the big key does.
 */
public final class SwapPage extends StackPane {
  private final Look look;
  private final SwapModel model;
  private final Runnable ride;
  private final Runnable review;
  private final Runnable back;
  private final VBox door = new VBox(16);
  private final StackPane content = new StackPane();
  private final HelperFrameView frame;
  private final Deaf deaf;
  private Runnable oneStint = () -> {};
  private @Nullable PhonesDoor phones;
  private boolean offered;

  /**
   * The page of a model.
   *
   * @param back leaves the page; it is hidden first
   */
  public SwapPage(Look look, SwapModel model, Runnable back) {
    this(look, model, back, back, back);
  }

  /**
   * The same.
   *
   * @param ride leads to the rider's page while the bike is out
   * @param review leads on once the day is closed
   */
  public SwapPage(Look look, SwapModel model, Runnable back, Runnable ride, Runnable review) {
    this.review = review;
    this.back = back;
    this.look = look;
    this.model = model;
    this.ride = ride;
    this.deaf = new Deaf(model.monotonic());
    getStyleClass().add("swap");
    deaf.guard(door);
    door.addEventFilter(KeyEvent.KEY_TYPED, this::typed);
    door.setAlignment(Pos.CENTER_LEFT);
    door.maxWidthProperty().bind(look.px(HelperDoorView.WIDTH));
    HelperFrameView.Words words =
        new HelperFrameView.Words(
            SwapWords.say("who"), SwapWords.say("away"), SwapWords.say("hide"));
    frame =
        new HelperFrameView(
            look,
            words,
            HelperFrameView.Edges.NARROW,
            content,
            HelperDoorView.scrolled(door),
            model::hide);
    model.phaseProperty().addListener((o, before, now) -> changed(now));
    model.timeProperty().addListener((o, before, now) -> idle());
    model.work().savedProperty().addListener((o, before, now) -> idle());
    show(model.phaseProperty().get());
    sceneProperty()
        .addListener(
            (o, before, scene) -> {
              if (scene != null) {
                focus();
              }
            });
    HelperDoorView.watch(this, model::touch, model::hide, model::tick);
  }

  /**
   * Offers the one-stint view at the door, whatever is behind it.
   *
   * @param opens opens it
   */
  public void offerOneStint(Runnable opens) {
    oneStint = opens;
    offered = true;
    show(model.phaseProperty().get());
  }

  /** Offers the phones of the day, at the door and while the page is open. */
  public void offerPhones(PhonesDoor door) {
    phones = door;
    frame.aside(door.button(look));
    show(model.phaseProperty().get());
  }

  private void idle() {
    String saved = model.work().savedProperty().get();
    String closes = model.timeProperty().get().idle();
    frame.idle(
        saved.isEmpty() || closes.isEmpty() || look.stacked() ? closes : saved + "    " + closes);
  }

  /** What was pressed to come to a door must not press what stands in it. */
  private void changed(SwapModel.Phase phase) {
    deaf.begin();
    show(phase);
  }

  /** Whoever types a word or a PIN has let go of what was pressed: the Enter after it counts. */
  private void typed(KeyEvent key) {
    if (!key.getCharacter().isBlank()) {
      deaf.end();
    }
  }

  private void show(SwapModel.Phase phase) {
    boolean open = phase == SwapModel.Phase.OPEN || phase == SwapModel.Phase.ALL_DONE;
    content.getChildren().clear();
    door.getChildren().clear();
    if (phase == SwapModel.Phase.SAFE) {
      frame.blankProperty().set(true);
      SwapSafeView safe =
          new SwapSafeView(
              look, model.monotonic(), model.safeWords(), model::bikeReturned, ride, phones);
      getChildren().setAll(safe);
      focus();
      return;
    }
    getChildren().setAll(frame);
    if (open) {
      SwapStintView stint = new SwapStintView(look, model, phones);
      content.getChildren().setAll(stint);
      idle();
      frame.blankProperty().set(false);
      focus();
      return;
    }
    frame.idle("");
    door.getChildren().setAll(door(phase));
    door.getChildren().add(leave());
    if (look.stacked()) {
      buttonsAtTheRight();
    }
    if (offered && (phase == SwapModel.Phase.PHRASE || phase == SwapModel.Phase.BLANK)) {
      door.getChildren().add(oneStint());
    }
    PhonesDoor way = phones;
    if (way != null && phase != SwapModel.Phase.NO_SESSION && !frame.roomAside()) {
      door.getChildren().add(way.button(look));
    }
    frame.blankProperty().set(true);
  }

  /** The focus starts where something is needed; the door sees to its own field. */
  private void focus() {
    Node shown =
        content.getChildren().isEmpty() ? getChildren().get(0) : content.getChildren().get(0);
    if (shown instanceof SwapSafeView safe) {
      safe.focus();
    } else if (shown instanceof SwapStintView stint) {
      stint.focus();
    }
  }

  /** With large text "the bike is back" is at the left, and reaches as high as these. */
  private void buttonsAtTheRight() {
    List<Node> buttons =
        door.getChildren().stream().filter(part -> part instanceof Button).toList();
    int first = door.getChildren().indexOf(buttons.get(0));
    door.getChildren().removeAll(buttons);
    HBox row = new HBox(24);
    row.getChildren().setAll(buttons);
    row.setAlignment(Pos.CENTER_RIGHT);
    door.getChildren().add(first, row);
  }

  private Button oneStint() {
    Button open = new Button(OneStintWords.say("page.open"));
    open.setWrapText(true);
    open.setOnAction(e -> oneStint.run());
    return open;
  }

  private Node leave() {
    Button leave = new Button(SwapWords.say("back"));
    leave.setOnAction(e -> back.run());
    return leave;
  }

  private Node onToReview() {
    Button on = new Button(SwapWords.say("over.review"));
    on.getStyleClass().add("next");
    on.minHeightProperty().bind(look.touch());
    on.setOnAction(e -> review.run());
    return on;
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
      case OVER -> new Node[] {HelperDoorView.lead(SwapWords.say("over")), onToReview()};
      // A day that is open is drawn elsewhere, before this door is asked for.
      case NO_SESSION, OPEN, ALL_DONE, SAFE ->
          new Node[] {HelperDoorView.lead(SwapWords.say("no.session"))};
    };
  }

  private Node[] secret(
      String asked, String title, String button, java.util.function.Consumer<String> typed) {
    return HelperDoorView.secret(look, asked, title, button, model.troubleProperty(), typed);
  }
}
