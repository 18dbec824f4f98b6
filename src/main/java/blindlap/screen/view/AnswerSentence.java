package blindlap.screen.view;

import java.util.ArrayList;
import java.util.List;
import javafx.scene.AccessibleRole;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.layout.VBox;
import javafx.scene.text.Text;
import javafx.scene.text.TextFlow;

/**
 * A page's question and its answer, the largest thing on the page. The words that carry the answer
 * have the highlighter stroke and stay on one line as long as the page is wide enough. Two lines
 * are always reserved, so that nothing below moves while the answer changes.
 */
public final class AnswerSentence extends VBox {
  // 47 px type at a line distance of 1.14.
  private static final double TWO_LINES = 2 * 47 * 1.2;

  private final TextFlow answer = new TextFlow();
  private String marked = "";
  private String before = "";
  private String after = "";
  private boolean broken;

  /** An answer to the question, still empty. */
  public AnswerSentence(Look look, String question) {
    super(4);
    Label asked = new Label(question);
    asked.getStyleClass().add("question");
    asked.setWrapText(true);
    answer.getStyleClass().add("answer");
    answer.setAccessibleRole(AccessibleRole.TEXT);
    answer.minHeightProperty().bind(look.px(TWO_LINES));
    answer.widthProperty().addListener((property, old, now) -> fit());
    getChildren().setAll(asked, answer);
  }

  /** Says the sentence "before marked after"; any of the three may be empty. */
  public void say(String before, String marked, String after) {
    this.before = before;
    this.marked = marked;
    this.after = after;
    this.broken = false;
    answer.setAccessibleText(before + marked + after);
    build();
    fit();
  }

  private void build() {
    List<Node> parts = new ArrayList<>();
    add(parts, before);
    if (!marked.isEmpty()) {
      for (String piece : broken ? marked.split(" ", -1) : new String[] {marked}) {
        if (!parts.isEmpty() && parts.get(parts.size() - 1) instanceof Label) {
          add(parts, " ");
        }
        Label stroke = new Label(piece);
        stroke.getStyleClass().add("highlit");
        stroke.setMinWidth(USE_PREF_SIZE);
        parts.add(stroke);
      }
    }
    add(parts, after);
    answer.getChildren().setAll(parts);
  }

  private static void add(List<Node> parts, String words) {
    if (!words.isEmpty()) {
      Text text = new Text(words);
      text.getStyleClass().add("words");
      parts.add(text);
    }
  }

  // Breaks the stroke into words only where it would not fit on a line of its own.
  private void fit() {
    if (broken || answer.getWidth() <= 0) {
      return;
    }
    for (Node part : answer.getChildren()) {
      if (part instanceof Label label && label.prefWidth(-1) > answer.getWidth()) {
        broken = true;
      }
    }
    if (broken) {
      build();
    }
  }
}
