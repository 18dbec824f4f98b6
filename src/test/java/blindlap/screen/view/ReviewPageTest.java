package blindlap.screen.view;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.SampleDays;
import blindlap.screen.model.Background;
import blindlap.screen.model.Dialogs;
import blindlap.screen.model.ReviewModel;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.control.Labeled;
import javafx.scene.control.PasswordField;
import javafx.scene.text.Text;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * The review pages, driven in a real window without a screen; their pictures go into the manual.
 */
class ReviewPageTest {
  private static final Dialogs NONE =
      new Dialogs() {
        @Override
        public Optional<Path> openFile(String title) {
          return Optional.empty();
        }

        @Override
        public Optional<Path> saveFile(String title, String name) {
          return Optional.empty();
        }

        @Override
        public Optional<Path> folder(String title) {
          return Optional.empty();
        }
      };

  @BeforeAll
  static void start() throws InterruptedException {
    Window.start();
    Window.run(Fonts::load);
  }

  @Test
  void theFindingShowsVerdictFirstInEveryTheme() {
    SampleDays.ride(
        "shocks-on-quarry-loop",
        (desk, state) ->
            Window.run(
                () -> {
                  Look look = new Look();
                  ReviewModel model = new ReviewModel(desk, Background.immediate());
                  model.open(state.id());
                  ReviewPage page = new ReviewPage(look, model, NONE);
                  Scene scene = new Scene(page, 1100, 2900);
                  look.dress(scene);
                  for (Theme theme : Theme.values()) {
                    look.themeProperty().set(theme);
                    picture(scene, "review-" + theme.name().toLowerCase(java.util.Locale.ROOT));
                  }
                  assertThat(texts(page))
                      .contains("real and worthwhile")
                      .anyMatch(t -> t.contains("Shock L was 2.0 s a lap faster than Shock K"))
                      .anyMatch(t -> t.contains("both fingerprints".substring(5)));
                }));
  }

  @Test
  void theBlindReviewKnowsNoSetupAndLeadsToTheOpenKey() {
    SampleDays.sealed(
        "shocks-on-quarry-loop",
        (desk, state, phrase) ->
            Window.run(
                () -> {
                  Look look = new Look();
                  ReviewModel model = new ReviewModel(desk, Background.immediate());
                  model.open(state.id());
                  ReviewPage page = new ReviewPage(look, model, NONE);
                  Scene scene = new Scene(page, 1100, 2300);
                  look.dress(scene);
                  picture(scene, "blind-review");
                  assertThat(texts(page)).noneMatch(t -> t.contains("Shock"));
                  press(page, "Close the review");
                  picture(scene, "blind-review-closed");
                  assertThat(texts(page)).contains("The review is closed.");
                  assertThat(texts(page)).noneMatch(t -> t.contains("Shock"));
                  all(page, PasswordField.class).get(0).setText("wrong words");
                  press(page, "Open the key");
                  assertThat(texts(page)).anyMatch(t -> t.contains("Nothing was opened"));
                  all(page, PasswordField.class).get(0).setText(phrase);
                  press(page, "Open the key");
                  assertThat(texts(page)).contains("real and worthwhile");
                }));
  }

  /** Takes a picture, and with -Dblindlap.write=true puts it into the manual. */
  private static void picture(Scene scene, String name) {
    Window.picture(scene, name);
    if (Boolean.getBoolean("blindlap.write")) {
      try {
        java.nio.file.Files.createDirectories(Path.of("docs", "pictures"));
        java.nio.file.Files.copy(
            Path.of("target", "pictures", name + ".png"),
            Path.of("docs", "pictures", name + ".png"),
            java.nio.file.StandardCopyOption.REPLACE_EXISTING);
      } catch (java.io.IOException e) {
        throw new java.io.UncheckedIOException(e);
      }
    }
  }

  private static void press(Parent page, String words) {
    all(page, Button.class).stream()
        .filter(b -> b.getText().equals(words))
        .findFirst()
        .orElseThrow()
        .fire();
  }

  private static List<String> texts(Parent page) {
    List<String> texts = new ArrayList<>();
    all(page, Labeled.class).forEach(l -> texts.add(String.valueOf(l.getText())));
    all(page, Text.class).forEach(t -> texts.add(t.getText()));
    all(page, Node.class)
        .forEach(n -> texts.add(n.getAccessibleText() == null ? "" : n.getAccessibleText()));
    return texts;
  }

  private static <T> List<T> all(Parent parent, Class<T> type) {
    List<T> found = new ArrayList<>();
    for (Node node : parent.getChildrenUnmodifiable()) {
      if (type.isInstance(node)) {
        found.add(type.cast(node));
      }
      if (node instanceof javafx.scene.control.ScrollPane scroll
          && scroll.getContent() instanceof Parent content) {
        found.addAll(all(content, type));
      } else if (node instanceof Parent inner) {
        found.addAll(all(inner, type));
      }
    }
    return found;
  }
}
