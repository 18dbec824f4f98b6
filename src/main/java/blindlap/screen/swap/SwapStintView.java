package blindlap.screen.swap;

import blindlap.plot.LoneMark;
import blindlap.plot.SetupMark;
import blindlap.plot.surface.Spoken;
import blindlap.screen.part.BigWords;
import blindlap.screen.part.Caution;
import blindlap.screen.part.DayEventsView;
import blindlap.screen.part.Fields;
import blindlap.screen.part.Look;
import blindlap.screen.part.PlotView;
import blindlap.screen.part.SetupName;
import blindlap.wording.SwapWords;
import blindlap.wording.day.Words;
import java.util.ArrayList;
import java.util.List;
import javafx.beans.InvalidationListener;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ProgressBar;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Pane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;

/** The open Swap page: what to fit now in big type, what to do, what comes next. */
final class SwapStintView extends VBox {
  private static final double MARK = 96;

  private final Look look;
  private final SwapModel model;
  private final Label left = new Label();
  private final ProgressBar bar = new ProgressBar(0);
  private final Label pace = new Label();
  private final VBox body = new VBox(24);

  @SuppressWarnings({"unused", "FieldCanBeLocal"}) // held so that the look can reach this view
  private final InvalidationListener watch;

  private @Nullable Object built;
  private boolean events;

  SwapStintView(Look look, SwapModel model) {
    super(20);
    this.look = look;
    this.model = model;
    left.getStyleClass().add("clock");
    bar.setMaxWidth(Double.MAX_VALUE);
    pace.setWrapText(true);
    pace.getStyleClass().add("note");
    getChildren().setAll(body);
    model.work().sheetProperty().addListener((o, before, now) -> show(now));
    model.timeProperty().addListener((o, before, now) -> time(now));
    show(model.work().sheetProperty().get());
    time(model.timeProperty().get());
    watch = look.watch(() -> show(model.work().sheetProperty().get()));
  }

  private void time(SwapModel.Time now) {
    left.setText(now.left());
    bar.setProgress(now.share());
    for (Node each : new Node[] {left, bar}) {
      each.setVisible(!now.left().isEmpty());
      each.setManaged(!now.left().isEmpty());
    }
    pace.setText(now.pace());
  }

  /** What decides whether the page is built anew: never a field, or its focus would be lost. */
  private record Key(
      int stint, int fitted, String swap, boolean begun, boolean events, boolean stacked) {}

  private void show(@Nullable SwapSheet now) {
    Object key =
        now == null
            ? "done"
            : new Key(now.stint(), now.fitted(), now.swap(), now.begun(), events, look.stacked());
    if (key.equals(built)) {
      return;
    }
    built = key;
    if (now == null || events) {
      DayEventsView all =
          new DayEventsView(look, model.events(), model::helperChanged, now != null);
      Node first = now == null ? lead(SwapWords.say("all.done")) : more();
      body.getChildren().setAll(first, new SwapLaterView(look, model), all);
      return;
    }
    body.getChildren().setAll(head(now), rule(), columns(now), rule(), foot(now));
  }

  private Button more() {
    Button more = new Button(SwapWords.say(events ? "less" : "more"));
    more.minHeightProperty().bind(look.touch());
    more.setMinWidth(USE_PREF_SIZE);
    more.setOnAction(
        e -> {
          events = !events;
          show(model.work().sheetProperty().get());
        });
    return more;
  }

  private static Region rule() {
    Region line = new Region();
    line.getStyleClass().add("strong-rule");
    return line;
  }

  private Node head(SwapSheet now) {
    Label stint = new Label(now.head());
    stint.getStyleClass().add("field-title");
    stint.setWrapText(true);
    Label fit = new Label(SwapWords.say("fit"));
    fit.getStyleClass().add("h2");
    BigWords name = BigWords.setupName(look);
    name.say(now.name());
    PlotView mark = new PlotView(look, LoneMark.of(mark(now.setup()), new Spoken(now.name(), "")));
    mark.minWidthProperty().bind(look.px(MARK));
    mark.prefWidthProperty().bind(look.px(MARK));
    mark.maxWidthProperty().bind(look.px(MARK));
    mark.maxHeightProperty().bind(look.px(MARK));
    mark.setAccessibleText("");
    HBox big = new HBox(28, name, mark);
    big.setAlignment(Pos.CENTER_LEFT);
    Label swap = new Label(now.swap());
    swap.getStyleClass().add("strong");
    swap.setWrapText(true);
    VBox what = new VBox(8, stint, fit, big, swap);
    HBox.setHgrow(what, Priority.ALWAYS);
    what.setMinWidth(0);
    return look.stacked() ? new VBox(24, what, countdown(now)) : new HBox(40, what, countdown(now));
  }

  private Node countdown(SwapSheet now) {
    Label call = new Label(SwapWords.say("call"));
    Label note = new Label(model.handlingWords());
    note.getStyleClass().add("note");
    note.setWrapText(true);
    // Clock and lateness beside the countdown: at the foot a small window would not show them.
    VBox box = new VBox(10, call, left, bar, new SwapOverrunView(look, model), note, pace);
    if (!now.begun()) {
      box.getChildren().add(0, next(SwapWords.say("begin"), model.work()::begin));
    }
    box.prefWidthProperty().bind(look.px(340));
    box.minWidthProperty().bind(look.px(300));
    return box;
  }

  private Button next(String words, Runnable action) {
    Button button = Fields.wide(new Button(words));
    button.getStyleClass().add("next");
    button.minHeightProperty().bind(look.touch());
    button.setOnAction(e -> action.run());
    return button;
  }

  private static SetupMark mark(int setup) {
    return SetupMark.values()[setup];
  }

  private Node columns(SwapSheet now) {
    Node settings = new SwapSettingsView(look, model, now);
    Node safety = new SwapSafetyView(look, model, now);
    if (look.stacked()) {
      return new VBox(24, steps(now), settings, safety);
    }
    GridPane grid = new GridPane();
    grid.setHgap(40);
    for (int i = 0; i < 3; i++) {
      ColumnConstraints column = new ColumnConstraints();
      column.setPercentWidth(100.0 / 3);
      grid.getColumnConstraints().add(column);
    }
    grid.add(steps(now), 0, 0);
    grid.add(settings, 1, 0);
    grid.add(safety, 2, 0);
    return grid;
  }

  private Node steps(SwapSheet now) {
    VBox box = new VBox(8, new SwapHeadingView(SwapWords.say("do")));
    VBox steps = new VBox();
    steps.getStyleClass().add("steps");
    for (int i = 0; i < now.steps().size(); i++) {
      Label number = new Label(String.valueOf(i + 1));
      number.getStyleClass().add("number");
      number.setMinWidth(USE_PREF_SIZE);
      Label words = new Label(now.steps().get(i));
      words.setWrapText(true);
      HBox step = new HBox(number, words);
      step.getStyleClass().add("step");
      steps.getChildren().add(step);
    }
    box.getChildren().add(steps);
    for (String limit : now.limits()) {
      Label line = new Label(limit);
      line.setWrapText(true);
      box.getChildren().add(line);
    }
    List<String> cautions = new ArrayList<>(now.cautions());
    cautions.add(Words.of("cautions").say("short"));
    cautions.forEach(c -> box.getChildren().add(new Caution(SwapWords.say("caution"), c)));
    return box;
  }

  private static Label lead(String words) {
    Label label = new Label(words);
    label.getStyleClass().add("lead");
    label.setWrapText(true);
    return label;
  }

  private Node foot(SwapSheet now) {
    Pane row = look.stacked() ? new VBox(16) : new HBox(40);
    if (!now.next().isEmpty()) {
      Label title = new Label(SwapWords.say("next.title"));
      title.getStyleClass().add("strong");
      title.setMinWidth(USE_PREF_SIZE);
      row.getChildren().add(title);
    }
    for (SwapSheet.Next next : now.next()) {
      Label head = new Label(next.head());
      head.setMinWidth(USE_PREF_SIZE);
      SetupName name = new SetupName(look, mark(next.setup()), next.words());
      row.getChildren().add(new VBox(4, head, name));
    }
    Region between = new Region();
    HBox.setHgrow(between, Priority.ALWAYS);
    row.getChildren().addAll(between, more());
    return row;
  }
}
