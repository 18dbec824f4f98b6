package blindlap.screen.manual;

import blindlap.RamFolder;
import blindlap.screen.Window;
import blindlap.screen.part.Fonts;
import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The pictures of the manual against the pages they were taken of: whatever can be read on one must
 * stand on its page today. With {@code -Dmanual.pictures=take} they are taken anew.
 */
class ManualPicturesTest {
  private @TempDir(factory = RamFolder.class) Path folder;
  private final Album album = new Album();

  @BeforeAll
  static void window() throws InterruptedException {
    Window.start();
    Window.run(Fonts::load);
  }

  @Test
  void planAndCommit() {
    PlanPages.take(folder, album);
  }

  @Test
  void theDayInHand() {
    DayPages.inHand(folder, album);
  }

  @Test
  void theRecordingOfTheDay() {
    DayPages.recording(folder, album);
  }

  @Test
  void reviewAndFinding() {
    ReviewPages.take(folder, album);
  }

  @Test
  void notebookAndItsRooms() throws IOException {
    BookPages.season(folder, album);
  }

  @Test
  void series() {
    BookPages.series(folder, album);
  }

  @Test
  void findingsOfOtherDays() {
    SamplePages.findings(folder, album);
  }

  @Test
  void plansOfOtherKinds() {
    SamplePages.plans(folder, album);
  }

  @Test
  void aTrialIsAskedAbout() {
    SamplePages.trial(folder, album);
  }

  @Test
  void aRiderAlone() {
    SamplePages.alone(folder, album);
  }
}
