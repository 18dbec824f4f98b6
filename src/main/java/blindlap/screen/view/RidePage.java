package blindlap.screen.view;

import static javafx.scene.input.KeyCombination.SHORTCUT_DOWN;

import blindlap.screen.model.RideModel;
import blindlap.screen.model.RideQuestions;
import blindlap.screen.model.RideSheet;
import blindlap.wording.RideWords;
import blindlap.wording.Words;
import java.util.ArrayList;
import java.util.List;
import javafx.animation.Animation;
import javafx.animation.KeyFrame;
import javafx.animation.Timeline;
import javafx.geometry.Insets;
import javafx.scene.Node;
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
  private final HBox foot = new HBox(24);
  private final Node status;
  private final Button happened = new Button();
  private @Nullable Object shown;
  private final Button paper = new Button(RideWords.say("key.in"));
  private final Button takeBack = new Button();
  private final KeyInView keyIn;
  private boolean events;
  private boolean keying;

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
    ScrollPane sheet = new ScrollPane(right);
    sheet.setFitToWidth(true);
    sheet.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
    sheet.setFocusTraversable(false);
    right.setPadding(new Insets(28, 36, 28, 36));
    foot.setPadding(new Insets(16, 36, 20, 36));
    foot.getStyleClass().add("foot");
    VBox.setVgrow(sheet, Priority.ALWAYS);
    VBox side = new VBox(sheet, foot);
    side.getStyleClass().add("side");
    HBox.setHgrow(side, Priority.ALWAYS);
    getChildren().setAll(left(back), side);
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
    takeBack.setMinWidth(USE_PREF_SIZE);
    takeBack.setOnAction(e -> model.undo().takeBack());
    model.undo().lastProperty().addListener((o, before, now) -> offerTakeBack(now));
    offerTakeBack(model.undo().lastProperty().get());
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
    takeBack.setText(RideWords.say("take.back", last));
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

  private Node left(Runnable back) {
    head.getStyleClass().add("field-title");
    cap.getStyleClass().add("note");
    plate.setWrapText(true);
    cap.setWrapText(true);
    wide(happened);
    wide(paper);
    Button leave = wide(new Button(RideWords.say("back")));
    leave.setOnAction(e -> back.run());
    Words cautions = Words.of("cautions");
    Caution caution = new Caution(RideWords.say("caution"), cautions.say("ride"));
    Region between = new Region();
    VBox.setVgrow(between, Priority.ALWAYS);
    VBox column =
        new VBox(
            12, head, place, code, plate, watches, cap, between, happened, paper, leave, caution);
    column.setPadding(new Insets(28, 30, 28, 30));
    column.prefWidthProperty().bind(look.px(LEFT));
    ScrollPane scroll = new ScrollPane(column);
    scroll.setFitToWidth(true);
    scroll.setFitToHeight(true);
    scroll.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
    scroll.setFocusTraversable(false);
    scroll.prefWidthProperty().bind(look.px(LEFT));
    scroll.minWidthProperty().bind(look.px(LEFT).multiply(0.7));
    return scroll;
  }

  static <T extends Region> T wide(T part) {
    part.setMaxWidth(Double.MAX_VALUE);
    return part;
  }

  /** What decides whether the right side is built anew: never a value, or a touch would be lost. */
  private record Key(RideSheet.Stage stage, @Nullable Object lap, int number) {}

  private void show(RideSheet now) {
    head.setText(model.headline());
    place.setText(model.questions().place());
    code.say(now.code());
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

  static List<ChoiceRow.Option<String>> options(List<RideQuestions.Choice> choices) {
    return choices.stream().map(c -> new ChoiceRow.Option<>(c.key(), c.words())).toList();
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
  private List<Node> foot(RideSheet now) {
    Region between = new Region();
    HBox.setHgrow(between, Priority.ALWAYS);
    List<Node> parts = new ArrayList<>(List.of(status, between));
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
        default -> {} // nothing to do on this page
      }
    }
    return parts;
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
