package blindlap.screen.ride;

import blindlap.ride.RideQuestions;
import blindlap.ride.RideSheet;
import blindlap.screen.part.ChoiceRow;
import blindlap.screen.part.Deaf;
import blindlap.screen.part.Fields;
import blindlap.screen.part.HoldButton;
import blindlap.screen.part.Look;
import blindlap.screen.part.WholeInView;
import blindlap.wording.day.RideWords;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import javafx.beans.binding.DoubleBinding;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;

/**
 * The watch of one timed measure. It says "ready", "running" and "stopped", never a running time:
 * the rider scores first. Start and Stop share one place, which is deaf for a moment after each;
 * every other button has a place of its own, where no other button ever stands.
 */
final class RideWatchView extends VBox {
  private final Look look;
  private final RideModel model;
  private final String measure;
  private final boolean riding;
  private final boolean first;
  private final Deaf deaf;
  private final DoubleBinding touch;
  private final Label state = new Label();
  private final GridPane places = new GridPane();
  private final VBox who = new VBox(8);
  private RideSheet.Watch.State built = RideSheet.Watch.State.READY;
  private boolean locked;
  private boolean sure;

  /**
   * @param riding true while the lap is ridden and scored; false once it is done, when a time may
   *     be typed
   * @param first true for the first watch, beside which it is asked who holds it
   * @param touch how high what is touched is at least
   */
  RideWatchView(
      Look look,
      RideModel model,
      String measure,
      boolean riding,
      boolean first,
      DoubleBinding touch) {
    super(8);
    this.touch = touch;
    WholeInView.together(this);
    this.look = look;
    this.model = model;
    this.measure = measure;
    this.riding = riding;
    this.first = first;
    this.deaf = model.deaf();
    Label title = new Label(measure);
    title.getStyleClass().add("field-title");
    title.setWrapText(true);
    state.getStyleClass().add("strong");
    state.setWrapText(true);
    state.setMaxWidth(Double.MAX_VALUE);
    places.hgapProperty().bind(look.px(12)); // the frame of the focus grows into it
    places.setVgap(12);
    for (int i = 0; i < 2; i++) {
      ColumnConstraints half = new ColumnConstraints();
      half.setPercentWidth(50);
      places.getColumnConstraints().add(half);
    }
    deaf.guard(places);
    getChildren().setAll(title, places, who);
    build();
    model.sheetProperty().addListener((o, before, now) -> changed(now));
  }

  private RideSheet.Watch watch() {
    RideSheet.Watch watch = model.sheetProperty().get().watches().get(measure);
    return watch == null
        ? new RideSheet.Watch(RideSheet.Watch.State.READY, null, null, List.of())
        : watch;
  }

  private boolean missing() {
    RideSheet.Watch watch = watch();
    return watch.state() != RideSheet.Watch.State.STOPPED || !watch.doubtful().isEmpty();
  }

  private void changed(RideSheet now) {
    if (getScene() == null || !now.watches().containsKey(measure)) {
      return;
    }
    if (watch().state() != built || now.locked() != locked || !riding) {
      deaf.begin();
      build();
    }
  }

  private void build() {
    RideSheet.Watch watch = watch();
    boolean focused = isFocusWithin();
    built = watch.state();
    locked = model.sheetProperty().get().locked();
    sure = false;
    state.setText(words(watch));
    places.getChildren().clear();
    boolean stopped = riding && watch.state() == RideSheet.Watch.State.STOPPED;
    // A key that bounces must not press what takes the time back, so the focus goes to the words.
    state.setFocusTraversable(stopped);
    state.setMinHeight(USE_PREF_SIZE);
    if (riding) {
      riding(watch.state());
    } else {
      places.add(state, 0, 0, 2, 1);
      if (missing()) {
        places.add(typed(), 0, 1, 2, 1);
      }
    }
    who.getChildren().clear();
    boolean askWho = riding ? watch.state() == RideSheet.Watch.State.READY : missing();
    if (first && riding && locked) {
      who.getChildren().addAll(withHelper());
    } else if (first && askWho) {
      who.getChildren().addAll(whoTimes());
    }
    if (stopped && focused) {
      state.requestFocus();
    } else if (focused && riding) {
      // The next press is the natural one: start, then stop. Nobody hunts for it with gloves on.
      places.getChildren().get(0).requestFocus();
    }
  }

  private void riding(RideSheet.Watch.State now) {
    switch (now) {
      case READY -> {
        Button start = button("watch.start", () -> model.watches().start(measure));
        start.setDisable(locked);
        places.add(start, 0, 0);
        places.add(state, 1, 0);
      }
      case RUNNING -> {
        places.add(button("watch.stop", () -> model.watches().stop(measure)), 0, 0);
        places.add(button("watch.false", () -> model.watches().falseStart(measure)), 1, 0);
        places.add(state, 0, 1, 2, 1);
      }
      case STOPPED -> {
        places.add(state, 0, 0, 2, 1);
        places.add(button("watch.undo", () -> model.watches().undoStop(measure)), 0, 1);
        places.add(again(), 1, 1);
      }
    }
    state.minHeightProperty().unbind();
    state.setMinHeight(touch.get());
  }

  private static String words(RideSheet.Watch watch) {
    BigDecimal seconds = watch.seconds();
    if (!watch.doubtful().isEmpty() && seconds == null) {
      return RideWords.say(
          "watch.doubtful",
          RideWords.time(watch.doubtful().get(0)),
          RideWords.time(watch.doubtful().get(1)));
    }
    if (seconds != null) {
      return RideWords.time(seconds);
    }
    String state = RideWords.say("watch." + watch.state());
    return watch.state() == RideSheet.Watch.State.STOPPED
        ? state + ". " + RideWords.say("watch.hidden")
        : state;
  }

  private Button button(String key, Runnable action) {
    Button button = Fields.wide(new Button(RideWords.say(key)));
    button.setWrapText(true);
    button.minHeightProperty().bind(touch);
    button.setAccessibleText(measure + ": " + RideWords.say(key));
    button.setOnAction(e -> action.run());
    return button;
  }

  /** Asks before a time is replaced: a stray touch must not look invited. */
  private Button again() {
    Button button = Fields.wide(new Button(RideWords.say("watch.again")));
    button.setWrapText(true);
    button.minHeightProperty().bind(touch);
    button.setOnAction(
        e -> {
          if (sure) {
            model.watches().start(measure);
          } else {
            sure = true;
            deaf.begin();
            button.setText(RideWords.say("watch.again.sure"));
          }
        });
    button
        .focusedProperty()
        .addListener(
            (o, before, now) -> {
              if (!now) {
                sure = false;
                button.setText(RideWords.say("watch.again"));
              }
            });
    return button;
  }

  private Node typed() {
    Label asked = new Label(RideWords.say("type.title"));
    TextField field = new TextField();
    field.setAccessibleText(measure + ": " + RideWords.say("type.title"));
    asked.setLabelFor(field);
    field.minHeightProperty().bind(touch);
    Button save = button("type.button", () -> model.watches().typeTime(measure, field.getText()));
    save.setMinWidth(USE_PREF_SIZE);
    field.setOnAction(e -> model.watches().typeTime(measure, field.getText()));
    HBox.setHgrow(field, Priority.ALWAYS);
    return WholeInView.together(new VBox(6, asked, new HBox(12, field, save)));
  }

  /** The bike came back: what was ridden can be scored, and the next start waits. */
  private List<Node> withHelper() {
    Label why = Fields.words(RideWords.say("watch.locked"));
    Label tooShort = Fields.words(RideWords.say("hand.over.short"), "strong");
    tooShort.setVisible(false);
    tooShort.managedProperty().bind(tooShort.visibleProperty());
    HoldButton hold =
        new HoldButton(
            RideWords.say("hand.over.without"),
            RideWords.say("hand.over.let.go"),
            model.monotonic(),
            () -> deaf.hear(model::handedOver),
            () -> tooShort.setVisible(true));
    hold.minHeightProperty().bind(touch);
    hold.setWrapText(true);
    return List.of(why, hold, tooShort);
  }

  private List<Node> whoTimes() {
    List<Node> parts = new ArrayList<>();
    ChoiceRow<String> holder =
        new ChoiceRow<>(
            look,
            RideWords.say("timed.by"),
            RideOptions.of(RideQuestions.timekeepers()),
            3,
            model.watches()::timedBy);
    holder.atLeast(touch);
    holder.show(model.watches().timedBy());
    CheckBox knows = new CheckBox(RideWords.say("timekeeper"));
    knows.setWrapText(true);
    knows.minHeightProperty().bind(touch);
    knows.setSelected(model.watches().timekeeperKnowsKey());
    knows.setOnAction(e -> model.watches().timekeeperKnowsKey(knows.isSelected()));
    parts.add(holder);
    if (!model.questions().riderKnows()) {
      parts.add(knows);
    }
    return parts;
  }
}
