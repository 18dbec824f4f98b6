package blindlap.screen.review;

import static blindlap.screen.part.ReviewParts.words;

import blindlap.screen.part.Look;
import blindlap.session.SessionState;
import blindlap.wording.FriendWords;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javafx.beans.binding.Bindings;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.PasswordField;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;

/** What is asked of masked labels: the one guess, or what was read. */
final class MasksView extends VBox {
  private final Look look;
  private final MasksModel model;
  private final SessionState state;

  private MasksView(Look look, MasksModel model, SessionState state) {
    super(10);
    this.look = look;
    this.model = model;
    this.state = state;
  }

  /** Which is which? Once, and before any finding is shown. */
  static MasksView guess(Look look, MasksModel model, SessionState state) {
    MasksView view = new MasksView(look, model, state);
    ComboBox<String> choice = view.choice("guess.title");
    Button guess = view.button("guess.do", "next");
    guess.disableProperty().bind(Bindings.isNull(choice.valueProperty()));
    guess.setOnAction(e -> model.guess(state, view.chosen(choice)));
    Button none = view.button("guess.none", "quiet");
    none.setOnAction(e -> model.guess(state, List.of()));
    view.show("guess.title", "guess.note", new FlowPane(12, 8, choice, guess, none));
    return view;
  }

  /** Which was which: the friend's phrase opens it, or it stands under the tape. */
  static MasksView read(Look look, MasksModel model, SessionState state) {
    MasksView view = new MasksView(look, model, state);
    if (state.masks().isPresent()) {
      PasswordField phrase = new PasswordField();
      phrase.setId("mask-phrase");
      phrase.setPromptText(FriendWords.say("phrase"));
      phrase.setAccessibleText(FriendWords.say("phrase"));
      phrase.setPrefColumnCount(32);
      Button read = view.button("read.do", "next");
      read.setOnAction(e -> model.read(state, phrase.getText()));
      view.show("read.title", "read.phrase", new FlowPane(12, 8, phrase, read));
      return view;
    }
    ComboBox<String> choice = view.choice("read.title");
    Button read = view.button("marks.do", "next");
    read.disableProperty().bind(Bindings.isNull(choice.valueProperty()));
    read.setOnAction(e -> model.fromMarks(state, view.chosen(choice)));
    view.show("read.title", "read.marks", new FlowPane(12, 8, choice, read));
    return view;
  }

  private List<Integer> chosen(ComboBox<String> choice) {
    Map<String, List<Integer>> all = MasksModel.mappings(state.plan());
    return Objects.requireNonNull(all.get(choice.getValue()));
  }

  private ComboBox<String> choice(String title) {
    ComboBox<String> choice = new ComboBox<>();
    choice.getItems().setAll(MasksModel.mappings(state.plan()).keySet());
    choice.setPromptText(FriendWords.say("choose"));
    choice.setAccessibleText(FriendWords.say(title));
    choice.minHeightProperty().bind(look.touch());
    return choice;
  }

  private Button button(String key, String style) {
    Button button = new Button(FriendWords.say(key));
    button.getStyleClass().add(style);
    button.setWrapText(true);
    button.minHeightProperty().bind(look.touch());
    return button;
  }

  private void show(String title, String note, Node asked) {
    Label trouble = words("", "strong");
    trouble.textProperty().bind(model.troubleProperty());
    trouble.managedProperty().bind(trouble.textProperty().isNotEmpty());
    getChildren()
        .setAll(
            words(FriendWords.say(title), "h2"),
            words(FriendWords.say(note), "second"),
            asked,
            trouble);
  }
}
