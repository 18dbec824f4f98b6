package blindlap.screen;

import blindlap.screen.part.Fields;
import blindlap.screen.part.Look;
import blindlap.wording.NotebookWords;
import blindlap.wording.day.WordList;
import java.util.Optional;
import javafx.beans.binding.Bindings;
import javafx.beans.binding.DoubleBinding;
import javafx.geometry.Insets;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import javafx.scene.text.Text;

/**
 * The list of words in the place of the page, searched as somebody types. It shows the page of
 * words of the manual, and nothing of any session.
 */
final class WordsPane extends VBox {
  private static final double INSET = 20;
  private static final int COLUMNS = 10;

  private final WordList words;
  private final TextField find = new TextField();
  private final Label found = new Label();
  private final ListView<WordList.Word> list = new ListView<>();

  /**
   * @param back goes back to the page
   */
  WordsPane(Look look, WordList words, Runnable back) {
    super(10);
    this.words = words;
    setId("words");
    getStyleClass().add("page");
    DoubleBinding inset = look.px(INSET);
    paddingProperty().bind(Bindings.createObjectBinding(() -> new Insets(inset.get()), inset));
    list.setId("words-list");
    list.setAccessibleText(NotebookWords.say("words.list"));
    DoubleBinding margin = look.px(3 * INSET);
    list.setCellFactory(view -> new Cell(view.widthProperty().subtract(margin)));
    VBox.setVgrow(list, Priority.ALWAYS);
    found.setWrapText(true);
    found.getStyleClass().add("note");
    getChildren().setAll(head(back), found, list);
    find.textProperty().addListener((o, before, now) -> search());
    addEventFilter(KeyEvent.KEY_PRESSED, e -> key(e, back));
    search();
  }

  private FlowPane head(Runnable back) {
    Label title = new Label(NotebookWords.say("words.title"));
    title.getStyleClass().add("h2");
    find.setId("words-find");
    find.setPromptText(NotebookWords.say("words.find"));
    find.setAccessibleText(NotebookWords.say("words.find"));
    find.setPrefColumnCount(COLUMNS);
    Button away = Fields.button(NotebookWords.say("words.back"), back);
    away.setId("words-back");
    away.getStyleClass().add("quiet");
    return Fields.row(title, find, away);
  }

  /** Escape goes back; arrows move through the list while somebody types. */
  private void key(KeyEvent event, Runnable back) {
    boolean typing = find.equals(getScene().getFocusOwner());
    if (event.getCode() == KeyCode.ESCAPE) {
      event.consume();
      back.run();
    } else if (typing && (event.getCode() == KeyCode.DOWN || event.getCode() == KeyCode.UP)) {
      event.consume();
      move(event.getCode() == KeyCode.DOWN ? 1 : -1);
    }
  }

  private void move(int by) {
    int last = list.getItems().size() - 1;
    int to = Math.max(0, Math.min(last, list.getSelectionModel().getSelectedIndex() + by));
    if (last >= 0) {
      list.getSelectionModel().select(to);
      list.scrollTo(Math.max(0, to - 1));
    }
  }

  private void search() {
    list.getItems().setAll(words.search(find.getText()));
    list.getSelectionModel().clearSelection();
    int size = list.getItems().size();
    found.setText(NotebookWords.say(size == 0 ? "words.none" : "words.found", size));
    if (size > 0 && !find.getText().isBlank()) {
      list.getSelectionModel().select(0);
    }
    list.scrollTo(0);
  }

  /**
   * Comes into view with a word looked up, or with all of them; what is typed next replaces it.
   *
   * @param inHand what had the focus; empty looks nothing up
   */
  void open(Optional<Node> inHand) {
    Optional<WordList.Word> word = inHand.flatMap(node -> WordInHand.of(words, node));
    find.setText(word.map(WordList.Word::name).orElse(""));
    search();
    find.requestFocus();
    find.selectAll();
  }

  /** A word over its meaning, in lines as wide as the list. */
  private static final class Cell extends ListCell<WordList.Word> {
    private final Text name = new Text();
    private final Text meaning = new Text();
    private final VBox both = new VBox(2, name, meaning);

    Cell(DoubleBinding width) {
      name.getStyleClass().addAll("words", "strong");
      meaning.getStyleClass().add("words");
      name.wrappingWidthProperty().bind(width);
      meaning.wrappingWidthProperty().bind(width);
      setPrefWidth(0);
    }

    @Override
    protected void updateItem(WordList.Word word, boolean empty) {
      super.updateItem(word, empty);
      if (empty || word == null) {
        setGraphic(null);
        setAccessibleText("");
        return;
      }
      name.setText(word.name());
      meaning.setText(word.meaning());
      setGraphic(both);
      setAccessibleText(word.name() + ": " + word.meaning());
    }
  }
}
