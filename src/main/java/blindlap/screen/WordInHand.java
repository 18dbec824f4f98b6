package blindlap.screen;

import blindlap.wording.day.WordList;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.Label;
import javafx.scene.control.Labeled;
import javafx.scene.control.TextInputControl;
import org.jspecify.annotations.Nullable;

/**
 * Which word of the list somebody is at who asks for one: the selected one or the one at the caret,
 * else one in the title, the words or the help of what has the focus.
 */
final class WordInHand {
  private WordInHand() {}

  /** The word of a node that has the focus; empty if it is about none of the list. */
  static Optional<WordList.Word> of(WordList words, Node focus) {
    for (String text : texts(focus)) {
      Optional<WordList.Word> word = words.in(text);
      if (word.isPresent()) {
        return word;
      }
    }
    return Optional.empty();
  }

  /** Texts that may hold the word, the nearest first. */
  private static List<String> texts(Node focus) {
    List<String> texts = new ArrayList<>();
    Consumer<@Nullable String> add =
        text -> {
          if (text != null && !text.isBlank()) {
            texts.add(text);
          }
        };
    if (focus instanceof TextInputControl field) {
      add.accept(field.getSelectedText());
      add.accept(atCaret(field));
    }
    if (focus instanceof Labeled labeled) {
      add.accept(labeled.getText());
    }
    add.accept(focus.getAccessibleText());
    labels(focus).forEach(add);
    add.accept(focus.getAccessibleHelp());
    if (focus instanceof TextInputControl field) {
      add.accept(field.getPromptText());
    }
    return texts;
  }

  /** The run of letters that the caret stands in or at. */
  private static String atCaret(TextInputControl field) {
    String text = field.getText() == null ? "" : field.getText();
    int from = Math.min(field.getCaretPosition(), text.length());
    int to = from;
    while (from > 0 && ofWord(text.charAt(from - 1))) {
      from--;
    }
    while (to < text.length() && ofWord(text.charAt(to))) {
      to++;
    }
    return text.substring(from, to);
  }

  private static boolean ofWord(char letter) {
    return Character.isLetterOrDigit(letter) || letter == '-' || letter == '\'';
  }

  /** Labels that stand beside a field in its own box: its title first, then what it is for. */
  private static List<String> labels(Node focus) {
    Parent box = focus.getParent();
    if (box == null) {
      return List.of();
    }
    return box.getChildrenUnmodifiable().stream()
        .filter(Label.class::isInstance)
        .map(node -> ((Label) node).getText())
        .filter(text -> text != null && !text.isBlank())
        .toList();
  }
}
