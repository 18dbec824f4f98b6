package blindlap.screen;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.RamFolder;
import blindlap.desk.TestDay;
import blindlap.screen.part.Background;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import blindlap.screen.part.Shell;
import blindlap.screen.plan.PlanModel;
import blindlap.screen.plan.PlanPage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import javafx.event.Event;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.TitledPane;
import javafx.scene.control.Toggle;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Every choice of every page: an arrow key goes to the next box and chooses nothing, so what is
 * shown as chosen stays what the page was told.
 */
class ChoiceArrowsTest {
  private static final List<KeyCode> ARROWS =
      List.of(KeyCode.RIGHT, KeyCode.DOWN, KeyCode.LEFT, KeyCode.UP);

  private @TempDir(factory = RamFolder.class) Path folder;
  private final Set<String> views = new TreeSet<>();
  private final List<String> wrong = new ArrayList<>();
  private int moved;

  @BeforeAll
  static void window() throws InterruptedException {
    Window.start();
    Window.run(Fonts::load);
  }

  /** What is shown as chosen in every group of a scene. */
  private static Map<ToggleGroup, List<Toggle>> chosen(Scene scene) {
    Map<ToggleGroup, List<Toggle>> chosen = new LinkedHashMap<>();
    for (ToggleButton box : boxes(scene)) {
      ToggleGroup group = box.getToggleGroup();
      chosen.put(group, group.getToggles().stream().filter(Toggle::isSelected).toList());
    }
    return chosen;
  }

  private static List<ToggleButton> boxes(Scene scene) {
    Set<Node> found = new LinkedHashSet<>(scene.getRoot().lookupAll(".toggle-button"));
    found.addAll(scene.getRoot().lookupAll(".radio-button"));
    return found.stream()
        .filter(ToggleButton.class::isInstance)
        .map(ToggleButton.class::cast)
        .filter(box -> box.getToggleGroup() != null)
        .filter(ChoiceArrowsTest::inView)
        .toList();
  }

  /** What is hidden with the section it stands in takes no key. */
  private static boolean inView(Node box) {
    for (Node part = box; part != null; part = part.getParent()) {
      if (!part.isVisible()) {
        return false;
      }
    }
    return true;
  }

  private void arrows(Scene scene, String moment) {
    for (ToggleButton box : boxes(scene)) {
      views.add(view(box));
      for (KeyCode arrow : ARROWS) {
        Map<ToggleGroup, List<Toggle>> before = chosen(scene);
        box.requestFocus();
        Event.fireEvent(
            box, new KeyEvent(KeyEvent.KEY_PRESSED, "", "", arrow, false, false, false, false));
        if (!chosen(scene).equals(before)) {
          wrong.add(moment + ": " + arrow + " at " + box.getText());
        }
        Node now = scene.getFocusOwner();
        if (now != box) {
          moved++;
        }
        if (!(now instanceof ToggleButton to) || to.getToggleGroup() != box.getToggleGroup()) {
          wrong.add(moment + ": " + arrow + " at " + box.getText() + " goes to " + now);
        }
      }
    }
  }

  /** The view a box stands in, by the name of its class. */
  private static String view(Node box) {
    for (Node part = box; part != null; part = part.getParent()) {
      String name = part.getClass().getSimpleName();
      String room = part.getClass().getPackageName();
      if (room.startsWith("blindlap.") && !room.equals("blindlap.screen.part")) {
        return name;
      }
    }
    return "";
  }

  @Test
  void anArrowKeyChoosesNothingOnAnyPage() throws IOException {
    new EveryPage(folder, (scene, moment, odd) -> arrows(scene, moment)).walk();

    assertThat(wrong).isEmpty();
    assertThat(moved).as("arrows that went to another box").isGreaterThan(100);
    assertThat(views)
        .contains(
            "PageNames",
            "PlanKnobsView",
            "PlanLevelView",
            "SwapChoiceView",
            "RideScoreView",
            "AloneView",
            "FriendMasksView");
  }

  @Test
  void anArrowKeyConcealsNoNullRunAndDividesNoDay() throws IOException {
    Path plan = Files.writeString(folder.resolve("plan.yaml"), TestDay.EIGHT);
    try (TestDay day = new TestDay(folder, TestDay.EIGHT, 1)) {
      Window.run(
          () -> {
            PlanModel model = Models.plan(day.desk(), new Shell(), Background.immediate(), 0);
            Look look = new Look();
            Scene scene = EveryPage.scene(look, new PlanPage(look, model, new NoDialogs()));
            model.startFromFile(plan);
            scene.getRoot().applyCss();
            scene.getRoot().layout();
            ((TitledPane) scene.getRoot().lookup("#divide")).setExpanded(true);
            scene.getRoot().applyCss();
            scene.getRoot().layout();
            arrows(scene, "divided");
            model.commit().begin();
            model.commit().handedOver("4711");
            scene.getRoot().applyCss();
            scene.getRoot().layout();
            arrows(scene, "null run");
            ToggleButton conceal =
                boxes(scene).stream()
                    .filter(box -> !box.isSelected())
                    .filter(box -> box.getText().contains("Shock L"))
                    .findFirst()
                    .orElseThrow();
            conceal.fire();
            assertThat(conceal.isSelected()).as("a press chooses").isTrue();
          });
    }

    assertThat(wrong).isEmpty();
    assertThat(views).contains("PlanDivideView", "HelperFrameView");
  }
}
