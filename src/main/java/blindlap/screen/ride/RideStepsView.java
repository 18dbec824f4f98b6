package blindlap.screen.ride;

import blindlap.ride.RideSheet;
import blindlap.screen.part.Deaf;
import blindlap.screen.part.HoldButton;
import blindlap.screen.part.Look;
import blindlap.screen.part.WholeInView;
import blindlap.session.day.Trial;
import blindlap.wording.day.RideTrialWords;
import blindlap.wording.day.RideWords;
import java.util.ArrayList;
import java.util.List;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;

/**
 * What stands in place of the score sheet between two laps: what to do now, in words, and the one
 * step. Two steps that follow each other never stand at one place: "on to the next lap" is at the
 * left, the hand-over at the right, and "done" below the page.
 */
final class RideStepsView extends VBox {
  private final Look look;
  private final RideModel model;
  private final Deaf deaf;
  private final Label first;

  /**
   * @param alone true where the rider swaps alone
   * @param on where it leads on to once all laps are ridden
   */
  RideStepsView(Look look, RideModel model, Deaf deaf, RideSheet now, boolean alone, RideWays on) {
    super(18);
    this.look = look;
    this.model = model;
    this.deaf = deaf;
    this.first = words(said(now, alone));
    // A key that bounces finds words and no button; from here Tab leads on.
    first.setFocusTraversable(true);
    first.minHeightProperty().bind(look.touch());
    getChildren().add(first);
    switch (now.stage()) {
      case HAND_OVER -> handOver(now.helperHandsOver());
      case DONE -> done(now);
      case OVER -> over(on.review());
      case NO_SESSION, WARM_UP, SETTLING, CAP, SCORED, ALL_RIDDEN -> {} // words alone
    }
    Runnable recording = on.recording();
    if (recording != null
        && (now.stage() == RideSheet.Stage.OVER || now.stage() == RideSheet.Stage.ALL_RIDDEN)) {
      Button bring = new Button(RideWords.say("over.recording"));
      bring.minHeightProperty().bind(look.touch());
      bring.setMinWidth(USE_PREF_SIZE);
      bring.setOnAction(e -> deaf.hear(recording));
      getChildren().add(bring);
    }
  }

  /** What is to be done now; in a telling run what became of the trial. */
  private static String said(RideSheet now, boolean alone) {
    Trial trial = now.stage() == RideSheet.Stage.DONE ? now.trial() : null;
    return trial == null
        ? RideWords.say(key(now, alone))
        : RideTrialWords.done(trial, now.endsTrial());
  }

  private static String key(RideSheet now, boolean alone) {
    return switch (now.stage()) {
      case NO_SESSION -> "no.session";
      case HAND_OVER -> "hand.over";
      case WARM_UP -> "warm.up.words";
      case SETTLING -> "settling";
      case DONE -> alone ? "done.words.alone" : "done.words";
      case OVER -> "over";
      case CAP, SCORED, ALL_RIDDEN -> "all.ridden";
    };
  }

  /** Where the focus begins. */
  Node first() {
    return first;
  }

  private void done(RideSheet now) {
    boolean last = model.done().last();
    Button next = new Button(RideWords.say(last ? "next.end" : "next.button"));
    next.getStyleClass().add("next");
    next.minHeightProperty().bind(look.touch());
    next.setMinWidth(USE_PREF_SIZE);
    next.setDefaultButton(true);
    next.setOnAction(e -> deaf.hear(model::next));
    // With large text what may be said of the day comes at the left.
    Node step = last && look.stacked() ? atTheRight(next) : next;
    together(said(), step, new RideCovariatesView(look, model, "covariate.done"));
    List<Node> watches = new ArrayList<>();
    for (String measure : now.watches().keySet()) {
      watches.add(new RideWatchView(look, model, measure, false, watches.isEmpty(), look.touch()));
    }
    getChildren().addAll(watches);
  }

  private void over(Runnable review) {
    Button on = new Button(RideWords.say("over.review"));
    on.getStyleClass().add("next");
    on.minHeightProperty().bind(look.touch());
    on.setMinWidth(USE_PREF_SIZE);
    on.setOnAction(e -> deaf.hear(review));
    together(said(), on);
    getChildren().add(new RideVoidsView(look, model));
  }

  private void handOver(boolean helperHandsOver) {
    getChildren().add(new RideCovariatesView(look, model, "covariate.before"));
    Label tooShort = note("hand.over.short");
    tooShort.getStyleClass().add("strong");
    tooShort.setVisible(false);
    HoldButton hold =
        new HoldButton(
            RideWords.say(helperHandsOver ? "hand.over.without" : "hand.over.button"),
            RideWords.say("hand.over.let.go"),
            model.monotonic(),
            () -> deaf.hear(model::handedOver),
            () -> tooShort.setVisible(true));
    if (!helperHandsOver) {
      hold.getStyleClass().add("next");
    }
    hold.minHeightProperty().bind(look.touch());
    hold.setMinWidth(USE_PREF_SIZE);
    HBox right = atTheRight(hold);
    if (helperHandsOver) {
      together(note("hand.over.waits"), note("hand.over.without.note"), right, tooShort);
    } else {
      together(note("hand.over.note"), right, tooShort);
    }
  }

  private static HBox atTheRight(Node step) {
    HBox right = new HBox(step);
    right.setAlignment(Pos.CENTER_RIGHT);
    return right;
  }

  /** Words and step are seen as one, whatever the size of the text. */
  private void together(Node... parts) {
    VBox all = WholeInView.together(new VBox(getSpacing(), first));
    all.getChildren().addAll(parts);
    getChildren().setAll(all);
  }

  private Label said() {
    Label said = new Label();
    said.setWrapText(true);
    said.textProperty().bind(model.events().saidProperty());
    said.managedProperty().bind(said.textProperty().isNotEmpty());
    return said;
  }

  private static Label words(String said) {
    Label label = new Label(said);
    label.getStyleClass().add("lead");
    label.setWrapText(true);
    return label;
  }

  private static Label note(String key) {
    Label label = new Label(RideWords.say(key));
    label.getStyleClass().add("note");
    label.setWrapText(true);
    label.setMinHeight(USE_PREF_SIZE);
    return label;
  }
}
