package blindlap.screen.review;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.RamFolder;
import blindlap.desk.LapFiles;
import blindlap.desk.TestDay;
import blindlap.screen.Models;
import blindlap.screen.NoDialogs;
import blindlap.screen.Window;
import blindlap.screen.part.Background;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import blindlap.session.DayCommands;
import blindlap.session.day.LapId;
import blindlap.session.day.VoidEvent;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.layout.Pane;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The blind review looks every second what others wrote; what it wrote itself it shows already. */
class OwnEntriesTest {
  private @TempDir(factory = RamFolder.class) Path folder;

  @BeforeAll
  static void window() throws InterruptedException {
    Window.start();
    Window.run(Fonts::load);
  }

  private static byte[] laps() {
    StringBuilder csv = new StringBuilder("lap;lap time\n");
    for (int lap = 1; lap <= 8; lap++) {
      csv.append(lap).append(";9").append(lap).append(".4\n");
    }
    return csv.toString().getBytes(StandardCharsets.UTF_8);
  }

  private static Button button(Scene scene, String words) {
    scene.getRoot().applyCss();
    scene.getRoot().layout();
    return scene.getRoot().lookupAll(".button").stream()
        .filter(node -> node instanceof Button b && b.getText().equals(words))
        .map(Button.class::cast)
        .findFirst()
        .orElseThrow(() -> new AssertionError("there is no button " + words));
  }

  @Test
  void aQuestionIsNotTakenAwayByThePagesOwnEntryButByAnothersItIs() {
    try (TestDay day = new TestDay(folder, TestDay.EIGHT, 1)) {
      new LapFiles(day.desk().sessions()).record(day.state(), laps());
      day.desk().riderDays().closeDay(day.id());
      Window.run(
          () -> {
            Look look = new Look();
            ReviewModel model = Models.review(day.desk(), Background.immediate());
            model.open(day.id());
            model.look();
            Scene scene = new Scene(new ReviewPage(look, model, new NoDialogs()), 1100, 2600);
            look.dress(scene);
            model.blind().voidLap(new LapId(5, 1), "traffic");
            assertThat(day.state().lap(new LapId(5, 1)).orElseThrow().voided()).isPresent();
            button(scene, "Close the review").fire();
            Button asked = button(scene, "Not yet");

            model.look();

            assertThat(asked.getScene()).as("the question stands").isSameAs(scene);

            day.desk()
                .sessions()
                .act(
                    day.id(),
                    now ->
                        new DayCommands(now)
                            .voidLap(new LapId(6, 1), VoidEvent.TRAFFIC.text(), ""));
            model.look();

            assertThat(asked.getScene()).as("the page shows what another wrote").isNull();
            scene.setRoot(new Pane());
          });
    }
  }
}
