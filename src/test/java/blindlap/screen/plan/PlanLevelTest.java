package blindlap.screen.plan;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.Desk;
import blindlap.plan.BlindLevel;
import blindlap.screen.Models;
import blindlap.screen.NoDialogs;
import blindlap.screen.SceneText;
import blindlap.screen.Window;
import blindlap.screen.Within;
import blindlap.screen.part.Background;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import blindlap.screen.part.Shell;
import blindlap.screen.part.Theme;
import blindlap.screen.part.TypedForm;
import blindlap.wording.LevelWords;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.Scene;
import javafx.scene.control.RadioButton;
import javafx.scene.control.ScrollPane;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The part of the Plan page that says how blind the day is. */
class PlanLevelTest {
  @TempDir Path folder;
  private Desk desk;
  private PlanModel model;
  private PlanPage page;
  private final Look look = new Look();

  @BeforeAll
  static void startWindowSystem() throws InterruptedException {
    Window.start();
    Window.run(Fonts::load);
  }

  @BeforeEach
  void open() {
    desk = PlanDesk.open(folder, 1);
    Window.run(
        () -> {
          model = Models.plan(desk, new Shell(), Background.immediate(), 0);
          model.startFromFile(PlanStates.SAMPLE);
        });
  }

  @AfterEach
  void close() {
    desk.close();
  }

  private Scene scene(int width, int height, double text) {
    look.textScaleProperty().set(text);
    page = new PlanPage(look, model, new NoDialogs());
    Scene scene = new Scene(page, width, height);
    look.dress(scene);
    page.applyCss();
    page.layout();
    return scene;
  }

  private TypedForm blinding() {
    return model.form().part("blinding");
  }

  private RadioButton button(BlindLevel level) {
    return (RadioButton) page.lookup("#level-" + level);
  }

  private BlindLevel selected() {
    List<BlindLevel> all = new ArrayList<>();
    for (BlindLevel level : BlindLevel.values()) {
      if (button(level).isSelected()) {
        all.add(level);
      }
    }
    assertThat(all).hasSize(1);
    return all.get(0);
  }

  private Node part() {
    Node at = button(BlindLevel.OPEN);
    while (!(at instanceof PlanBlindView)) {
      at = at.getParent();
    }
    return at;
  }

  @Test
  void oneOfFiveIsChosenAndTheDraftSaysItInOneField() {
    Window.run(
        () -> {
          scene(1366, 768, 1);
          assertThat(selected()).isEqualTo(BlindLevel.HELPER);
          for (BlindLevel level : BlindLevel.values()) {
            button(level).fire();
            assertThat(selected()).isEqualTo(level);
            assertThat(blinding().field("level").get())
                .isEqualTo(level.name().toLowerCase(Locale.ROOT));
            assertThat(model.planProperty().get().orElseThrow().blinding().level())
                .isEqualTo(level);
          }
          button(BlindLevel.PREPARED).fire();
          assertThat(model.completeProperty().get()).isFalse();
          assertThat(blinding().field("prepared_by").errorProperty().get())
              .contains("nobody is named");
          blinding().field("prepared_by").set("M. Oster");
          assertThat(model.completeProperty().get()).isTrue();
        });
  }

  @Test
  void aDraftThatSaysYesOrNoIsReadAsALevelAndSaysItOnceAfterTheNextChoice() {
    Window.run(
        () -> {
          scene(1366, 768, 1);
          blinding().field("blinded").set("no");
          assertThat(selected()).isEqualTo(BlindLevel.OPEN);
          button(BlindLevel.DRAWN).fire();
          assertThat(blinding().tree())
              .containsEntry("level", "drawn")
              .doesNotContainKey("blinded");
          model.undo().takeBack();
          assertThat(selected()).isEqualTo(BlindLevel.OPEN);
          assertThat(blinding().field("blinded").get()).isEqualTo("no");
          model.undo().doAgain();
          assertThat(selected()).isEqualTo(BlindLevel.DRAWN);
        });
  }

  @Test
  void whatIsAskedOfWhomFollowsTheLevelAndWhatWasTypedStaysInSight() {
    Window.run(
        () -> {
          scene(1366, 768, 1);
          blinding().fill(java.util.Map.of());
          button(BlindLevel.DRAWN).fire();
          String alone = shown();
          assertThat(alone)
              .contains("Rider learns times")
              .doesNotContain("Guess asked", "Masked or prepared by", "The rider waits");
          button(BlindLevel.MASKED).fire();
          assertThat(shown())
              .contains("Masked or prepared by", "Which part is which")
              .doesNotContain("Units that look alike", "Guess asked");
          button(BlindLevel.PREPARED).fire();
          assertThat(shown())
              .contains("Masked or prepared by", "Units that look alike", "Guess asked")
              .doesNotContain("Which part is which", "The helper waits");
          button(BlindLevel.HELPER).fire();
          assertThat(shown()).doesNotContain("Masked or prepared by");
          blinding().field("prepared_by").set("M. Oster");
          assertThat(shown()).contains("Masked or prepared by");
        });
  }

  private String shown() {
    Within.unfold(page);
    page.applyCss();
    page.layout();
    List<String> words = new ArrayList<>();
    collect(part(), words);
    return String.join("\n", words);
  }

  private static void collect(Node node, List<String> words) {
    if (!node.isVisible()) {
      return;
    }
    if (node instanceof javafx.scene.control.Labeled labeled) {
      words.add(labeled.getText());
    }
    if (node instanceof Parent parent) {
      parent.getChildrenUnmodifiable().forEach(child -> collect(child, words));
    }
  }

  @Test
  void everyLevelSaysWhatItProvesNeedsAndMaySayAtEverySizeWithNothingCutOff() {
    Window.run(
        () -> {
          int rows = 0;
          for (int width : new int[] {900, 1366, 1920}) {
            for (double text : new double[] {1, 1.5, 2}) {
              Scene scene = scene(width, 768, text);
              for (BlindLevel level : BlindLevel.values()) {
                button(level).fire();
                Within.unfold(page);
                page.applyCss();
                page.layout();
                Within within = Within.of((Parent) part(), width + " px at " + text);
                assertThat(within.wrong()).isEmpty();
                assertThat(within.controls()).isGreaterThan(20);
              }
              String said = SceneText.of(scene).replace('\u202f', ' ');
              for (BlindLevel level : BlindLevel.values()) {
                for (String tell :
                    List.of(
                        LevelWords.proves(level),
                        LevelWords.needs(level),
                        LevelWords.mayBeSaid(level))) {
                  assertThat(said).contains(tell);
                  rows++;
                }
              }
            }
          }
          assertThat(rows).isEqualTo(9 * 15);
        });
  }

  /** Looked at: three themes, and the narrowest window at twice the text size. */
  @Test
  void itIsPhotographed() {
    Window.run(
        () -> {
          for (Theme theme : Theme.values()) {
            look.themeProperty().set(theme);
            photograph(1366, 768, 1, "plan-level-" + theme.name().toLowerCase(Locale.ROOT));
          }
          look.themeProperty().set(Theme.PAPER);
          photograph(900, 768, 1, "plan-level-900");
          photograph(900, 768, 2, "plan-level-900-200");
          assertThat(part().isVisible()).isTrue();
        });
  }

  private void photograph(int width, int height, double text, String name) {
    Scene scene = scene(width, height, text);
    button(BlindLevel.MASKED).fire();
    page.applyCss();
    page.layout();
    ScrollPane grid = (ScrollPane) page.lookup(".scroll-pane");
    double top = part().localToScene(0, 0).getY() - grid.localToScene(0, 0).getY();
    double high =
        grid.getContent().getLayoutBounds().getHeight() - grid.getViewportBounds().getHeight();
    grid.setVvalue(grid.getVvalue() + top / high);
    Window.picture(scene, name);
  }
}
