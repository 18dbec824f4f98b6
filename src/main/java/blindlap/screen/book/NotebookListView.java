package blindlap.screen.book;

import blindlap.wording.NotebookWords;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import javafx.beans.binding.Bindings;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;

/** All sessions, searched and opened here. Virtual: ten thousand scroll like ten. */
final class NotebookListView extends VBox {
  private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM uuuu", Locale.UK);

  private static final double LEAST = 120;

  private static final double NOTE = 560;

  /** Three sessions at twice the text size. */
  private static final double THREE_ROWS = 480;

  private final NotebookModel model;
  private final ListView<NotebookModel.Row> list;
  private final FlowPane actions = new FlowPane(12, 12);
  private final HBox head;
  private final TextField reason = new TextField();
  private final TextField unaware = new TextField();
  private final TextField search = new TextField();
  private boolean large;

  NotebookListView(NotebookModel model) {
    super(10);
    this.model = model;
    this.list = new ListView<>(model.rows());
    list.getStyleClass().add("sessions");
    list.setAccessibleText(NotebookWords.say("sessions"));
    list.setCellFactory(view -> new Cell(() -> large));
    list.setMinHeight(LEAST);
    list.setOnMouseClicked(
        e -> {
          if (e.getClickCount() == 2) {
            selected(model::open);
          }
        });
    list.setOnKeyPressed(
        e -> {
          if (e.getCode() == KeyCode.ENTER) {
            selected(model::open);
          } else if (e.getCode() == KeyCode.ESCAPE && chosen().isPresent()) {
            list.getSelectionModel().clearSelection();
            e.consume();
          }
        });
    list.getSelectionModel().selectedItemProperty().addListener((o, a, b) -> usual());
    VBox.setVgrow(list, Priority.ALWAYS);
    Label found = new Label();
    found.getStyleClass().add("note");
    found.setWrapText(true);
    found.textProperty().bind(model.foundProperty());
    found.managedProperty().bind(found.textProperty().isNotEmpty());
    head = title();
    getChildren().setAll(head, found, list, actions);
    usual();
  }

  /** The session that is chosen; null for none. */
  ReadOnlyObjectProperty<NotebookModel.@Nullable Row> chosenProperty() {
    return list.getSelectionModel().selectedItemProperty();
  }

  /** Takes a node into the line of the title, where a low window has room for it. */
  void takeIntoTitle(Node node) {
    if (!head.getChildren().contains(node)) {
      head.getChildren().add(1, node);
    }
  }

  /** A low window has rows closer to each other. */
  void low(boolean now) {
    list.getStyleClass().remove("low");
    setSpacing(now ? 6 : 10);
    if (now) {
      list.getStyleClass().add("low");
    }
  }

  /**
   * With large text, and in a window that is low and narrow, the day stands among the facts, and
   * what was found is told of the chosen session only: at 768 px three are in view, or five.
   */
  void large(boolean now, boolean largeText) {
    search.setPromptText(NotebookWords.say(largeText ? "search.short" : "search"));
    list.setMinHeight(largeText ? THREE_ROWS : LEAST);
    if (now == large) {
      return;
    }
    large = now;
    list.getStyleClass().remove("large");
    if (now) {
      list.getStyleClass().add("large");
    }
    list.refresh();
  }

  private HBox title() {
    Label title = new Label(NotebookWords.say("sessions"));
    title.getStyleClass().add("h2");
    title.setMinWidth(USE_PREF_SIZE);
    search.setPromptText(NotebookWords.say("search"));
    search.setAccessibleText(NotebookWords.say("search"));
    search.setPrefColumnCount(18);
    search.setMinWidth(0);
    search.textProperty().bindBidirectional(model.searchProperty());
    Region gap = new Region();
    HBox.setHgrow(gap, Priority.ALWAYS);
    HBox head = new HBox(16, title, gap, search);
    head.setAlignment(Pos.BOTTOM_LEFT);
    head.getStyleClass().add("list-head");
    return head;
  }

  private void selected(Consumer<NotebookModel.Row> work) {
    NotebookModel.Row row = list.getSelectionModel().getSelectedItem();
    if (row != null) {
      work.accept(row);
    }
  }

  private Button button(String key, Runnable work) {
    Button button = new Button(NotebookWords.say(key));
    button.setOnAction(e -> work.run());
    return button;
  }

  private Button forSelected(String key, Consumer<NotebookModel.Row> work) {
    Button button = button(key, () -> selected(work));
    // All of them on one line of the usual window.
    button.getStyleClass().add("quiet");
    button.disableProperty().bind(Bindings.isNull(list.getSelectionModel().selectedItemProperty()));
    return button;
  }

  /** The buttons under the list. */
  private void usual() {
    actions
        .getChildren()
        .setAll(
            button("plan", model::plan),
            forSelected("open", model::open),
            forSelected("read", model::readPlan),
            forSelected("copy", row -> model.copyAsPlan(row.id())));
    NotebookModel.Row chosen = list.getSelectionModel().getSelectedItem();
    if (chosen != null && !chosen.series().isEmpty()) {
      actions
          .getChildren()
          .add(forSelected("next.series", row -> model.nextOfSeries(row.series())));
    }
    actions.getChildren().add(abandon());
  }

  /** For the chosen session; if none is, for the one in hand, which stands above the list. */
  private Button abandon() {
    Button abandon = button("abandon", () -> model.toAbandon(chosen()).ifPresent(this::askReason));
    abandon.getStyleClass().add("quiet");
    abandon
        .disableProperty()
        .bind(
            Bindings.createBooleanBinding(
                () -> model.toAbandon(chosen()).isEmpty(),
                list.getSelectionModel().selectedItemProperty(),
                model.answerProperty()));
    return abandon;
  }

  private Optional<NotebookModel.Row> chosen() {
    return Optional.ofNullable(list.getSelectionModel().getSelectedItem());
  }

  private void askReason(NotebookModel.Row row) {
    reason.clear();
    reason.setPromptText(NotebookWords.say("abandon.reason"));
    reason.setAccessibleText(NotebookWords.say("abandon.reason"));
    reason.setPrefColumnCount(24);
    Button abandon =
        button(
            "abandon.do",
            () -> {
              model.abandon(row, reason.getText(), row.series().isEmpty() ? "" : unaware.getText());
              usual();
            });
    abandon
        .disableProperty()
        .bind(
            Bindings.createBooleanBinding(() -> reason.getText().isBlank(), reason.textProperty()));
    String day = row.day().format(DAY);
    Label note = new Label(NotebookWords.say("abandon.note", row.title(), row.facts(), day));
    note.getStyleClass().add("note");
    note.setWrapText(true);
    note.setPrefWidth(NOTE); // on one line it would push the margin out of the window
    actions.getChildren().setAll(reason);
    if (!row.series().isEmpty()) {
      unaware.clear();
      unaware.setPromptText(NotebookWords.say("abandon.unaware"));
      unaware.setAccessibleText(NotebookWords.say("abandon.unaware"));
      unaware.setPrefColumnCount(28);
      actions.getChildren().add(unaware);
    }
    actions.getChildren().addAll(abandon, button("abandon.keep", this::usual), note);
    reason.requestFocus();
  }

  /** Date, title and facts, outcome and detail. */
  private static final class Cell extends ListCell<NotebookModel.Row> {
    private final Label day = new Label();
    private final Label title = new Label();
    private final Label facts = new Label();
    private final Label outcome = new Label();
    private final Label detail = new Label();
    private static final double NARROW = 225;
    private static final double WIDE = 370;
    private static final double UNDER = 620;

    private final VBox left;
    private final VBox right;
    private final HBox line;
    private final BooleanSupplier large;

    Cell(BooleanSupplier large) {
      this.large = large;
      facts.setWrapText(true);
      outcome.setWrapText(true);
      for (Label each : new Label[] {title, facts, outcome, detail}) {
        each.setMinHeight(USE_PREF_SIZE);
      }
      title.getStyleClass().add("strong");
      title.setWrapText(true);
      outcome.getStyleClass().add("strong");
      facts.getStyleClass().addAll("note", "second");
      detail.getStyleClass().addAll("note", "second");
      day.getStyleClass().addAll("note", "second");
      day.setMinWidth(USE_PREF_SIZE);
      day.setPrefWidth(100);
      left = new VBox(2, title, facts);
      left.setMinWidth(0);
      left.setPrefWidth(NARROW);
      HBox.setHgrow(left, Priority.ALWAYS);
      right = new VBox(2, outcome, detail);
      right.setMinWidth(0);
      right.setPrefWidth(WIDE);
      HBox.setHgrow(right, Priority.ALWAYS);
      detail.setWrapText(true);
      line = new HBox(16, day, left, right);
      line.setMaxWidth(Double.MAX_VALUE);
      // As wide as the list, never wider: no sideways scrolling.
      setPrefWidth(0);
      getStyleClass().add("session-cell");
    }

    /** Where two columns would break words, what came of the session stands under it. */
    @Override
    protected double computePrefHeight(double width) {
      boolean under = large.getAsBoolean() && getWidth() > 0 && getWidth() < UNDER;
      if (under != (right.getParent() == left)) {
        left.getChildren().remove(right);
        line.getChildren().remove(right);
        (under ? left : line).getChildren().add(right);
      }
      return super.computePrefHeight(width);
    }

    /** With large text the difference is told of the chosen session. */
    private void fold() {
      boolean told = !large.getAsBoolean() || isSelected();
      detail.setVisible(told);
      detail.setManaged(told);
      day.setVisible(!large.getAsBoolean());
      day.setManaged(!large.getAsBoolean());
      left.setPrefWidth(large.getAsBoolean() ? WIDE : NARROW);
      right.setPrefWidth(large.getAsBoolean() ? NARROW : WIDE);
      NotebookModel.Row row = getItem();
      if (row != null) {
        facts.setText(large.getAsBoolean() ? day.getText() + ", " + row.facts() : row.facts());
      }
    }

    @Override
    public void updateSelected(boolean selected) {
      super.updateSelected(selected);
      fold();
    }

    @Override
    protected void updateItem(NotebookModel.Row row, boolean empty) {
      super.updateItem(row, empty);
      if (empty || row == null) {
        setGraphic(null);
        setAccessibleText("");
        return;
      }
      day.setText(row.day().format(DAY));
      title.setText(row.title());
      facts.setText(row.facts());
      outcome.setText(row.outcome());
      detail.setText(row.detail());
      fold();
      setGraphic(line);
      setAccessibleText(
          String.join(", ", day.getText(), row.title(), row.facts(), row.outcome(), row.detail()));
    }
  }
}
