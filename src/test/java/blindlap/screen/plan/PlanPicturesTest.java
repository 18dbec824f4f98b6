package blindlap.screen.plan;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.Desk;
import blindlap.screen.Models;
import blindlap.screen.NoDialogs;
import blindlap.screen.ShellView;
import blindlap.screen.Window;
import blindlap.screen.part.Background;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import blindlap.screen.part.PageGrid;
import blindlap.screen.part.Shell;
import blindlap.screen.part.Theme;
import blindlap.wording.AnswerWords;
import blindlap.wording.PlanWords;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.TitledPane;
import javafx.scene.text.Text;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PlanPicturesTest {
  private static final Path SAMPLE = Path.of("sample-sessions/shocks-on-quarry-loop/plan.yaml");

  private static final double MARGIN = 20;

  @TempDir Path folder;

  @BeforeAll
  static void startWindowSystem() throws InterruptedException {
    Window.start();
    Window.run(Fonts::load);
  }

  @Test
  void thePageIsPhotographedInEveryThemeAndAtTwiceTheTextSize() throws IOException {
    try (Desk desk = PlanDesk.open(folder, 1)) {
      Files.copy(SAMPLE, folder.resolve("plan.yaml"));
      Window.run(() -> takeAll(desk));
    }
  }

  @Test
  void theStepsOfTheCommitArePhotographed() throws IOException {
    try (Desk desk = PlanDesk.open(folder, 1)) {
      Files.copy(SAMPLE, folder.resolve("plan.yaml"));
      Window.run(() -> commit(desk));
    }
  }

  @Test
  void threeSetupsAnUnblindedSessionAndWhatIsFoldedAwayArePhotographed() throws IOException {
    try (Desk desk = PlanDesk.open(folder, 1)) {
      Files.copy(SAMPLE, folder.resolve("plan.yaml"));
      Window.run(() -> more(desk));
    }
  }

  @Test
  void aRuleThatIsWorkedOutBehindThePageIsPhotographed() throws IOException {
    try (Desk desk = PlanDesk.open(folder, 1)) {
      Files.writeString(
          folder.resolve("plan.yaml"),
          Files.readString(SAMPLE)
              .replace("protocol: blocks-of-four", "rule: {setups: 2, stints: 36, max_run: 15}")
              .replace("stints: 16", "stints: 36"));
      Window.run(() -> waiting(desk, 1, "plan-waiting"));
      Window.run(() -> waiting(desk, 2, "plan-waiting-200"));
    }
  }

  private void waiting(Desk desk, double scale, String name) {
    Look look = new Look();
    look.textScaleProperty().set(scale);
    Deque<Runnable> work = new ArrayDeque<>();
    PlanModel model = Models.plan(desk, new Shell(), Background.by(work::add), 0);
    model.startFromFile(folder.resolve("plan.yaml"));
    PlanPage page = new PlanPage(look, model, new NoDialogs());
    Scene scene = new Scene(page, 1280, 800);
    look.dress(scene);
    PageGrid grid = (PageGrid) page.lookup(".scroll-pane");
    while (!model.answer().waiting().workingProperty().get()) {
      work.remove().run();
    }
    picture(scene, grid, AnswerWords.say("question"), name);
    key(page).fire();
    picture(scene, grid, AnswerWords.say("question"), name + "-stopped");
    assertThat(key(page).getText()).isEqualTo(AnswerWords.say("waiting.begin"));
  }

  /** A key that is squeezed beside other words stands a letter a line. */
  private static Button key(Node page) {
    List<Button> keys =
        page.lookup(".waiting").lookupAll(".button").stream()
            .filter(Node::isVisible)
            .map(Button.class::cast)
            .toList();
    assertThat(keys).hasSize(1);
    assertThat(keys.get(0).getWidth()).isGreaterThan(keys.get(0).getHeight());
    return keys.get(0);
  }

  private void more(Desk desk) {
    Look look = new Look();
    PlanModel model = Models.plan(desk, new Shell(), Background.immediate(), 0);
    model.startFromFile(folder.resolve("plan.yaml"));
    PlanPage page = new PlanPage(look, model, new NoDialogs());
    Scene scene = new Scene(page, 1280, 800);
    look.dress(scene);
    page.applyCss();
    page.layout();
    PageGrid grid = (PageGrid) page.lookup(".scroll-pane");
    page.lookupAll(".titled-pane").forEach(pane -> ((TitledPane) pane).setExpanded(true));
    for (String fold : List.of("more.fields", "field.bikes", "day.times", "head.workshop")) {
      picture(scene, grid, PlanWords.say(fold), "plan-fold-" + fold.replace('.', '-'));
    }
    model.form().add("setups").field("name").set("Shock M");
    model.rules().chooseProtocol("three-setups");
    model.answer().simulate(200);
    model.form().field("stints").set("18");
    grid.setVvalue(0);
    Window.picture(scene, "plan-three-top");
    picture(scene, grid, PlanWords.say("head.odds"), "plan-three-odds");
    picture(scene, grid, PlanWords.say("head.curve"), "plan-three-curve");
    model.form().list("setups").remove(2);
    model.rules().chooseProtocol("blocks-of-four");
    model.answer().simulate(0);
    model.form().field("stints").set("16");
    model.form().part("blinding").field("blinded").set("no");
    model.commit().begin();
    Window.picture(scene, "plan-unblinded-sign");
    model.commit().back();
    model.form().field("stints").set("8");
    model.form().field("day").set("some day");
    grid.setVvalue(0);
    Window.picture(scene, "plan-cannot-top");
    picture(scene, grid, PlanWords.say("head.problems"), "plan-cannot-problems");
  }

  private static void picture(Scene scene, PageGrid grid, String heading, String name) {
    scene.getRoot().applyCss();
    scene.getRoot().layout();
    show(grid, heading);
    Window.picture(scene, name);
  }

  private void commit(Desk desk) {
    Look look = new Look();
    PlanModel model = Models.plan(desk, new Shell(), Background.immediate(), 0);
    model.startFromFile(folder.resolve("plan.yaml"));
    Scene scene = new Scene(new PlanPage(look, model, new NoDialogs()), 1280, 800);
    look.dress(scene);
    CommitModel commit = model.commit();
    commit.begin();
    Window.picture(scene, "plan-commit-1-hand-over");
    commit.handedOver("4711");
    Window.picture(scene, "plan-commit-2-sign");
    commit.signedProperty().set("R. Lind\nM. Oster");
    commit.sign();
    String phrase = commit.phrase().shownProperty().get();
    Window.picture(scene, "plan-commit-3-phrase");
    commit.phraseNoted();
    String question = commit.phrase().questionProperty().get();
    commit.phrase().typedProperty().set(HelperTypes.words(question, phrase));
    Window.picture(scene, "plan-commit-4-words");
    commit.seal();
    Window.picture(scene, "plan-commit-5-sealed");
    commit.cover().hide();
    Window.picture(scene, "plan-commit-blank");
    commit.cover().reopen("4711");
    commit.goOn();
    Window.picture(scene, "plan-commit-6-sheet");
  }

  /** One page that is dressed anew: its days are simulated once. */
  private void takeAll(Desk desk) {
    Shell shell = new Shell();
    Look look = new Look();
    PlanModel model = Models.plan(desk, shell, Background.immediate(), 400);
    model.startFromFile(folder.resolve("plan.yaml"));
    PlanPage page = new PlanPage(look, model, new NoDialogs());
    ShellView view =
        new ShellView(look, shell, Map.of(Shell.Page.PLAN, () -> page), List.of("quarry.blindlap"));
    shell.go(Shell.Page.PLAN);
    Scene scene = new Scene(view, 1280, 800);
    look.dress(scene);
    for (Theme theme : Theme.values()) {
      look.themeProperty().set(theme);
      take(scene, page, "plan-" + theme.name().toLowerCase(java.util.Locale.ROOT));
    }
    look.themeProperty().set(Theme.PAPER);
    look.textScaleProperty().set(2);
    // What folds by the size of the text is laid out again.
    scene.getRoot().applyCss();
    scene.getRoot().layout();
    take(scene, page, "plan-paper-200");
  }

  private static void take(Scene scene, PlanPage page, String name) {
    PageGrid grid = (PageGrid) page.lookup(".scroll-pane");
    grid.setVvalue(0);
    Window.picture(scene, name + "-top");
    for (String head :
        List.of(
            "head.curve", "head.odds", "head.left", "head.setups", "head.measures", "head.day")) {
      show(grid, PlanWords.say(head));
      Window.picture(scene, name + "-" + head.substring(5));
    }
    grid.setVvalue(1);
    Window.picture(scene, name + "-commit");
  }

  /** Scrolls until a heading stands on top. */
  private static void show(PageGrid grid, String heading) {
    Stream.of(".label", ".text")
        .flatMap(kind -> grid.getContent().lookupAll(kind).stream())
        .filter(node -> says(node, heading))
        .findFirst()
        .ifPresent(
            node -> {
              double top = grid.getContent().sceneToLocal(node.localToScene(0, 0)).getY() - MARGIN;
              double most =
                  grid.getContent().getBoundsInLocal().getHeight()
                      - grid.getViewportBounds().getHeight();
              grid.setVvalue(Math.min(1, top / most));
            });
  }

  private static boolean says(Node node, String words) {
    return node instanceof Label label && label.getText().equals(words)
        || node instanceof Text text && text.getText().equals(words);
  }
}
