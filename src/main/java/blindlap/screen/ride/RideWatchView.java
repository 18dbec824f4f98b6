package blindlap.screen.ride;

import blindlap.ride.RideQuestions;
import blindlap.ride.RideSheet;
import blindlap.screen.part.ChoiceRow;
import blindlap.screen.part.Fields;
import blindlap.screen.part.Look;
import blindlap.wording.day.RideWords;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.VBox;

/**
 * The watch of one timed measure. It says "ready", "running" and "stopped", never a running time:
 * the rider scores first.
 */
final class RideWatchView extends VBox {
  private final Look look;
  private final RideModel model;
  private final String measure;
  private final boolean riding;
  private final Label state = new Label();
  private final VBox buttons = new VBox(12);
  private RideSheet.Watch.State built = RideSheet.Watch.State.READY;
  private boolean sure;

  /**
   * @param riding true while the lap is ridden and scored; false once it is done, when a time may
   *     be typed
   */
  RideWatchView(Look look, RideModel model, String measure, boolean riding) {
    super(12);
    this.look = look;
    this.model = model;
    this.measure = measure;
    this.riding = riding;
    Label title = new Label(measure);
    title.getStyleClass().add("field-title");
    state.getStyleClass().add("strong");
    state.setWrapText(true);
    state.minHeightProperty().bind(look.touch());
    getChildren().setAll(title, state, buttons);
    if (riding || missing()) {
      getChildren().add(whoTimes());
    }
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
    if (watch().state() != built || !riding) {
      build();
    }
  }

  private void build() {
    RideSheet.Watch watch = watch();
    built = watch.state();
    sure = false;
    state.setText(words(watch));
    List<Node> parts = new ArrayList<>();
    if (riding) {
      switch (watch.state()) {
        case READY -> parts.add(button("watch.start", () -> model.watches().start(measure)));
        case RUNNING -> {
          parts.add(button("watch.stop", () -> model.watches().stop(measure)));
          parts.add(button("watch.false", () -> model.watches().falseStart(measure)));
        }
        case STOPPED -> {
          parts.add(button("watch.undo", () -> model.watches().undoStop(measure)));
          parts.add(again());
        }
      }
    } else if (missing()) {
      parts.addAll(typed());
    }
    // A key that bounces must not press what takes the time back, so the focus goes to the words.
    boolean stopped = riding && watch.state() == RideSheet.Watch.State.STOPPED;
    state.setFocusTraversable(stopped);
    if (stopped && isFocusWithin()) {
      state.requestFocus();
    }
    buttons.getChildren().setAll(parts);
    // The next press is the natural one: start, then stop. Nobody hunts for it with gloves on.
    if (riding && !parts.isEmpty() && watch.state() == RideSheet.Watch.State.RUNNING) {
      parts.get(0).requestFocus();
    }
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
    button.minHeightProperty().bind(look.touch());
    button.setAccessibleText(measure + ": " + RideWords.say(key));
    button.setOnAction(e -> action.run());
    return button;
  }

  /** Asks before a time is replaced: a stray touch must not look invited. */
  private Button again() {
    Button button = Fields.wide(new Button(RideWords.say("watch.again")));
    button.minHeightProperty().bind(look.touch());
    button.setOnAction(
        e -> {
          if (sure) {
            model.watches().start(measure);
          } else {
            sure = true;
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

  private List<Node> typed() {
    Label asked = new Label(RideWords.say("type.title"));
    TextField field = Fields.wide(new TextField());
    field.setAccessibleText(measure + ": " + RideWords.say("type.title"));
    asked.setLabelFor(field);
    field.minHeightProperty().bind(look.touch());
    Button save = button("type.button", () -> model.watches().typeTime(measure, field.getText()));
    field.setOnAction(e -> model.watches().typeTime(measure, field.getText()));
    return List.of(asked, field, save);
  }

  private Node whoTimes() {
    ChoiceRow<String> who =
        new ChoiceRow<>(
            look,
            RideWords.say("timed.by"),
            RideOptions.of(RideQuestions.timekeepers()),
            3,
            model.watches()::timedBy);
    who.show(model.watches().timedBy());
    CheckBox knows = new CheckBox(RideWords.say("timekeeper"));
    knows.setWrapText(true);
    knows.minHeightProperty().bind(look.touch());
    knows.setSelected(model.watches().timekeeperKnowsKey());
    knows.setOnAction(e -> model.watches().timekeeperKnowsKey(knows.isSelected()));
    return new VBox(4, who, knows);
  }
}
