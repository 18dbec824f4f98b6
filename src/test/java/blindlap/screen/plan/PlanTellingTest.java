package blindlap.screen.plan;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.Committing;
import blindlap.desk.Desk;
import blindlap.plan.PlanOptions;
import blindlap.plan.Plans;
import blindlap.plan.TellingRuns;
import blindlap.screen.Models;
import blindlap.screen.NoDialogs;
import blindlap.screen.Window;
import blindlap.screen.part.Background;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import blindlap.screen.part.Shell;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import javafx.scene.Scene;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The plan file of a telling run, opened on the Plan page, which has no fields for its trials. */
class PlanTellingTest {
  @TempDir Path folder;
  private Desk desk;
  private PlanModel model;

  @BeforeAll
  static void startWindowSystem() throws InterruptedException {
    Window.start();
    Window.run(Fonts::load);
  }

  @BeforeEach
  void openTheFile() throws IOException {
    desk = PlanDesk.open(folder, 1);
    Path file = folder.resolve("telling.yaml");
    Files.writeString(file, Plans.text(TellingRuns.text("task: triangle, trials: 15")));
    Window.run(
        () -> {
          Look look = new Look();
          model = Models.plan(desk, new Shell(), Background.immediate(), 0);
          look.dress(new Scene(new PlanPage(look, model, new NoDialogs()), 1280, 800));
          model.startFromFile(file);
        });
  }

  @AfterEach
  void close() {
    desk.close();
  }

  @Test
  void itIsJudgedAndAnsweredAsItStandsInTheFile() {
    assertThat(Window.call(() -> model.problems().toString())).isEqualTo("[]");
    PlanAnswerModel.Shown shown = Window.call(() -> model.answer().shownProperty().get());
    assertThat(shown.sentence().text())
        .isEqualTo("9 of 15 right would show that R. Lind can tell; guessing gives 5.");
    Window.run(() -> model.form().field("rider").set("M. Oss"));
    assertThat(Window.call(() -> model.answer().shownProperty().get().sentence().text()))
        .contains("M. Oss can tell");
    assertThat(Window.call(() -> model.planProperty().get().orElseThrow().stints())).isEqualTo(45);
  }

  @Test
  void itCanBeCommitted() {
    Committing.Begun begun = Window.call(() -> desk.planning().begin(model.fields()));

    assertThat(begun).isInstanceOf(Committing.Begun.Phrase.class);
  }

  @Test
  void thePageOffersTheKindsThatItHasFieldsFor() {
    assertThat(PlanOptions.of("session")).containsExactly("comparison", "noise run", "steps day");
  }
}
