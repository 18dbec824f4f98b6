package blindlap.screen.book;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.SeriesDays;
import blindlap.screen.Window;
import blindlap.screen.part.Background;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Objects;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.Scene;
import javafx.scene.control.Label;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is wrong with a unit is read in one glance, though its box is narrow. */
class OldDayMappingViewTest {
  @TempDir Path folder;

  private static @Nullable Label label(Node node, String begins) {
    if (node instanceof Label label && label.getText().startsWith(begins)) {
      return label;
    }
    if (node instanceof Parent parent) {
      for (Node child : parent.getChildrenUnmodifiable()) {
        Label found = label(child, begins);
        if (found != null) {
          return found;
        }
      }
    }
    return null;
  }

  @Test
  void whatIsWrongWithAUnitTakesTwoLinesAtTheMost() throws Exception {
    Window.start();
    Path file = Files.writeString(folder.resolve("old.csv"), "t\n95120\n94120\n96120\n");
    try (SeriesDays days = new SeriesDays(folder, 1)) {
      Window.run(
          () -> {
            Fonts.load();
            Look look = new Look();
            OldDayModel model =
                new OldDayModel(
                    days.desk().plainDays(), days.desk().history(), Background.immediate());
            OldDayMappingView view = new OldDayMappingView(look, model);
            Scene scene = new Scene(view, 1000, 900);
            look.dress(scene);
            model.open(file);
            view.columns(model.foundProperty().get().columns());
            model.measures().get(0).field("kind").set("lap time");
            model.measures().get(0).field("unit").set("s");
            view.applyCss();
            view.layout();
            Label wrong = Objects.requireNonNull(label(view, "95120 s cannot be such a time"));
            Label title = Objects.requireNonNull(label(view, "Unit in the file"));
            double line = title.getHeight();
            assertThat(wrong.getHeight()).isLessThan(2.6 * line);
          });
    }
  }
}
