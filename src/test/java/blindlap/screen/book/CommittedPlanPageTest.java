package blindlap.screen.book;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.Desk;
import blindlap.exchange.PlanText;
import blindlap.screen.Models;
import blindlap.screen.NoDialogs;
import blindlap.screen.SceneText;
import blindlap.screen.Window;
import blindlap.screen.part.Background;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import blindlap.screen.part.Shell;
import blindlap.screen.part.Theme;
import blindlap.screen.plan.CommitModel;
import blindlap.screen.plan.PlanDesk;
import blindlap.screen.plan.PlanModel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** From the end of a commit to the plan that was committed, and on to another like it. */
class CommittedPlanPageTest {
  private static final Path SAMPLE = Path.of("sample-sessions/shocks-on-quarry-loop/plan.yaml");

  @TempDir Path folder;
  private final Shell shell = new Shell();
  private final Rooms rooms = new Rooms();

  @BeforeAll
  static void startWindowSystem() throws InterruptedException {
    Window.start();
    Window.run(Fonts::load);
  }

  private static void commit(CommitModel commit) {
    commit.begin();
    commit.handedOver("4711");
    commit.signedProperty().set("R. Lind");
    commit.sign();
    String phrase = commit.phrase().shownProperty().get();
    String question = commit.phrase().questionProperty().get();
    commit.phraseNoted();
    StringBuilder words = new StringBuilder();
    for (String each : commit.phrase().questionProperty().get().split(" ")) {
      if (each.matches("[1-6](st|nd|rd|th)")) {
        words.append(phrase.split(" ")[each.charAt(0) - '1']).append(' ');
      }
    }
    assertThat(question).isNotNull();
    commit.phrase().typedProperty().set(words.toString().strip());
    commit.seal();
    assertThat(commit.stepProperty().get()).isEqualTo(CommitModel.Step.SEALED);
    commit.goOn();
  }

  @Test
  void whatWasCommittedIsReadAtOnceAndCopiedFromThere() throws Exception {
    Map<String, Object> fields = PlanText.read(Files.readString(SAMPLE)).fields();
    try (Desk desk = PlanDesk.open(folder, 1)) {
      Window.run(() -> readAndCopy(desk, fields));
    }
  }

  private void readAndCopy(Desk desk, Map<String, Object> fields) {
    PlanModel plan = Models.plan(desk, shell, Background.immediate(), 0);
    plan.form().fill(fields);
    plan.form().field("day").set("2026-11-14");
    commit(plan.commit());
    NotebookModel notebook = Models.notebook(desk, shell, Background.immediate());
    CommittedPlanModel committed =
        new CommittedPlanModel(
            desk.sessions(),
            desk.planning(),
            shell,
            desk.clock().getZone(),
            notebook::copyAsPlan,
            Background.immediate());
    Look look = new Look();
    NotebookRoomsView view =
        new NotebookRoomsView(
            look,
            new NotebookRoomsView.Models(
                notebook,
                PlanDesk.keeping(desk, folder.resolve("quarry.blindlap")),
                Optional.empty(),
                new NoiseModel(desk.history(), Background.immediate()),
                new SeriesModel(
                    desk.series(),
                    desk.seriesReports(),
                    new NextSession(desk.anotherDay(), shell, Background.immediate()),
                    Background.immediate()),
                new FieldModel(desk.field(), Background.immediate()),
                new ProfilesModel(desk.profiles(), desk.clock().getZone(), Background.immediate()),
                new OldDayModel(desk.plainDays(), desk.history(), Background.immediate()),
                committed),
            rooms,
            new NoDialogs());
    Scene scene = new Scene(view, 1366, 768);
    look.dress(scene);
    assertThat(rooms.roomProperty().get()).isEqualTo(Rooms.Room.NOTEBOOK);

    plan.commit().finishAndRead();
    assertThat(shell.pageProperty().get()).isEqualTo(Shell.Page.NOTEBOOK);
    assertThat(rooms.roomProperty().get()).isEqualTo(Rooms.Room.COMMITTED_PLAN);
    String read = SceneText.of(scene);
    assertThat(read)
        .contains(
            "Shock K against Shock L", desk.sessions().all().get(0).planFingerprint().grouped())
        .contains("Is Shock L quicker than Shock K on Quarry loop?", "Spring must sit in its seat")
        .contains("Shown to nobody before the order is open.", "at the end of the Review page")
        .doesNotContain("quicker by about a second", "No idea");
    for (Theme theme : Theme.values()) {
      look.themeProperty().set(theme);
      Window.picture(scene, "committed-plan-" + theme.name().toLowerCase(Locale.ROOT));
    }

    ((Button) scene.lookup("#copy-plan")).fire();
    assertThat(shell.pageProperty().get()).isEqualTo(Shell.Page.PLAN);
    assertThat(plan.form().field("day").get()).isEmpty();
    assertThat(plan.form().field("question").get()).isEqualTo(fields.get("question"));

    rooms.go(Rooms.Room.NOTEBOOK);
    shell.readPlan(desk.sessions().all().get(0).id());
    assertThat(rooms.roomProperty().get()).isEqualTo(Rooms.Room.COMMITTED_PLAN);
  }
}
