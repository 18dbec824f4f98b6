package blindlap.screen.book;

import blindlap.screen.part.AnswerSentence;
import blindlap.screen.part.Dialogs;
import blindlap.screen.part.Lead;
import blindlap.screen.part.Look;
import blindlap.screen.part.Shell;
import blindlap.wording.NotebookWords;
import java.util.List;
import java.util.Optional;
import javafx.animation.Animation;
import javafx.animation.KeyFrame;
import javafx.animation.Timeline;
import javafx.beans.InvalidationListener;
import javafx.beans.binding.Bindings;
import javafx.beans.binding.NumberBinding;
import javafx.beans.binding.ObjectBinding;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.geometry.Insets;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import javafx.util.Duration;
import org.jspecify.annotations.Nullable;

/** The Notebook page: the session in hand, every session below it, the rider's noise beside it. */
public final class NotebookPage extends BorderPane {
  private static final double NARROW = 1100 - 184;
  private static final double LARGE_TEXT = 1.3;
  private static final double LIST_HEIGHT = 420;
  private static final double LOW_LIST_HEIGHT = 480;
  private static final double LOW = 830;
  private static final double DOORS = 400;

  /** Width of three buttons side by side. */
  private static final double BUTTONS = 520;

  /** The same for the three of a new notebook, which has no strip of stints beside them. */
  private static final double BUTTONS_OF_NEW = 580;

  private static final int LINES_THAT_FIT = 2;

  private final Look look;
  private final NotebookModel model;
  private final AnswerSentence answer;
  private final Lead lead = new Lead("");
  private final StintStripView strip;
  private final Button next = new Button();
  private final Button helper = new Button();
  private final Button read = new Button(NotebookWords.say("read"));
  private final Button comparison = new Button(NotebookWords.say("empty.comparison"));
  private final Button days = new Button(NotebookWords.say("empty.samples"));
  private final Label daysSaid = new Label();
  private final NotebookListView list;
  private final KeepingPane keeping;
  private final NoiseMarginView margin;
  private final VBox head = new VBox();
  private final FlowPane buttons;
  private final FlowPane doors;
  private final Label trouble = new Label();
  private final ReadOnlyStringProperty said;

  /** What the page is scrolled by; null while all of it fits. */
  private @Nullable ScrollPane scroll;

  private boolean low;
  private double foldedAt;

  @SuppressWarnings({"unused", "FieldCanBeLocal"}) // held so that the look can reach this page
  private final InvalidationListener watch;

  @SuppressWarnings({"unused", "FieldCanBeLocal"}) // held while it beats
  private final Timeline beat;

  /**
   * @param keeping sessions from and for other notebooks, and backups
   * @param dialogs ask for their files
   */
  public NotebookPage(Look look, NotebookModel model, KeepingModel keeping, Dialogs dialogs) {
    this(look, model, keeping, Optional.empty(), dialogs, new FlowPane());
  }

  /**
   * @param samples invented days, offered in a new notebook
   * @param doors to the rooms behind the page, under its buttons
   */
  NotebookPage(
      Look look,
      NotebookModel model,
      KeepingModel keeping,
      Optional<SampleDaysModel> samples,
      Dialogs dialogs,
      FlowPane doors) {
    this.look = look;
    this.model = model;
    this.answer = new AnswerSentence(look, NotebookWords.say("question"), 1);
    this.strip = new StintStripView(look);
    this.list = new NotebookListView(model);
    this.keeping = new KeepingPane(keeping, dialogs, toSave());
    this.said = keeping.saidProperty();
    this.margin = new NoiseMarginView(look, model);
    getStyleClass().add("page");
    setPadding(new Insets(32, 40, 24, 40));
    steps();
    samples(samples);
    trouble.setWrapText(true);
    trouble.setMinHeight(USE_PREF_SIZE);
    trouble.getStyleClass().add("strong");
    trouble.textProperty().bind(model.troubleProperty());
    trouble.managedProperty().bind(trouble.textProperty().isNotEmpty());
    this.doors = doors;
    // As wide as their names: in the line of the list's title the search field needs the rest.
    doors.setMinWidth(0);
    doors.prefWrapLengthProperty().bind(look.px(DOORS));
    this.buttons = new FlowPane(12, 12, next, comparison, days, helper, read);
    buttons.prefWrapLengthProperty().bind(room(look, model));
    doors.managedProperty().bind(Bindings.isNotEmpty(doors.getChildren()));
    listen();
    beat = new Timeline(new KeyFrame(Duration.millis(800), e -> model.look()));
    beat.setCycleCount(Animation.INDEFINITE);
    sceneProperty().addListener((o, before, scene) -> beat(scene != null));
    widthProperty().addListener((o, before, now) -> fold());
    heightProperty().addListener((o, before, now) -> lowered());
    watch = look.watch(this::sized);
    fold();
  }

  private static NumberBinding room(Look look, NotebookModel model) {
    return Bindings.when(model.emptyProperty())
        .then(look.px(BUTTONS_OF_NEW))
        .otherwise(look.px(BUTTONS));
  }

  /** What is done next with the session in hand; in a new notebook, with what it can begin. */
  private void steps() {
    next.getStyleClass().add("next");
    next.setOnAction(
        e ->
            model
                .answerProperty()
                .get()
                .about()
                .ifPresentOrElse(model::open, () -> model.begin(Shell.Beginning.NOISE_RUN)));
    comparison.setId("plan-comparison");
    comparison.setOnAction(e -> model.begin(Shell.Beginning.COMPARISON));
    comparison.visibleProperty().bind(model.emptyProperty());
    comparison.managedProperty().bind(model.emptyProperty());
    helper.setOnAction(e -> model.answerProperty().get().about().ifPresent(model::openAsHelper));
    read.setOnAction(e -> model.answerProperty().get().about().ifPresent(model::readPlan));
  }

  /** Invented days, in a notebook of their own. */
  private void samples(Optional<SampleDaysModel> samples) {
    days.setId("sample-days");
    daysSaid.getStyleClass().addAll("note", "second");
    daysSaid.setWrapText(true);
    daysSaid.setMinHeight(USE_PREF_SIZE);
    daysSaid.managedProperty().bind(daysSaid.textProperty().isNotEmpty());
    days.setVisible(false);
    days.managedProperty().bind(days.visibleProperty());
    samples.ifPresent(
        model -> {
          days.visibleProperty().bind(this.model.emptyProperty());
          days.setOnAction(e -> model.show());
          daysSaid.textProperty().bind(model.saidProperty());
        });
  }

  private void listen() {
    VBox.setVgrow(list, Priority.ALWAYS);
    model.answerProperty().addListener((o, before, now) -> show(now));
    model.emptyProperty().addListener((o, before, now) -> fold());
    model.troubleProperty().addListener((o, before, now) -> fold());
    said.addListener((o, before, now) -> showSaid());
    show(model.answerProperty().get());
  }

  /** The chosen session, else the one that the page is about. */
  private ObjectBinding<NotebookModel.@Nullable Row> toSave() {
    return Bindings.createObjectBinding(
        () -> {
          NotebookModel.Row chosen = list.chosenProperty().get();
          return chosen == null ? model.answerProperty().get().about().orElse(null) : chosen;
        },
        list.chosenProperty(),
        model.answerProperty());
  }

  private void beat(boolean on) {
    if (on) {
      beat.play();
    } else {
      beat.stop();
    }
  }

  private void show(NotebookModel.Answer now) {
    answer.say(now.before(), now.marked(), now.after());
    lead.setText(now.lead());
    next.setText(now.next());
    next.setVisible(!now.next().isEmpty());
    strip.show(now.stints(), now.ridden());
    helper.setText(now.behindCover());
    helper.setVisible(!now.behindCover().isEmpty());
    helper.setManaged(helper.isVisible());
    read.setVisible(now.about().isPresent());
    read.setManaged(now.about().isPresent());
  }

  private boolean lowWindow() {
    return getHeight() > 0 && getHeight() < LOW;
  }

  private boolean narrow() {
    return getWidth() > 0 && getWidth() < NARROW || look.textScale() > LARGE_TEXT;
  }

  /** Folds anew for another text size. Another theme moves nothing, so the focus stays, too. */
  private void sized() {
    if (look.textScale() != foldedAt) {
      fold();
    }
  }

  private void lowered() {
    if (lowWindow() != low) {
      fold();
    }
  }

  /**
   * In a low window the strip stands beside the buttons and the doors in the line of the list's
   * title, so that five sessions are in view at 768 px.
   */
  private void head() {
    low = lowWindow();
    boolean narrow = narrow();
    setPadding(low ? new Insets(14, 40, 12, 40) : new Insets(32, 40, 24, 40));
    boolean large = look.stacked();
    boolean tight = low && large && getWidth() < NARROW;
    answer.shrink(tight ? 3 : low && large ? 2 : low ? 1 : 0);
    style(this, "low", low && narrow);
    style(lead, "small", low && (large || narrow));
    style(next, "quiet", low && large);
    style(comparison, "quiet", low && large);
    style(days, "quiet", low && large);
    style(helper, "quiet", low && large);
    style(read, "quiet", low && large);
    buttons.setMinWidth(0);
    buttons.getChildren().setAll(next, comparison, days, helper);
    if (!tight) {
      buttons.getChildren().add(read);
    }
    list.low(low);
    list.large(large || low && narrow, large);
    head.setSpacing(low ? (large ? 4 : 8) : 16);
    head.setPadding(new Insets(0, 0, low ? (large ? 0 : 10) : 32, 0));
    if (low && narrow) {
      head.getChildren().setAll(answer, buttons, daysSaid, trouble);
      if (!tight) {
        head.getChildren().add(1, lead);
      }
    } else if (low) {
      HBox row = new HBox(24, buttons, strip);
      buttons.setMinWidth(USE_PREF_SIZE);
      HBox.setHgrow(strip, Priority.ALWAYS);
      row.setAlignment(Pos.CENTER_LEFT);
      head.getChildren().setAll(answer, lead, row, daysSaid, trouble);
      list.takeIntoTitle(doors);
    } else {
      head.getChildren().setAll(answer, lead, strip, buttons, daysSaid, doors, trouble);
    }
  }

  private static void style(Node node, String style, boolean now) {
    node.getStyleClass().remove(style);
    if (now) {
      node.getStyleClass().add(style);
    }
  }

  /** Beside each other on a wide window; under each other, scrolled as one, on a narrow one. */
  private void fold() {
    foldedAt = look.textScale();
    head();
    scroll = null;
    boolean empty = model.emptyProperty().get();
    list.setVisible(!empty);
    list.setManaged(!empty);
    margin.setVisible(!empty);
    margin.setManaged(!empty);
    if (narrow()) {
      list.setPrefHeight((low ? LOW_LIST_HEIGHT : LIST_HEIGHT) * Math.max(1, look.textScale()));
      margin.setPadding(Insets.EMPTY);
      VBox column = new VBox(low ? 16 : 32, head, list, keeping, margin);
      if (low) {
        // What is not the answer and not the list stands below both.
        column.getChildren().addAll(2, List.of(strip, doors));
        if (!head.getChildren().contains(lead)) {
          column.getChildren().addAll(2, List.of(lead, read));
        }
      }
      scroll = new ScrollPane(column);
      scroll.setFitToWidth(true);
      scroll.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
      setCenter(scroll);
      return;
    }
    VBox reading = new VBox(head, list, keeping);
    VBox.setMargin(keeping, new Insets(low ? 4 : 12, 0, 0, 0));
    HBox.setHgrow(reading, Priority.ALWAYS);
    reading.maxWidthProperty().bind(look.px(820));
    ScrollPane side = new ScrollPane(margin);
    // Its numbers stand at the right, clear of the bar that scrolls them.
    margin.setPadding(new Insets(0, 10, 0, 0));
    side.setFitToWidth(true);
    side.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
    side.minWidthProperty().bind(look.px(272));
    side.prefWidthProperty().bind(look.px(272));
    setCenter(new HBox(40, crowded() ? scrolled(reading) : reading, side));
  }

  /** What came of a link stands at the end of the page, where the link is. */
  private void showSaid() {
    fold();
    if (scroll != null && crowded()) {
      applyCss();
      layout();
      scroll.setVvalue(1);
    }
  }

  private ScrollPane scrolled(VBox reading) {
    list.setPrefHeight(LIST_HEIGHT);
    scroll = new ScrollPane(reading);
    scroll.setFitToWidth(true);
    scroll.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
    scroll.maxWidthProperty().bind(look.px(820));
    HBox.setHgrow(scroll, Priority.ALWAYS);
    return scroll;
  }

  /** Long sentences about trouble push what stands below them out of the window. */
  private boolean crowded() {
    return !model.troubleProperty().get().isEmpty() || said.get().lines().count() > LINES_THAT_FIT;
  }
}
