package blindlap.screen.friend;

import blindlap.screen.part.Caution;
import blindlap.screen.part.ChoiceRow;
import blindlap.screen.part.Fields;
import blindlap.screen.part.Look;
import blindlap.wording.FriendWords;
import blindlap.wording.SwapWords;
import blindlap.wording.day.Words;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.IntStream;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;

/** Which label goes on which part: by lot or by choice, with the phrase that seals it. */
final class FriendMasksView extends VBox {
  private final Look look;
  private final FriendModel model;
  private final FriendMasks masks;

  FriendMasksView(Look look, FriendModel model) {
    super(14);
    this.look = look;
    this.model = model;
    this.masks = model.masks();
    masks.stepProperty().addListener((o, before, now) -> show(now));
    show(masks.stepProperty().get());
  }

  private void show(FriendMasks.Step step) {
    switch (step) {
      case CHOOSE -> choose();
      case PHRASE -> phrase();
      case WORDS -> typedBack();
    }
    Label wrong = Fields.words("", "strong");
    wrong.textProperty().bind(masks.wrongProperty().concat(" ").concat(model.troubleProperty()));
    getChildren().add(wrong);
  }

  private void choose() {
    Button draw = button("friend.draw", masks::draw);
    getChildren()
        .setAll(
            Fields.words(FriendWords.say("friend.masks.title"), "h2"),
            Fields.words(FriendWords.say("friend.masks.how")),
            draw,
            Fields.words(FriendWords.say("friend.or")));
    List<String> labels = masks.labels();
    List<Integer> chosen = new ArrayList<>(Collections.nCopies(labels.size(), -1));
    List<ChoiceRow.Option<Integer>> setups =
        IntStream.range(0, masks.setups().size())
            .mapToObj(i -> new ChoiceRow.Option<>(i, masks.setups().get(i)))
            .toList();
    for (int i = 0; i < labels.size(); i++) {
      int label = i;
      getChildren()
          .add(
              new ChoiceRow<>(
                  look,
                  FriendWords.say("friend.label", labels.get(i)),
                  setups,
                  look.stacked() ? 1 : Math.min(3, setups.size()),
                  setup -> chosen.set(label, setup)));
    }
    getChildren()
        .addAll(
            button("friend.chosen", () -> masks.choose(List.copyOf(chosen))),
            new Caution(SwapWords.say("caution"), Words.of("cautions").say("short")));
  }

  private void phrase() {
    Label phrase = Fields.words(masks.phrase(), "lead", "phrase");
    phrase.setId("phrase");
    getChildren().setAll(Fields.words(FriendWords.say("friend.stick"), "h2"));
    masks.lines().forEach(line -> getChildren().add(Fields.words(line, "lead")));
    getChildren()
        .addAll(
            Fields.words(FriendWords.say("friend.note"), "second"),
            phrase,
            Fields.words(FriendWords.say("friend.phrase.note")),
            button("friend.noted", masks::noted));
  }

  private void typedBack() {
    TextField typed = new TextField();
    typed.setId("typed-words");
    typed.setPrefColumnCount(30);
    typed.setAccessibleText(masks.question());
    typed.minHeightProperty().bind(look.touch());
    typed.setOnAction(e -> masks.seal(typed.getText()));
    Button again = button("friend.again", masks::again);
    again.getStyleClass().remove("next");
    getChildren()
        .setAll(
            Fields.words(masks.question(), "h2"),
            typed,
            new FlowPane(12, 8, button("friend.seal", () -> masks.seal(typed.getText())), again));
    typed.requestFocus();
  }

  private Button button(String key, Runnable work) {
    Button button = Fields.button(FriendWords.say(key), work);
    button.getStyleClass().add("next");
    button.setWrapText(true);
    button.minHeightProperty().bind(look.touch());
    return button;
  }
}
