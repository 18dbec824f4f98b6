package blindlap.screen.friend;

import blindlap.screen.cover.HelperCover;
import blindlap.screen.cover.HelperDoorView;
import blindlap.screen.cover.HelperFrameView;
import blindlap.screen.part.Look;
import blindlap.wording.FriendWords;
import blindlap.wording.OneStintWords;
import blindlap.wording.SwapWords;
import java.util.List;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;

/**
 * The helper's page; in a session whose rider swaps alone, what a friend does beforehand, behind
 * the same cover.
 */
public final class FriendPage extends StackPane {
  private final Look look;
  private final FriendModel model;
  private final Node helpers;
  private final Runnable back;
  private final Runnable ride;
  private final VBox door = new VBox(16);
  private final StackPane content = new StackPane();
  private final HelperFrameView frame;
  private @Nullable Runnable oneStint;

  /**
   * @param helpers the helper's page, of all other sessions
   * @param back leaves the page
   * @param ride leads to the rider's page
   */
  public FriendPage(Look look, FriendModel model, Node helpers, Runnable back, Runnable ride) {
    this.look = look;
    this.model = model;
    this.helpers = helpers;
    this.back = back;
    this.ride = ride;
    HelperCover cover = model.cover();
    door.setAlignment(Pos.CENTER_LEFT);
    door.maxWidthProperty().bind(look.px(HelperDoorView.WIDTH));
    frame =
        new HelperFrameView(
            look,
            new HelperFrameView.Words(
                FriendWords.say("friend"), SwapWords.say("away"), SwapWords.say("hide")),
            HelperDoorView.scrolled(content),
            HelperDoorView.scrolled(door),
            cover::hide);
    HelperDoorView.watch(frame, cover::touch, cover::hide, cover::tick);
    cover.stateProperty().addListener((o, before, now) -> show());
    cover.idleProperty().addListener((o, before, now) -> frame.idle(now));
    model.phaseProperty().addListener((o, before, now) -> show());
    model.units().shownProperty().addListener((o, before, now) -> show());
    show();
  }

  /**
   * Offers the one-stint view once units are prepared.
   *
   * @param opens opens it
   */
  public void offerOneStint(Runnable opens) {
    oneStint = opens;
    show();
  }

  private void show() {
    FriendModel.Phase phase = model.phaseProperty().get();
    content.getChildren().clear();
    door.getChildren().clear();
    if (phase == FriendModel.Phase.OTHER) {
      getChildren().setAll(helpers);
      return;
    }
    if (phase == FriendModel.Phase.NOTHING || phase == FriendModel.Phase.DONE) {
      frame.blankProperty().set(true);
      getChildren().setAll(HelperDoorView.scrolled(said()));
      return;
    }
    boolean open = model.cover().stateProperty().get() == HelperCover.State.OPEN;
    switch (phase) {
      case OTHER, NOTHING, DONE -> {}
      case PIN -> pin("friend.pin", model::begin);
      case MASKS -> inside(open, () -> new FriendMasksView(look, model));
      case UNITS -> inside(open, this::units);
    }
    boolean shown = open && (phase == FriendModel.Phase.MASKS || phase == FriendModel.Phase.UNITS);
    frame.blankProperty().set(!shown);
    getChildren().setAll(frame);
  }

  private Node units() {
    if (model.units().open()) {
      return new FriendUnitsView(look, model);
    }
    VBox asked =
        new VBox(
            16,
            HelperDoorView.secret(
                look,
                FriendWords.say("friend.phrase"),
                FriendWords.say("phrase"),
                SwapWords.say("phrase.open"),
                model.troubleProperty(),
                model::phrase));
    asked.maxWidthProperty().bind(look.px(HelperDoorView.WIDTH));
    asked.setAlignment(Pos.CENTER_LEFT);
    return asked;
  }

  private void inside(boolean open, java.util.function.Supplier<Node> page) {
    if (open) {
      content.getChildren().setAll(page.get());
    } else {
      pin("friend.reopen", model.cover()::reopen);
    }
  }

  private void pin(String asked, java.util.function.Consumer<String> typed) {
    Label words = HelperDoorView.lead("");
    words.textProperty().bind(model.wordsProperty());
    door.getChildren().setAll(words);
    door.getChildren()
        .addAll(
            List.of(
                HelperDoorView.secret(
                    look,
                    FriendWords.say(asked),
                    SwapWords.say("pin.title"),
                    SwapWords.say("phrase.open"),
                    model.cover().troubleProperty(),
                    typed)));
    door.getChildren().add(leave());
  }

  /** There is nothing behind a cover, and nobody has to look away. */
  private VBox said() {
    Label words = HelperDoorView.lead("");
    words.textProperty().bind(model.wordsProperty());
    Button on = new Button(FriendWords.say("friend.ride"));
    on.getStyleClass().add("next");
    on.minHeightProperty().bind(look.touch());
    on.setOnAction(e -> ride.run());
    VBox said = new VBox(16, words, on, leave());
    Runnable opens = oneStint;
    if (opens != null && model.prepared()) {
      Button open = new Button(OneStintWords.say("page.open"));
      open.setWrapText(true);
      open.minHeightProperty().bind(look.touch());
      open.setOnAction(e -> opens.run());
      said.getChildren().add(open);
    }
    said.setAlignment(Pos.CENTER_LEFT);
    said.maxWidthProperty().bind(look.px(HelperDoorView.WIDTH));
    return said;
  }

  private Button leave() {
    Button leave = new Button(SwapWords.say("back"));
    leave.minHeightProperty().bind(look.touch());
    leave.setOnAction(
        e -> {
          model.leave();
          back.run();
        });
    return leave;
  }
}
