package blindlap.screen.ride;

import static javafx.scene.input.KeyCombination.SHORTCUT_DOWN;

import blindlap.ride.RideSheet;
import blindlap.screen.part.BigWords;
import blindlap.screen.part.Caution;
import blindlap.screen.part.Deaf;
import blindlap.screen.part.Look;
import blindlap.screen.part.WholeInView;
import blindlap.wording.day.RideWords;
import blindlap.wording.day.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.animation.Animation;
import javafx.animation.KeyFrame;
import javafx.animation.Timeline;
import javafx.beans.InvalidationListener;
import javafx.beans.property.DoubleProperty;
import javafx.geometry.Insets;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyCodeCombination;
import javafx.scene.input.KeyCombination;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.util.Duration;
import org.jspecify.annotations.Nullable;

/** The Ride page: the code and the watch at the left, the score sheet at the right. */
public final class RidePage extends HBox {
  private static final double SIDE = 36;
  private static final KeyCombination UNDO = new KeyCodeCombination(KeyCode.Z, SHORTCUT_DOWN);

  private final @Nullable OwnSwapView own;
  private final Look look;
  private final RideRoom room;
  private final RideModel model;
  private final Deaf deaf;
  private final RideWays on;
  private final Label head = new Label();
  private final Label place = new Label();
  private final BigWords code;
  private final Label plate = new Label();
  private final VBox watches = new VBox(12);
  private final Label cap = new Label();
  private final VBox right = new VBox(18);
  private final RideFootView foot;
  private final VBox top = new VBox(6);
  private final VBox bottom = new VBox(10);

  @SuppressWarnings({"unused", "FieldCanBeLocal"}) // held so that the look can reach this page
  private final InvalidationListener watch;

  private final Button happened = new Button();
  private final Button paper = new Button(RideWords.say("key.in"));
  private final Button again = new Button();
  private final KeyInView keyIn;
  private @Nullable Object shown;
  private @Nullable Key staged;
  private ScrollPane sheet = new ScrollPane();
  private boolean events;
  private boolean keying;
  private List<Boolean> arranged = List.of();

  /**
   * The page of a model.
   *
   * @param back leaves the page
   */
  public RidePage(Look look, RideModel model, Runnable back) {
    this(look, model, back, back);
  }

  /**
   * The same.
   *
   * @param review leads on once the day is closed
   */
  public RidePage(Look look, RideModel model, Runnable back, Runnable review) {
    this(look, model, null, back, new RideWays(review, null));
  }

  /**
   * The same.
   *
   * @param own stands in the place of the hand-over where the rider swaps alone; null for none
   */
  public RidePage(
      Look look, RideModel model, @Nullable OwnSwapView own, Runnable back, RideWays on) {
    this.own = own;
    this.look = look;
    this.room = new RideRoom(look, widthProperty(), heightProperty(), SIDE);
    this.model = model;
    this.on = on;
    this.deaf = model.deaf();
    this.foot = new RideFootView(look, model, deaf);
    this.keyIn = new KeyInView(look, model.keyIn(), deaf);
    this.code = BigWords.code(look);
    getStyleClass().add("ride");
    right.setPadding(new Insets(10, SIDE, 8, SIDE));
    foot.setPadding(new Insets(10, SIDE, 12, SIDE));
    for (Node part : List.of(right, foot, watches, bottom)) {
      deaf.guard(part);
    }
    left(back);
    arrange();
    watch = look.watch(this::again);
    widthProperty().addListener(o -> fitted());
    heightProperty().addListener(o -> fitted());
    buttons();
    addEventHandler(
        KeyEvent.KEY_PRESSED,
        e -> {
          if (UNDO.match(e)) {
            foot.takeBack();
            e.consume();
          }
        });
    model.sheetProperty().addListener((o, before, now) -> show(now));
    if (own != null) {
      own.aloneProperty().addListener((o, before, now) -> again());
    }
    // Its table comes a moment after the press, and again with each turn of the typing.
    model.keyIn().stageProperty().addListener((o, before, now) -> fromTheTop());
    show(model.sheetProperty().get());
    everySecond();
  }

  /** What else may be asked of the rider, beside the laps; it is seen while there is something. */
  public void ask(Node question) {
    deaf.guard(question);
    top.getChildren().add(question);
  }

  /** What the rider mounts alone, where that is what comes next. */
  private Optional<OwnSwapView> mounting(RideSheet now) {
    return Optional.ofNullable(own)
        .filter(each -> each.aloneProperty().get() && now.stage() == RideSheet.Stage.HAND_OVER);
  }

  private void buttons() {
    happened.setOnAction(e -> turn(!events && !keying, false));
    paper.setOnAction(
        e -> {
          model.keyIn().open(model.session());
          turn(false, true);
        });
    again.setOnAction(e -> model.done().openAgain());
  }

  /** Other windows may write to the notebook: looked at once a second while the page is in view. */
  private void everySecond() {
    Timeline second = new Timeline(new KeyFrame(Duration.seconds(1), e -> model.tick()));
    second.setCycleCount(Animation.INDEFINITE);
    sceneProperty()
        .addListener(
            (o, before, scene) -> {
              if (scene == null) {
                second.stop();
              } else {
                second.play();
                deaf.begin();
                show(model.sheetProperty().get()); // the day may have been ended elsewhere
                focus();
              }
            });
  }

  private boolean stacked() {
    return look.stacked() || keying;
  }

  /** The window has another size: the code and the columns of the sheet follow it. */
  private void fitted() {
    code.atMost(room.code());
    if (!arranged.isEmpty() && (arranged.get(2) != room.wide() || arranged.get(3) != room.low())) {
      again();
    }
  }

  /**
   * Side by side; with large text one below the other, so that nothing is cut off. A table that is
   * keyed in has the whole width.
   */
  private void arrange() {
    boolean stacked = stacked();
    boolean alone = keying || (stacked && events);
    List<Boolean> wanted = List.of(stacked, alone, room.wide(), room.low());
    if (wanted.equals(arranged)) {
      return; // what has the focus keeps it
    }
    arranged = wanted;
    top.setVisible(!alone);
    top.setManaged(!alone);
    sheet = scrolled(stacked ? new VBox(8, top, right, bottom) : right);
    VBox.setVgrow(sheet, Priority.ALWAYS);
    VBox side = new VBox(sheet, foot);
    HBox.setHgrow(side, Priority.ALWAYS);
    if (stacked) {
      getChildren().setAll(side);
      return;
    }
    side.getStyleClass().add("side");
    Region between = new Region();
    VBox.setVgrow(between, Priority.ALWAYS);
    VBox column = new VBox(top, between, bottom);
    ScrollPane left = scrolled(column);
    left.setFitToHeight(true);
    for (DoubleProperty width : List.of(left.prefWidthProperty(), left.minWidthProperty())) {
      width.bind(look.px(RideRoom.LEFT));
    }
    getChildren().setAll(left, side);
  }

  private ScrollPane scrolled(Node content) {
    ScrollPane scroll = new ScrollPane(content);
    scroll.setFitToWidth(true);
    scroll.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
    scroll.setFocusTraversable(false);
    WholeInView.keep(scroll, deaf::begin);
    return scroll;
  }

  private void left(Runnable back) {
    head.getStyleClass().add("field-title");
    cap.getStyleClass().add("note");
    for (Label words : List.of(head, place, plate, cap)) {
      words.setWrapText(true);
      words.setMinHeight(USE_PREF_SIZE);
    }
    Button leave = new Button(RideWords.say("back"));
    leave.setOnAction(e -> back.run());
    RideButtonsView buttons = new RideButtonsView(look, List.of(happened, paper, leave, again));
    Words cautions = Words.of("cautions");
    Caution caution = new Caution(RideWords.say("caution"), cautions.say("ride"));
    RideHeadView heading = new RideHeadView(look, head, place, on.phones());
    top.getChildren().setAll(heading, code, plate, watches, cap);
    top.setPadding(new Insets(10, 30, 4, 30));
    bottom.getChildren().setAll(buttons, caution);
    bottom.setPadding(new Insets(0, 30, 10, 30));
  }

  /** What decides whether the right side is built anew: never a value, or a touch would be lost. */
  private record Key(
      RideSheet.Stage stage, @Nullable Object lap, int number, boolean helper, boolean last) {}

  private void show(RideSheet now) {
    head.setText(model.headline());
    place.setText(model.questions().place());
    plate.setText(model.questions().plate());
    code.say(now.code());
    code.setManaged(!look.stacked() || !now.code().isEmpty());
    plate.setVisible(!now.code().isEmpty());
    cap.setText(RideCapView.said(now));
    happened.setText(RideWords.say(events || keying ? "less" : "more"));
    happened.setDisable(
        now.stage() == RideSheet.Stage.NO_SESSION || now.stage() == RideSheet.Stage.OVER);
    paper.setDisable(happened.isDisable());
    offerAgain();
    boolean last = now.stage() == RideSheet.Stage.DONE && model.done().last();
    Key stage = new Key(now.stage(), now.lap(), now.number(), now.helperHandsOver(), last);
    boolean another = !stage.equals(staged);
    staged = stage;
    // A table that is being keyed in stays as it is, whatever other windows write.
    Object key = keying ? "keying" : stage;
    if (!key.equals(shown)) {
      shown = key;
      if (another) {
        deaf.begin();
      }
      watches.getChildren().setAll(watches(now));
      right.getChildren().setAll(right(now));
      foot.show(now, !events && !keying);
      focus();
    }
  }

  private void offerAgain() {
    Optional<String> lap = model.done().reopenable().map(model::lapName);
    again.setVisible(lap.isPresent() && !keying);
    lap.ifPresent(name -> again.setText(RideWords.say("again", name)));
  }

  /** Where the next key is needed: never on a button that the same key would press. */
  private void focus() {
    if (getScene() == null) {
      return;
    }
    applyCss(); // what is arranged anew, or scrolls, has no scene before its skin
    Node first = right.getChildren().get(0);
    if (own != null && first == own.view()) {
      own.first().requestFocus();
      return;
    }
    if (first instanceof RideStepsView steps) {
      steps.first().requestFocus();
      return;
    }
    Parent from = keying || watches.getChildren().isEmpty() ? right : watches;
    FirstInView.of(from).ifPresent(Node::requestFocus);
  }

  /** A table is keyed in from its first cell; what to type stands above it. */
  private void fromTheTop() {
    if (keying) {
      sheet.setVvalue(0);
      focus();
    }
  }

  private List<Node> watches(RideSheet now) {
    List<Node> parts = new ArrayList<>();
    if (now.stage() == RideSheet.Stage.SCORED) {
      for (String measure : now.watches().keySet()) {
        parts.add(new RideWatchView(look, model, measure, true, parts.isEmpty(), room.touch()));
      }
    }
    return parts;
  }

  private List<Node> right(RideSheet now) {
    if (keying) {
      return List.of(keyIn);
    }
    if (events) {
      return List.of(new RideEventsView(look, model, deaf, this::closeEvents));
    }
    return switch (now.stage()) {
      case ALL_RIDDEN ->
          List.of(steps(now), new RideEventsView(look, model, deaf, this::closeEvents));
      case CAP -> List.of(new RideCapView(look, model, deaf, this::openEvents));
      case SCORED -> List.of(new RideScoreView(look, model, now, room.wide(), room.low()));
      case HAND_OVER -> List.of(mounting(now).map(this::comes).orElseGet(() -> steps(now)));
      case NO_SESSION, OVER, WARM_UP, SETTLING, DONE -> List.of(steps(now));
    };
  }

  private Node steps(RideSheet now) {
    boolean alone = own != null && own.aloneProperty().get();
    return new RideStepsView(look, model, deaf, now, alone, on);
  }

  private Node comes(OwnSwapView mounting) {
    mounting.comes();
    return mounting.view();
  }

  /** Something else stands under the finger that asked for it, or the way back does. */
  private void turn(boolean toEvents, boolean toKeying) {
    events = toEvents;
    keying = toKeying;
    deaf.begin();
    again();
  }

  private void openEvents() {
    turn(true, keying);
  }

  private void closeEvents() {
    turn(false, keying);
  }

  private void again() {
    shown = null;
    arrange();
    show(model.sheetProperty().get());
  }
}
