package blindlap.screen.book;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.Desk;
import blindlap.screen.Models;
import blindlap.screen.ShellView;
import blindlap.screen.Window;
import blindlap.screen.Within;
import blindlap.screen.part.Background;
import blindlap.screen.part.Dialogs;
import blindlap.screen.part.Look;
import blindlap.screen.part.Shell;
import blindlap.screen.part.Theme;
import blindlap.screen.plan.PlanDesk;
import java.awt.image.BufferedImage;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.Scene;
import javafx.stage.Stage;

/** The page with its rooms in a window's frame. */
final class Book {
  final NoiseModel noise;
  final SeriesModel series;
  final FieldModel field;
  final ProfilesModel profiles;
  final OldDayModel oldDay;
  final Rooms rooms = new Rooms();
  private final Look look = new Look();
  private final ShellView view;
  final Scene scene;
  private final NotebookRoomsView page;

  Book(Desk desk, Path folder, Theme theme, double scale, int width, int height) {
    look.themeProperty().set(theme);
    look.textScaleProperty().set(scale);
    Shell shell = new Shell();
    NotebookModel notebook = Models.notebook(desk, shell, Background.immediate());
    notebook.refresh();
    noise = new NoiseModel(desk.history(), Background.immediate());
    series =
        new SeriesModel(
            desk.series(),
            desk.seriesReports(),
            new NextSession(desk.anotherDay(), shell, Background.immediate()),
            Background.immediate());
    field = new FieldModel(desk.field(), Background.immediate());
    profiles = new ProfilesModel(desk.profiles(), desk.clock().getZone(), Background.immediate());
    oldDay = new OldDayModel(desk.plainDays(), desk.history(), Background.immediate());
    page =
        new NotebookRoomsView(
            look,
            new NotebookRoomsView.Models(
                notebook,
                PlanDesk.keeping(desk, folder.resolve("quarry.blindlap")),
                Optional.empty(),
                noise,
                series,
                field,
                profiles,
                oldDay,
                new CommittedPlanModel(
                    desk.sessions(),
                    desk.planning(),
                    shell,
                    desk.clock().getZone(),
                    notebook::copyAsPlan,
                    Background.immediate())),
            rooms,
            new OneFolder(folder));
    view =
        new ShellView(
            look, shell, Map.of(Shell.Page.NOTEBOOK, () -> page), List.of("quarry.blindlap"));
    scene = new Scene(view, width, height);
    look.dress(scene);
  }

  /** The same page in a window of another size, with other looks. */
  Node dress(Shot shot) {
    look.themeProperty().set(shot.theme());
    look.textScaleProperty().set(shot.scale());
    view.resize(shot.width(), shot.height());
    // What folds by its width is laid out again.
    for (int pulse = 0; pulse < 3; pulse++) {
      view.applyCss();
      view.layout();
    }
    return page;
  }

  Stage window() {
    Stage stage = new Stage();
    stage.setScene(scene);
    stage.show();
    stage.requestFocus();
    return stage;
  }

  /** A look of the page: theme, text size, and the window's sides. */
  record Shot(Theme theme, double scale, int width, int height) {}

  /** Draws the page, which must lie within its window with no word cut, and its answer in ink. */
  void take(Shot shot, String name) {
    Window.run(
        () -> {
          Node shown = dress(shot);
          assertThat(Within.of((Parent) shown, name).wrong()).isEmpty();
          BufferedImage drawn = Window.picture(view, name);
          assertThat(drawn.getWidth()).isEqualTo(shot.width());
          assertThat(drawn.getHeight()).isEqualTo(shot.height());
          assertThat(inked(drawn, shown.lookup(".answer"))).as(name).isGreaterThan(0.02);
        });
  }

  /** Which share of the picture where this stands is not as its upper left corner is. */
  private static double inked(BufferedImage drawn, Node node) {
    Bounds at = node.localToScene(node.getLayoutBounds());
    int left = (int) Math.max(0, at.getMinX());
    int top = (int) Math.max(0, at.getMinY());
    int right = (int) Math.min(drawn.getWidth(), at.getMaxX());
    int bottom = (int) Math.min(drawn.getHeight(), at.getMaxY());
    int ground = drawn.getRGB(left, top);
    long inked = 0;
    for (int y = top; y < bottom; y++) {
      for (int x = left; x < right; x++) {
        inked += drawn.getRGB(x, y) == ground ? 0 : 1;
      }
    }
    return inked / (double) ((right - left) * (bottom - top));
  }

  private record OneFolder(Path folder) implements Dialogs {
    @Override
    public Optional<Path> openFile(String title) {
      return Optional.of(folder.resolve("days.csv"));
    }

    @Override
    public Optional<Path> saveFile(String title, String name) {
      return Optional.empty();
    }

    @Override
    public Optional<Path> folder(String title) {
      return Optional.of(folder);
    }
  }
}
