package blindlap.screen.part;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.screen.Window;
import java.util.List;
import javafx.geometry.Insets;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.Label;
import javafx.scene.layout.StackPane;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

class AnswerSentenceTest {
  @BeforeAll
  static void startWindowSystem() throws InterruptedException {
    Window.start();
    Window.run(Fonts::load);
  }

  @Test
  void noLineBeginsWithTheCommaBehindTheStroke() {
    Window.run(
        () -> {
          assertThat(stroke(2000)).hasSize(1);
          Label whole = (Label) stroke(2000).get(0);
          Insets around = whole.getInsets();
          List<Node> pieces = stroke(whole.getWidth() - around.getLeft() - around.getRight() + 3);
          assertThat(pieces)
              .extracting(piece -> ((Label) piece).getText())
              .containsExactly("real", "and", "worthwhile");
        });
  }

  /** What has the stroke in a sentence that is so wide. */
  private static List<Node> stroke(double width) {
    Look look = new Look();
    AnswerSentence sentence = new AnswerSentence(look, "Is it quicker?");
    sentence.say("Shock L was faster: ", "real and worthwhile", ", for R. Lind.");
    StackPane root = new StackPane(sentence);
    look.dress(new Scene(root, width, 600));
    root.resize(width, 600);
    for (int pulse = 0; pulse < 3; pulse++) {
      root.applyCss();
      root.layout();
    }
    return List.copyOf(sentence.lookupAll(".highlit"));
  }
}
