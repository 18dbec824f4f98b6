package blindlap.screen.ride;

import static javafx.scene.input.KeyCombination.SHORTCUT_DOWN;

import blindlap.ride.RideSheet;
import blindlap.screen.part.BigWords;
import blindlap.screen.part.Caution;
import blindlap.screen.part.Fields;
import blindlap.screen.part.Look;
import blindlap.screen.part.SavedLine;
import blindlap.wording.day.RideWords;
import blindlap.wording.day.Words;
import java.util.ArrayList;
import java.util.List;
import javafx.animation.Animation;
import javafx.animation.KeyFrame;
import javafx.animation.Timeline;
import javafx.beans.InvalidationListener;
import javafx.beans.property.DoubleProperty;
import javafx.geometry.Insets;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyCodeCombination;
import javafx.scene.input.KeyCombination;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import javafx.util.Duration;
import org.jspecify.annotations.Nullable;

/** The Ride page: the code and the watch at the left, the score sheet at the right. */
public final class RidePage extends HBox {
  private static final double LEFT = 420;
  private static final KeyCombination UNDO = new KeyCodeCombination(KeyCode.Z, SHORTCUT_DOWN);

  private final Look look;
  private final RideModel model;
  private final Label head = new Label();
  private final Label place = new Label();
  private final BigWords code;
  private final Label plate = new Label(RideWords.say("plate"));
  private final VBox watches = new VBox(12);
  private final Label cap = new Label();
  private final VBox right = new VBox(18);
  private final StackPane foot = new StackPane();
  private final VBox top = new VBox(12);
  private final VBox bottom = new VBox(12);

  @SuppressWarnings({"unused", "FieldCanBeLocal"}) // held so that the look can reach this page
  private final InvalidationListener watch;

  private final Node status;
  private final Button happened = new Button();
  private @Nullable Object shown;
  private final Button paper = new Button(RideWords.say("key.in"));
  private final Button takeBack = new Button();
  private final KeyInView keyIn;
  private boolean events;
  private boolean keying;
  private List<Boolean> arranged = List.of();

  /**
   * The page of a model.
   *
   * @param back leaves the page
   */
  public RidePage(Look look, RideModel model, Runnable back) {
    this.look = look;
    this.model = model;
    this.keyIn = new KeyInView(look, model.keyIn());
    this.code = BigWords.code(look);
    getStyleClass().add("ride");
    right.setPadding(new Insets(28, 36, 28, 36));
    foot.setPadding(new Insets(16, 36, 20, 36));
    foot.getStyleClass().add("foot");
    left(back);
    arrange();
    watch = look.watch(this::again);
    status = status();
    happened.setOnAction(
        e -> {
          events = !events && !keying;
          keying = false;
          again();
        });
    paper.setOnAction(
        e -> {
          keying = true;
          events = false;
          model.keyIn().open(model.session());
          again();
        });
    takeBack();
    model.sheetProperty().addListener((o, before, now) -> show(now));
    show(model.sheetProperty().get());
    everySecond();
  }

  /** The last answer can be taken back by a button, and by Ctrl Z outside of a field. */
  private void takeBack() {
    takeBack.minHeightProperty().bind(look.touch());
    takeBack.setText(RideWords.say("take.back"));
    takeBack.setMinWidth(USE_PREF_SIZE);
    takeBack.setOnAction(e -> model.undo().takeBack());
    model.lastAnswerProperty().addListener((o, before, now) -> offerTakeBack(now));
    offerTakeBack(model.lastAnswerProperty().get());
    addEventHandler(
        KeyEvent.KEY_PRESSED,
        e -> {
          if (UNDO.match(e)) {
            model.undo().takeBack();
            e.consume();
          }
        });
  }

  private void offerTakeBack(String last) {
    takeBack.setAccessibleText(RideWords.say("take.back.of", last));
    takeBack.setVisible(!last.isEmpty());
    takeBack.setManaged(!last.isEmpty());
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
              }
            });
  }

  /**
   * Side by side; with large text one below the other, so that nothing is cut off. A table that is
   * keyed in has the whole width.
   */
  private void arrange() {
    boolean stacked = look.stacked() || keying;
    boolean alone = keying || (stacked && events);
    List<Boolean> wanted = List.of(stacked, alone);
    if (wanted.equals(arranged)) {
      return; // what has the focus keeps it
    }
    arranged = wanted;
    top.setVisible(!alone);
    top.setManaged(!alone);
    ScrollPane sheet = scrolled(stacked ? new VBox(top, right, bottom) : right);
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
      width.bind(look.px(LEFT));
    }
    getChildren().setAll(left, side);
  }

  private static ScrollPane scrolled(Node content) {
    ScrollPane scroll = new ScrollPane(content);
    scroll.setFitToWidth(true);
    scroll.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
    scroll.setFocusTraversable(false);
    return scroll;
  }

  private void left(Runnable back) {
    head.getStyleClass().add("field-title");
    cap.getStyleClass().add("note");
    for (Label words : List.of(head, place, plate, cap)) {
      words.setWrapText(true);
      words.setMinHeight(USE_PREF_SIZE);
    }
    Fields.wide(happened);
    Fields.wide(paper);
    Button leave = Fields.wide(new Button(RideWords.say("back")));
    leave.setOnAction(e -> back.run());
    Words cautions = Words.of("cautions");
    Caution caution = new Caution(RideWords.say("caution"), cautions.say("ride"));
    top.getChildren().setAll(head, place, code, plate, watches, cap);
    top.setPadding(new Insets(28, 30, 12, 30));
    bottom.getChildren().setAll(happened, paper, leave, caution);
    bottom.setPadding(new Insets(0, 30, 28, 30));
  }

  /** What decides whether the right side is built anew: never a value, or a touch would be lost. */
  private record Key(RideSheet.Stage stage, @Nullable Object lap, int number) {}

  private void show(RideSheet now) {
    head.setText(model.headline());
    place.setText(model.questions().place());
    code.say(now.code());
    code.setManaged(!look.stacked() || !now.code().isEmpty());
    plate.setVisible(!now.code().isEmpty());
    cap.setText(cap(now));
    happened.setText(RideWords.say(events || keying ? "less" : "more"));
    happened.setDisable(
        now.stage() == RideSheet.Stage.NO_SESSION || now.stage() == RideSheet.Stage.OVER);
    paper.setDisable(happened.isDisable());
    // A table that is being keyed in stays as it is, whatever other windows write.
    Object key = keying ? "keying" : new Key(now.stage(), now.lap(), now.number());
    if (!key.equals(shown)) {
      shown = key;
      watches.getChildren().setAll(watches(now));
      right.getChildren().setAll(right(now));
      foot.getChildren().setAll(foot(now));
    }
  }

  private static String cap(RideSheet now) {
    Integer most = now.most();
    if (most == null || now.number() == 0) {
      return "";
    }
    return now.ridden() >= most
        ? RideWords.say("cap.reached", most)
        : RideWords.say("cap", now.ridden() + 1, most);
  }

  private List<Node> watches(RideSheet now) {
    List<Node> parts = new ArrayList<>();
    boolean riding = now.stage() == RideSheet.Stage.SCORED;
    if (!riding && now.stage() != RideSheet.Stage.DONE) {
      return parts;
    }
    for (String measure : now.watches().keySet()) {
      parts.add(new RideWatchView(look, model, measure, riding));
    }
    return parts;
  }

  private List<Node> right(RideSheet now) {
    if (keying) {
      return List.of(keyIn);
    }
    if (events) {
      return List.of(new RideEventsView(look, model, this::closeEvents));
    }
    return switch (now.stage()) {
      case NO_SESSION -> List.of(words("no.session"));
      case OVER -> List.of(words("over"), said());
      case ALL_RIDDEN ->
          List.of(words("all.ridden"), new RideEventsView(look, model, this::closeEvents));
      case CAP -> List.of(new RideCapView(look, model, this::openEvents));
      case HAND_OVER -> List.of(words("hand.over"), note("hand.over.note"));
      case WARM_UP -> List.of(words("warm.up.words"));
      case SETTLING -> List.of(words("settling"));
      case SCORED -> List.of(new RideScoreView(look, model, now));
      case DONE -> List.of(words("done.words"), said());
    };
  }

  /** What is saved, and the one next step, always in view. */
  private Node foot(RideSheet now) {
    List<Node> parts = new ArrayList<>();
    if (!events && !keying) {
      parts.add(takeBack);
    }
    if (!events && !keying) {
      switch (now.stage()) {
        case HAND_OVER -> parts.add(next(RideWords.say("hand.over.button"), model::handedOver));
        case WARM_UP -> parts.add(next(RideWords.say("warm.up.button"), model::warmUpRidden));
        case SETTLING -> parts.add(next(RideWords.say("settling.button"), model::lapDone));
        case SCORED -> parts.add(next(RideWords.say("done.button", now.number()), model::lapDone));
        case DONE -> parts.add(next(RideWords.say("next.button"), model::next));
        case NO_SESSION, CAP, ALL_RIDDEN, OVER -> {} // nothing to do on this page
      }
    }
    if (look.stacked()) {
      FlowPane buttons = new FlowPane(24, 12);
      buttons.getChildren().setAll(parts);
      return new VBox(12, status, buttons);
    }
    HBox.setHgrow(status, Priority.ALWAYS);
    HBox row = new HBox(24, status);
    row.getChildren().addAll(parts);
    row.setAlignment(Pos.CENTER_LEFT);
    return row;
  }

  private Node said() {
    Label said = new Label();
    said.setWrapText(true);
    said.textProperty().bind(model.events().saidProperty());
    return said;
  }

  private void openEvents() {
    events = true;
    again();
  }

  private void closeEvents() {
    events = false;
    again();
  }

  private void again() {
    shown = null;
    arrange();
    show(model.sheetProperty().get());
  }

  private Node status() {
    SavedLine saved = new SavedLine();
    Runnable say = () -> saved.say(model.savedProperty().get(), model.openProperty().get());
    model.savedProperty().addListener((o, a, b) -> say.run());
    model.openProperty().addListener((o, a, b) -> say.run());
    say.run();
    Label trouble = new Label();
    trouble.setWrapText(true);
    trouble.getStyleClass().add("strong");
    trouble.textProperty().bind(model.troubleProperty());
    trouble.managedProperty().bind(trouble.textProperty().isNotEmpty());
    return new VBox(8, saved, trouble);
  }

  private Button next(String words, Runnable action) {
    Button button = new Button(words);
    button.getStyleClass().add("next");
    button.minHeightProperty().bind(look.touch());
    button.setMinWidth(USE_PREF_SIZE);
    button.setOnAction(e -> action.run());
    return button;
  }

  private static Label words(String key) {
    Label label = new Label(RideWords.say(key));
    label.getStyleClass().add("lead");
    label.setWrapText(true);
    return label;
  }

  private static Label note(String key) {
    Label label = new Label(RideWords.say(key));
    label.getStyleClass().add("note");
    label.setWrapText(true);
    return label;
  }
}
