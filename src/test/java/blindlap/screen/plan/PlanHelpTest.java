package blindlap.screen.plan;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.Desk;
import blindlap.screen.Models;
import blindlap.screen.NoDialogs;
import blindlap.screen.SceneText;
import blindlap.screen.Window;
import blindlap.screen.Within;
import blindlap.screen.part.Background;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import blindlap.screen.part.Shell;
import blindlap.screen.part.TypedForm;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.Scene;
import javafx.scene.control.Label;
import javafx.scene.control.TitledPane;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Whoever never planned such a day is told in place what a field is for and what a word means. */
class PlanHelpTest {
  @TempDir Path folder;

  private final List<String> without = new ArrayList<>();
  private int fields;

  @BeforeAll
  static void startWindowSystem() throws InterruptedException {
    Window.start();
    Window.run(Fonts::load);
  }

  private Scene sample(Desk desk) {
    PlanModel model = Models.plan(desk, new Shell(), Background.immediate(), 0);
    model.startFromFile(PlanStates.SAMPLE);
    PlanPage page = new PlanPage(new Look(), model, new NoDialogs());
    Scene scene = new Scene(page, 1366, 768);
    new Look().dress(scene);
    Within.unfold(page);
    page.applyCss();
    page.layout();
    return scene;
  }

  @Test
  void everyFieldHasALineOfHelpOrStandsInARowWhoseColumnsAreNamed() {
    try (Desk desk = PlanDesk.open(folder, 1)) {
      Window.run(() -> look(sample(desk).getRoot()));
    }
    assertThat(fields).isGreaterThan(80);
    assertThat(without).isEmpty();
  }

  private void look(Parent parent) {
    for (Node child : parent.getChildrenUnmodifiable()) {
      if (child.getProperties().get(TypedForm.Entry.class) instanceof TypedForm.Entry) {
        fields++;
        if (!helped(child)) {
          without.add(String.valueOf(child.getAccessibleText()));
        }
      } else if (child instanceof Parent next) {
        look(next);
      }
    }
  }

  /** A line under it, or under it and what stands beside it; a row has its columns named above. */
  private static boolean helped(Node field) {
    Parent around = field.getParent();
    return line(around) || line(around.getParent()) || inRow(field);
  }

  private static boolean line(Parent around) {
    return around.getChildrenUnmodifiable().stream()
        .anyMatch(
            each ->
                each instanceof Label label
                    && label.getStyleClass().containsAll(List.of("note", "second"))
                    && !label.getText().isBlank());
  }

  private static boolean inRow(Node field) {
    for (Node at = field; at != null; at = at.getParent()) {
      if (at.getStyleClass().contains("plan-part")) {
        return true;
      }
    }
    return false;
  }

  @Test
  void wordsOfTheTradeAreExplainedWhereTheyStand() {
    try (Desk desk = PlanDesk.open(folder, 1)) {
      String page = Window.call(() -> SceneText.of(sample(desk)));
      assertThat(page)
          .contains("A stint: the laps on one setup between two swaps.")
          .contains("Real: the other setup is fitted. Dummy: as if, with the same setup.")
          .contains("the key: the order as drawn, sealed until the review.")
          .contains("Drift: laps get quicker or slower over the day by themselves.")
          .contains("Raw: the setups differ by seconds or points. Ratio: by so many per cent");
    }
  }

  @Test
  void aStintIsToldWithWhatItsMinutesAreFor() {
    try (Desk desk = PlanDesk.open(folder, 1)) {
      String page = Window.call(() -> SceneText.of(sample(desk)).replace('\u202f', ' '));
      assertThat(page)
          .contains(
              "Every stint takes 19 min: swap 7 (always 7, real or dummy; the dark foot of each"
                  + " stint), ride 2, score 2, climb 8.");
    }
  }

  @Test
  void whatOnlyAStatisticianCanUseStandsInItsFoldAndNowhereElse() {
    List<String> tester = new ArrayList<>();
    List<String> statistician = new ArrayList<>();
    try (Desk desk = PlanDesk.open(folder, 1)) {
      Window.run(() -> read(sample(desk).getRoot(), tester, statistician));
    }
    assertThat(tester).hasSizeGreaterThan(150);
    assertThat(tester)
        .noneMatch(
            words ->
                words.contains("orders could be drawn")
                    || words.contains("possible p")
                    || words.contains("any two stints")
                    || words.contains("standard deviation"));
    assertThat(String.join(" ", statistician))
        .contains(
            "orders could be drawn",
            "smallest p",
            "of 100 such days, larger",
            "standard deviation");
  }

  private static void read(Parent parent, List<String> tester, List<String> statistician) {
    for (Node child : parent.getChildrenUnmodifiable()) {
      if (child instanceof TitledPane fold && fold.getText().startsWith("For the statistician")) {
        read(fold, statistician, statistician);
      } else if (child instanceof Parent next) {
        if (child instanceof Label label) {
          tester.add(label.getText());
        }
        read(next, tester, statistician);
      }
    }
  }
}
