package blindlap.screen;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.RememberedWindow;
import blindlap.screen.part.Look;
import blindlap.screen.part.Theme;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import javafx.geometry.Rectangle2D;
import javafx.scene.Scene;
import javafx.scene.layout.Pane;
import javafx.stage.Screen;
import javafx.stage.Stage;
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

  /** A window of its own, as the program opens it. */
  private static Stage open(RememberedWindow remembered, Look look) {
    return Window.call(
        () -> {
          Stage stage = new Stage();
          WindowPlace.of(remembered, stage, look, Runnable::run);
          stage.setScene(new Scene(new Pane()));
          stage.show();
          return stage;
        });
  }

  private static Rectangle2D shown(Stage stage) {
    return Window.call(
        () -> new Rectangle2D(stage.getX(), stage.getY(), stage.getWidth(), stage.getHeight()));
  }

  @Test
  void aWindowThatClosesIsFoundAgainWhereAndAsItWas() throws Exception {
    Window.start();
    Path file = folder.resolve("window.properties");
    Rectangle2D screen = Screen.getPrimary().getVisualBounds();
    Stage first = open(new RememberedWindow(file), new Look());
    assertThat(shown(first).getWidth()).isEqualTo(Math.min(1360, screen.getWidth()));
    assertThat(shown(first).getHeight()).isEqualTo(Math.min(860, screen.getHeight()));
    assertThat(file).doesNotExist();
    Window.run(first::close);
    Files.delete(file);

    Look look = new Look();
    Stage second = open(new RememberedWindow(file), look);
    Window.run(
        () -> {
          look.themeProperty().set(Theme.SUNLIGHT);
          look.scaleText(1.5);
          second.setX(screen.getMinX() + 31);
          second.setY(screen.getMinY() + 17);
          second.setWidth(940);
          second.setHeight(650);
        });
    Window.run(() -> {});
    Window.run(second::close);
    assertThat(Files.readString(file)).contains("width=940.0", "height=650.0", "theme=SUNLIGHT");

    Look again = new Look();
    Stage third = open(new RememberedWindow(file), again);
    Rectangle2D place = new Rectangle2D(screen.getMinX() + 31, screen.getMinY() + 17, 940, 650);
    assertThat(shown(third)).isEqualTo(place);
    assertThat(again.themeProperty().get()).isEqualTo(Theme.SUNLIGHT);
    assertThat(again.textScale()).isEqualTo(1.5);
    Window.run(third::close);
  }

  @Test
  void aWindowThatWasLeftOnAScreenThatIsGoneOpensOnOneThatIsThere() throws Exception {
    Window.start();
    Path file = folder.resolve("window.properties");
    RememberedWindow remembered = new RememberedWindow(file);
    remembered.keep(at(30_000, 20_000, 950, 640));
    Stage stage = open(remembered, new Look());
    assertThat(Screen.getPrimary().getVisualBounds().contains(shown(stage))).isTrue();
    assertThat(shown(stage).getWidth()).isEqualTo(950);
    Window.run(stage::close);
    assertThat(remembered.left().orElseThrow().x()).isLessThan(30_000);
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
