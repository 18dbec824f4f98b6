package blindlap.screen.swap;

import blindlap.desk.HelperDays;
import blindlap.desk.LapWaits;
import blindlap.plot.SetupMark;
import blindlap.screen.part.Fields;
import blindlap.screen.part.Look;
import blindlap.screen.part.SetupName;
import blindlap.session.HelperEntry;
import blindlap.wording.SwapWords;
import java.time.Duration;
import java.util.List;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/**
 * The sheet that lies over the middle column: the note, what happened where there was a mishap, the
 * next swaps, the day in full, when the page closes itself, and what else the helper may open.
 */
final class SwapNoteView extends VBox {
  /**
   * Something else that the helper may open.
   *
   * @param words name of its button
   * @param open opens it in place of the page
   */
  record Opens(String words, Runnable open) {}

  private final Look look;
  private final SwapModel model;
  private final Label waits = Fields.words("", "note");
  private final Label pace = Fields.words("", "note");
  private final Button less;
  private final TextField first;

  /**
   * @param opens what else may be opened, in order
   * @param back puts the sheet away
   */
  SwapNoteView(Look look, SwapModel model, SwapSheet now, List<Opens> opens, Runnable back) {
    super(10);
    this.look = look;
    this.model = model;
    getStyleClass().add("swap-note");
    less = Fields.button(SwapWords.say("sheet.back"), back);
    TextField note = field(SwapWords.say("note"), now.note(), model.work()::note);
    HelperEntry.Timing told = model.work().answered();
    TextField what =
        field(
            SwapWords.say("mishap.what"),
            told == null ? "" : told.words(),
            words -> model.work().mishap(true, words));
    boolean mishap = told != null && told.declared();
    first = mishap ? what : note;
    if (mishap) {
      getChildren().addAll(Fields.words(SwapWords.say("mishap.what")), what);
    }
    Label title = Fields.words(SwapWords.say("note"));
    title.setMaxWidth(Double.MAX_VALUE);
    HBox.setHgrow(title, Priority.ALWAYS);
    less.setMinWidth(Region.USE_PREF_SIZE);
    HBox top = new HBox(12, title, less);
    top.setAlignment(Pos.CENTER_LEFT);
    getChildren().addAll(top, note);
    getChildren().add(Fields.words(now.name() + ". " + now.swap(), "strong"));
    for (SwapSheet.Next next : now.next()) {
      getChildren().add(next(next));
    }
    getChildren().addAll(pace, waits, Fields.words(model.words().handling(), "note"));
    getChildren().add(blanking());
    getChildren().add(buttons(opens));
    less.minHeightProperty().bind(look.touch(60));
    time(model.timeProperty().get());
    waits(model.work().waitsProperty().get());
  }

  private FlowPane buttons(List<Opens> opens) {
    FlowPane buttons = new FlowPane(12, 10);
    for (Opens each : opens) {
      Button button = Fields.button(each.words(), each.open());
      button.minHeightProperty().bind(look.touch(60));
      buttons.getChildren().add(button);
    }
    return buttons;
  }

  /** Where the focus starts. */
  Node first() {
    return first;
  }

  void time(SwapClock.Time now) {
    pace.setText(now.pace());
  }

  void waits(LapWaits now) {
    waits.setText(now.whole());
    waits.setManaged(!now.none());
  }

  private HBox next(SwapSheet.Next next) {
    Label head = new Label(next.head());
    head.setMinWidth(Region.USE_PREF_SIZE);
    Region name =
        next.setup() == SwapSheet.NO_MARK
            ? Fields.words(next.words(), "strong")
            : new SetupName(look, SetupMark.of(next.setup()), next.words());
    name.setMinHeight(USE_PREF_SIZE);
    HBox.setHgrow(name, Priority.ALWAYS);
    HBox row = new HBox(14, head, name);
    row.setAlignment(Pos.CENTER_LEFT);
    row.setMinHeight(USE_PREF_SIZE);
    return row;
  }

  /** When the page closes itself: from one minute to fifteen. */
  private HBox blanking() {
    Label minutes = new Label();
    minutes.getStyleClass().add("strong");
    Runnable show =
        () -> minutes.setText(SwapWords.say("blank.minutes", model.blankAfter().toMinutes()));
    show.run();
    Label asked = Fields.words(SwapWords.say("blank.after"));
    minutes.setMinWidth(Region.USE_PREF_SIZE);
    HBox row =
        new HBox(
            10,
            asked,
            step("−", "blank.sooner", -1, show),
            minutes,
            step("+", "blank.later", 1, show));
    row.setAlignment(Pos.CENTER_LEFT);
    return row;
  }

  private Button step(String sign, String key, int by, Runnable show) {
    Button button = new Button(sign);
    button.setAccessibleText(SwapWords.say(key));
    button.minHeightProperty().bind(look.touch(60));
    button.minWidthProperty().bind(look.touch(60));
    button.setOnAction(
        e -> {
          long minutes = model.blankAfter().toMinutes() + by;
          model.blankAfter(
              Duration.ofMinutes(Math.max(1, Math.min(HelperDays.MOST_MINUTES, minutes))));
          show.run();
        });
    return button;
  }

  private TextField field(String name, String text, java.util.function.Consumer<String> typing) {
    TextField field = Fields.wide(new TextField(text));
    field.setAccessibleText(name);
    field.minHeightProperty().bind(look.touch(60));
    field.textProperty().addListener((o, before, now) -> typing.accept(now));
    field.setOnAction(e -> less.requestFocus());
    return field;
  }
}
