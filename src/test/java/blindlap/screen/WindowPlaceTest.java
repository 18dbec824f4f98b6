package blindlap.screen;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.RememberedWindow;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import javafx.geometry.Rectangle2D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class WindowPlaceTest {
  private static final Rectangle2D LARGE = new Rectangle2D(0, 0, 1920, 1040);
  private static final Rectangle2D SMALL = new Rectangle2D(0, 0, 1366, 740);

  @TempDir Path folder;

  private static RememberedWindow.Left at(double x, double y, double width, double height) {
    return new RememberedWindow.Left(x, y, width, height, false, "PAPER", 1);
  }

  @Test
  void theFirstTimeItIsInTheMiddleAndNoLargerThanThePagesNeedOrTheScreenHas() {
    assertThat(WindowPlace.fit(Optional.empty(), LARGE, List.of(LARGE)))
        .isEqualTo(new Rectangle2D(280, 90, 1360, 860));
    assertThat(WindowPlace.fit(Optional.empty(), SMALL, List.of(SMALL)))
        .isEqualTo(new Rectangle2D(3, 0, 1360, 740));
  }

  @Test
  void aPlaceOnAScreenThatIsStillThereIsTakenAgain() {
    Rectangle2D beside = new Rectangle2D(1920, 0, 1280, 1024);
    assertThat(
            WindowPlace.fit(Optional.of(at(2000, 100, 1000, 700)), LARGE, List.of(LARGE, beside)))
        .isEqualTo(new Rectangle2D(2000, 100, 1000, 700));
  }

  @Test
  void aPlaceOutsideThePresentScreensFallsBackWithTheSizeThatFits() {
    for (RememberedWindow.Left gone :
        List.of(at(2000, 100, 1800, 900), at(100, -300, 1800, 900), at(-1780, 50, 1800, 900))) {
      Rectangle2D place = WindowPlace.fit(Optional.of(gone), SMALL, List.of(SMALL));
      assertThat(SMALL.contains(place)).as("%s", gone).isTrue();
      assertThat(place.getWidth()).isEqualTo(1366);
    }
  }

  @Test
  void whatIsRememberedIsReadAgainAndRubbishIsAsTheFirstTime() throws IOException {
    Path file = folder.resolve("data/window.properties");
    RememberedWindow window = new RememberedWindow(file);
    assertThat(window.left()).isEmpty();
    RememberedWindow.Left left = new RememberedWindow.Left(12, 34, 1000, 700, true, "DARK", 1.5);
    window.keep(left);
    assertThat(window.left()).contains(left);
    for (String rubbish : List.of("", "x=here", "x=NaN\ny=1\nwidth=1\nheight=1\ntext=1", "\\u12")) {
      Files.writeString(file, rubbish);
      assertThat(window.left()).as(rubbish).isEmpty();
    }
  }
}
