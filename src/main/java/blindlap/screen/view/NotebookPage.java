package blindlap.screen.view;

import blindlap.screen.model.NotebookModel;
import blindlap.wording.NotebookWords;
import javafx.collections.ListChangeListener;
import javafx.geometry.Insets;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;

/** The Notebook page. The list is virtual: ten thousand sessions scroll like ten. */
public final class NotebookPage extends BorderPane {
  private final NotebookModel model;
  private final AnswerSentence answer;
  private final Lead lead = new Lead("");
  private final Button open = new Button();

  public NotebookPage(Look look, NotebookModel model) {
    this.model = model;
    this.answer = new AnswerSentence(look, NotebookWords.say("question"));
    getStyleClass().add("page");
    setPadding(new Insets(32, 40, 24, 40));
    open.getStyleClass().add("next");
    open.setOnAction(e -> model.answerProperty().get().about().ifPresent(model::open));
    Label trouble = new Label();
    trouble.setWrapText(true);
    trouble.textProperty().bind(model.troubleProperty());
    trouble.managedProperty().bind(trouble.textProperty().isNotEmpty());
    HBox actions = new HBox(12, open);
    VBox head = new VBox(16, answer, lead, actions, trouble);
    head.setPadding(new Insets(0, 0, 32, 0));
    setTop(head);
    setCenter(list());
    model.answerProperty().addListener((o, before, now) -> show(now));
    show(model.answerProperty().get());
  }

  private void show(NotebookModel.Answer now) {
    answer.say(now.before(), now.marked(), now.after());
    lead.setText(now.lead());
    open.setVisible(now.about().isPresent());
    open.setText(NotebookWords.say("open"));
  }

  private VBox list() {
    Label title = new Label(NotebookWords.say("sessions"));
    title.getStyleClass().add("h2");
    ListView<NotebookModel.Row> list = new ListView<>(model.rows());
    list.setAccessibleText(NotebookWords.say("sessions"));
    list.setCellFactory(view -> new Cell());
    list.setOnMouseClicked(
        e -> {
          if (e.getClickCount() == 2) {
            openSelected(list);
          }
        });
    list.setOnKeyPressed(
        e -> {
          if (e.getCode() == KeyCode.ENTER) {
            openSelected(list);
          }
        });
    VBox.setVgrow(list, Priority.ALWAYS);
    VBox box = new VBox(10, title, list);
    box.visibleProperty().set(!model.rows().isEmpty());
    model
        .rows()
        .addListener(
            (ListChangeListener<NotebookModel.Row>) c -> box.setVisible(!model.rows().isEmpty()));
    return box;
  }

  private void openSelected(ListView<NotebookModel.Row> list) {
    NotebookModel.Row row = list.getSelectionModel().getSelectedItem();
    if (row != null) {
      model.open(row);
    }
  }

  /** Date, title and facts, outcome and detail. */
  private static final class Cell extends ListCell<NotebookModel.Row> {
    private final Label day = new Label();
    private final Label title = new Label();
    private final Label facts = new Label();
    private final Label outcome = new Label();
    private final Label detail = new Label();
    private final HBox line;

    Cell() {
      title.getStyleClass().add("strong");
      outcome.getStyleClass().add("strong");
      facts.getStyleClass().add("note");
      detail.getStyleClass().add("note");
      day.setMinWidth(120);
      VBox left = new VBox(2, title, facts);
      HBox.setHgrow(left, Priority.ALWAYS);
      left.setMaxWidth(Double.MAX_VALUE);
      VBox right = new VBox(2, outcome, detail);
      right.setPrefWidth(380);
      line = new HBox(16, day, left, right);
      line.setPadding(new Insets(8, 0, 8, 0));
    }

    @Override
    protected void updateItem(NotebookModel.Row row, boolean empty) {
      super.updateItem(row, empty);
      if (empty || row == null) {
        setGraphic(null);
        setAccessibleText("");
        return;
      }
      day.setText(row.day().toString());
      title.setText(row.title());
      facts.setText(row.facts());
      outcome.setText(row.outcome());
      detail.setText(row.detail());
      setGraphic(line);
      setAccessibleText(row.day() + ", " + row.title() + ", " + row.outcome());
    }
  }
}
