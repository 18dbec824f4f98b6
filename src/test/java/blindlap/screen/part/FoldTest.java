package blindlap.screen.part;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.screen.Window;
import javafx.scene.Scene;
import javafx.scene.control.Label;
import javafx.scene.layout.VBox;
import javafx.scene.text.Text;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A long title of a fold stands there whole, whatever room it has. */
class FoldTest {
  private static final String TITLE =
      "The request for chattering of the fork in the braking bumps before the second gate";

  @BeforeAll
  static void start() throws InterruptedException {
    Window.start();
  }

  @ParameterizedTest
  @ValueSource(doubles = {900, 420, 260})
  void aTitleTakesAsManyLinesAsItNeeds(double width) {
    Window.run(
        () -> {
          Fold fold = new Fold(TITLE, new Label("inside"));
          Label below = new Label("below");
          VBox box = new VBox(fold, below);
          box.setStyle("-fx-font-size: 22px");
          new Scene(box, width, 600);
          for (int pass = 0; pass < 3; pass++) {
            box.applyCss();
            box.layout();
          }
          Label title = (Label) fold.getGraphic();
          Text shown = (Text) title.lookup(".text");
          assertThat(shown.getText().replace("\n", " ")).isEqualTo(TITLE);
          assertThat(title.getWidth()).isLessThanOrEqualTo(width);
          assertThat(title.localToScene(title.getLayoutBounds()).getMaxY())
              .isLessThanOrEqualTo(below.localToScene(below.getLayoutBounds()).getMinY() + 1);
          assertThat(title.getHeight() > 60).as("%s", title.getHeight()).isEqualTo(width < 500);
          assertThat(fold.getText()).isEqualTo(TITLE);
        });
  }
}
