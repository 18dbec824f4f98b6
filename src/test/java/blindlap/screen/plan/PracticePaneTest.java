package blindlap.screen.plan;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.SetClock;
import blindlap.screen.SceneText;
import blindlap.screen.Window;
import blindlap.screen.part.TypedForm;
import blindlap.wording.day.Words;
import java.time.Instant;
import javafx.scene.Scene;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

class PracticePaneTest {
  @BeforeAll
  static void startWindowSystem() throws InterruptedException {
    Window.start();
  }

  @Test
  void whereSomeoneIsToldToSwapTheMakersManualComesFirst() {
    String said =
        Window.call(
            () ->
                SceneText.of(
                    new Scene(
                        new PracticePane(
                            new PracticeModel(
                                new TypedForm(() -> {}),
                                new SetClock(Instant.parse("2026-11-13T14:00:00Z")))))));
    assertThat(said).contains("take off", Words.of("cautions").say("short"));
  }
}
