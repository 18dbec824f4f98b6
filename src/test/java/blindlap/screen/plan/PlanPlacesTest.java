package blindlap.screen.plan;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.Desk;
import blindlap.screen.Models;
import blindlap.screen.NoDialogs;
import blindlap.screen.ShellView;
import blindlap.screen.Window;
import blindlap.screen.Within;
import blindlap.screen.part.Background;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import blindlap.screen.part.PageGrid;
import blindlap.screen.part.Shell;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Consumer;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.Scene;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Nothing of Plan lies outside its page, and no word is cut, at any width from 900 px on. */
class PlanPlacesTest {
  private static final int HIGH = 768;
  private static final List<Integer> WIDTHS = List.of(900, 1000, 1100, 1366, 1920);
  private static final List<Double> SCALES = List.of(1.0, 2.0);

  @TempDir Path folder;

  private final List<String> wrong = new ArrayList<>();
  private int controls;

  @BeforeAll
  static void startWindowSystem() throws InterruptedException {
    Window.start();
    Window.run(Fonts::load);
  }

  @Test
  void noControlOfAnyStateLiesOutsideItsPageAndNoWordIsCut() {
    try (Desk desk = PlanDesk.open(folder, 1)) {
      PlanStates.all().forEach((name, state) -> Window.run(() -> measure(desk, name, state)));
    }
    assertThat(controls).isGreaterThan(10_000);
    assertThat(wrong).isEmpty();
  }

  @Test
  void theBarLeavesTheLowestWindowToThePageAndNotesKeepToTheirColumnInTheWidest() {
    try (Desk desk = PlanDesk.open(folder, 1)) {
      Window.run(
          () -> {
            Look look = new Look();
            Shell shell = new Shell();
            PlanPage page =
                page(look, shell, desk, model -> model.startFromFile(PlanStates.SAMPLE));
            ShellView view =
                new ShellView(look, shell, Map.of(Shell.Page.PLAN, () -> page), List.of("quarry"));
            shell.go(Shell.Page.PLAN);
            look.dress(new Scene(view, 1920, 1080));
            lay(view, 1920, 1080);
            Node note = Objects.requireNonNull(page.lookup(".margin-note"));
            assertThat(note.localToScene(note.getLayoutBounds()).getMaxX()).isLessThan(1300);
            look.textScaleProperty().set(2);
            lay(view, 900, 600);
            Node bar = Objects.requireNonNull(page.lookup(".plan-bar"));
            assertThat(bar.getLayoutBounds().getHeight()).isBetween(50.0, 200.0);
          });
    }
  }

  private static void lay(ShellView view, double width, double height) {
    view.resize(width, height);
    for (int pulse = 0; pulse < 3; pulse++) {
      view.applyCss();
      view.layout();
    }
  }

  @Test
  void everyNodeOfEveryStateHasTheParentItStandsInAndNoneStandsDeep() {
    List<Integer> deepest = new ArrayList<>();
    try (Desk desk = PlanDesk.open(folder, 1)) {
      PlanStates.all()
          .forEach((name, state) -> Window.run(() -> deepest.add(depth(desk, name, state))));
    }
    assertThat(wrong).isEmpty();
    // The toolkit goes up from a node to the root by recursion, for every style that it looks for.
    assertThat(deepest).hasSize(PlanStates.all().size()).allMatch(depth -> depth < 40);
  }

  private int depth(Desk desk, String name, Consumer<PlanModel> state) {
    Shell shell = new Shell();
    PlanPage page = page(new Look(), shell, desk, state);
    ShellView view =
        new ShellView(new Look(), shell, Map.of(Shell.Page.PLAN, () -> page), List.of("quarry"));
    shell.go(Shell.Page.PLAN);
    new Look().dress(new Scene(view, 1366, HIGH));
    Within.unfold(page);
    view.applyCss();
    view.layout();
    return depth(view, 0, name);
  }

  private int depth(Parent parent, int above, String name) {
    int deepest = above;
    for (Node child : parent.getChildrenUnmodifiable()) {
      if (child.getParent() != parent) {
        wrong.add(name + ": " + child + " stands in " + parent + ", its parent is another");
      } else if (child instanceof Parent next) {
        deepest = Math.max(deepest, depth(next, above + 1, name));
      }
    }
    return deepest;
  }

  private static PlanPage page(Look look, Shell shell, Desk desk, Consumer<PlanModel> state) {
    PlanModel model = Models.plan(desk, shell, Background.immediate(), 0);
    model.start(Shell.Beginning.COMPARISON);
    state.accept(model);
    return new PlanPage(look, model, new NoDialogs());
  }

  @Test
  void whatRemovesASettingStandsInTheLineOfItsFieldsAt1280Pixels() {
    try (Desk desk = PlanDesk.open(folder, 1)) {
      List<String> below = new ArrayList<>();
      Window.run(
          () -> {
            Look look = new Look();
            Shell shell = new Shell();
            PlanModel model = Models.plan(desk, shell, Background.immediate(), 0);
            model.startFromFile(PlanStates.SAMPLE);
            model.form().list("setups").get(0).list("settings").get(0).field("unit").set("%");
            PlanPage page = new PlanPage(look, model, new NoDialogs());
            ShellView view =
                new ShellView(look, shell, Map.of(Shell.Page.PLAN, () -> page), List.of("quarry"));
            shell.go(Shell.Page.PLAN);
            Scene scene = new Scene(view, 1280, HIGH);
            look.dress(scene);
            Window.picture(scene, "plan-settings-1280");
            for (Node row : page.lookupAll(".plan-part")) {
              Node remove = Objects.requireNonNull(row.lookup(".remove"));
              Node typed = Objects.requireNonNull(row.lookup(".text-field"));
              if (Math.abs(middle(remove) - middle(typed)) > 5) {
                below.add(String.valueOf(remove.getAccessibleText()));
              }
            }
            assertThat(page.lookupAll(".plan-part")).hasSizeGreaterThan(8);
          });
      assertThat(below).isEmpty();
    }
  }

  private static double middle(Node node) {
    return node.localToScene(node.getBoundsInLocal()).getCenterY();
  }

  private void measure(Desk desk, String name, Consumer<PlanModel> state) {
    Look look = new Look();
    Shell shell = new Shell();
    PlanPage page = page(look, shell, desk, state);
    ShellView view =
        new ShellView(look, shell, Map.of(Shell.Page.PLAN, () -> page), List.of("quarry.blindlap"));
    shell.go(Shell.Page.PLAN);
    Scene scene = new Scene(view, 1366, HIGH);
    look.dress(scene);
    Within.unfold(page);
    for (double scale : SCALES) {
      look.textScaleProperty().set(scale);
      for (int width : WIDTHS) {
        lay(view, width, HIGH);
        String moment = name + ", " + width + " px, " + Math.round(100 * scale) + " %";
        measure((PageGrid) page.lookup(".scroll-pane"), moment);
        measure((Parent) Objects.requireNonNull(page.lookup(".plan-bar")), moment + ", bar");
        measure((Parent) Objects.requireNonNull(view.lookup(".side")), moment + ", side");
      }
    }
  }

  private void measure(Parent part, String moment) {
    Within within = Within.of(part, moment);
    wrong.addAll(within.wrong());
    controls += within.controls();
  }
}
