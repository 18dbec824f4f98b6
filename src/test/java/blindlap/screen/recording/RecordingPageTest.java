package blindlap.screen.recording;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.RamFolder;
import blindlap.desk.Settling;
import blindlap.desk.TestDay;
import blindlap.desk.TrackDay;
import blindlap.screen.NoDialogs;
import blindlap.screen.Reachable;
import blindlap.screen.SceneText;
import blindlap.screen.Window;
import blindlap.screen.part.Background;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import blindlap.screen.part.Theme;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.layout.StackPane;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The page on which a recording is settled: what it shows, asks and does, and what it never does.
 */
class RecordingPageTest {
  private static Look look;

  private @TempDir(factory = RamFolder.class) Path folder;
  private long nanos;

  @BeforeAll
  static void window() throws InterruptedException {
    Window.start();
    Window.run(
        () -> {
          Fonts.load();
          look = new Look();
        });
  }

  /** A day with a doubtful lap and a pass that fits none. */
  private static TrackDay day(TrackDay day, String order) {
    day.warmUp();
    for (int stint = 1; stint <= 8; stint++) {
      boolean real = stint == 1 || order.charAt(stint - 1) != order.charAt(stint - 2);
      day.aside(real ? 0.004 : 0.001, 700, real ? 1 : 11);
      day.ride(stint == 3 ? 60 : 0, 700, TrackDay.speed(stint)).entered(stint, 20);
      if (stint == 5) {
        day.climb(600).ride(0, 700, 4);
      }
    }
    return day;
  }

  private Path file(TrackDay day, String name) {
    try {
      return Files.write(folder.resolve(name), day.gpx());
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  private static RecordingModel model(TrackDay day) {
    RecordingModel model =
        new RecordingModel(day.day().desk().sessions(), day.recordings(), Background.immediate());
    model.open(day.day().id());
    return model;
  }

  private Scene scene(RecordingModel model, Path file) {
    NoDialogs dialogs =
        new NoDialogs() {
          @Override
          public Optional<Path> openFile(String title) {
            return Optional.of(file);
          }
        };
    StackPane root = new StackPane(new RecordingPage(look, model, dialogs, () -> {}, () -> nanos));
    Scene scene = new Scene(root, 1366 - 184, 768);
    look.dress(scene);
    return scene;
  }

  private static Button button(Scene scene, String words) {
    scene.getRoot().applyCss();
    scene.getRoot().layout();
    return scene.getRoot().lookupAll(".button").stream()
        .filter(node -> node instanceof Button b && b.getText().startsWith(words))
        .map(Button.class::cast)
        .findFirst()
        .orElseThrow(() -> new AssertionError("no button " + words));
  }

  private static List<Node> waiting(Scene scene) {
    return List.copyOf(scene.getRoot().lookupAll(".record-row.waits"));
  }

  @Test
  void aDayIsSettledAndTakenInByItsButtons() {
    try (TrackDay day = new TrackDay(folder, TrackDay.plan(), 3)) {
      day(day, day.day().order());
      Path file = file(day, "quarry.gpx");
      Window.run(
          () -> {
            RecordingModel model = model(day);
            Scene scene = scene(model, file);
            assertThat(SceneText.of(scene)).contains("Choose the recording of this day");
            button(scene, "Choose a recording").fire();
            Window.picture(scene, "recording-settling");
            assertThat(waiting(scene)).hasSize(2);
            assertThat(button(scene, "Use these times").isDisabled()).isTrue();
            assertThat(SceneText.of(scene)).contains("2 wait for you", "not through Gate post");
            button(scene, "Keep it").fire();
            nanos += 1_000_000_000L;
            assertThat(waiting(scene)).hasSize(1);
            Button change = button(scene, "Change");
            Node row = change.getParent().getParent();
            assertThat(change.getParent().getLayoutX())
                .as("beside what it changes, not below it")
                .isGreaterThan(row.getLayoutBounds().getWidth() / 3);
            change.fire();
            assertThat(waiting(scene)).hasSize(2);
            button(scene, "Leave it out").fire();
            button(scene, "No lap").fire();
            assertThat(waiting(scene)).isEmpty();
            Window.picture(scene, "recording-settled");
            button(scene, "Use these times").fire();
            assertThat(day.state().recorded().laps()).hasSize(7);
            assertThat(SceneText.of(scene))
                .contains("Taken in from quarry.gpx: the times of 7 laps");
            button(scene, "Choose a recording").fire();
            assertThat(SceneText.of(scene)).contains("was brought in before");
            button(scene, "Put this recording aside").fire();
            assertThat(model.settlingProperty().get()).isEmpty();
          });
    }
  }

  @Test
  void aPassThatIsALapIsChosenAndARefusalIsASentence() {
    try (TrackDay day = new TrackDay(folder, TrackDay.plan(), 3)) {
      day(day, day.day().order());
      Path file = file(day, "quarry.gpx");
      Window.run(
          () -> {
            RecordingModel model = model(day);
            Scene scene = scene(model, file);
            model.read(file);
            scene.getRoot().applyCss();
            scene.getRoot().layout();
            @SuppressWarnings("unchecked")
            ComboBox<Integer> which =
                (ComboBox<Integer>) waiting(scene).get(1).lookup(".combo-box");
            which.setValue(6);
            assertThat(model.troubleProperty().get()).isEmpty();
            model.answer(1, Settling.Answer.NO_LAP);
            assertThat(model.troubleProperty().get()).contains("fits its lap without doubt");
            model.read(folder.resolve("none.gpx"));
            assertThat(model.troubleProperty().get()).contains("There is no file");
            assertThat(model.settlingProperty().get()).isPresent();
            model.aside();
            day.close(true);
            model.read(file);
            assertThat(model.troubleProperty().get()).contains("review is closed");
          });
    }
  }

  /**
   * A key that bounces presses nothing that came under it, and the focus goes to what waits next.
   */
  @Test
  void theFocusGoesFromWhatWaitsToWhatWaitsNextAndThenToUse() {
    try (TrackDay day = new TrackDay(folder, TrackDay.plan(), 3)) {
      day(day, day.day().order());
      Path file = file(day, "quarry.gpx");
      Window.run(
          () -> {
            Scene scene = scene(model(day), file);
            javafx.stage.Stage stage = new javafx.stage.Stage();
            stage.setScene(scene);
            stage.show();
            button(scene, "Choose a recording").fire();
            Button keep = button(scene, "Keep it");
            keep.requestFocus();
            keep.fire();
            assertThat(scene.getFocusOwner()).isSameAs(button(scene, "No lap"));
            button(scene, "No lap").fire();
            assertThat(scene.getFocusOwner()).isSameAs(button(scene, "Use these times"));
            stage.close();
          });
    }
  }

  @Test
  void withoutATrailInThePlanOneIsChosenFromTheBook() {
    try (TrackDay day = new TrackDay(folder, TestDay.EIGHT, 3)) {
      day.clear();
      Path file = file(day, "quarry.gpx");
      Window.run(
          () -> {
            RecordingModel model = model(day);
            Scene scene = scene(model, file);
            assertThat(model.trails()).hasSize(1);
            model.trailProperty().set(model.trails().get(0));
            button(scene, "Choose a recording").fire();
            assertThat(SceneText.of(scene)).contains("exploratory", "their pass");
            assertThat(waiting(scene)).isEmpty();
          });
    }
  }

  @Test
  void nothingIsCutOrOutOfReachAtAnySizeOfTextInAnyTheme() {
    try (TrackDay day = new TrackDay(folder, TrackDay.plan(), 3)) {
      day(day, day.day().order());
      Path file = file(day, "quarry.gpx");
      Window.run(
          () -> {
            for (double scale : new double[] {1, 1.5, 2}) {
              for (Theme theme : Theme.values()) {
                look.scaleText(scale);
                look.themeProperty().set(theme);
                RecordingModel model = model(day);
                Scene scene = scene(model, file);
                model.read(file);
                Window.look(scene, "recording-" + theme + "-" + Math.round(100 * scale));
                assertThat(Reachable.wrong(scene)).as(theme + " " + scale).isEmpty();
              }
            }
            look.scaleText(1);
            look.themeProperty().set(Theme.PAPER);
          });
    }
  }

  /** Where a real swap was and where a dummy one was, the recorder saw; the page does not. */
  @Test
  void ofDaysThatDifferBetweenLapsAndInTheirOrderThePageIsTheSame() {
    List<String> seen = new ArrayList<>();
    TreeSet<String> recordings = new TreeSet<>();
    for (long seed = 1; seed <= 4; seed++) {
      try (TrackDay day = new TrackDay(folder, TrackDay.plan(), seed)) {
        day(day, day.day().order());
        recordings.add(new String(day.gpx()));
        Path file = file(day, "quarry-" + seed + ".gpx");
        StringBuilder text = new StringBuilder();
        Window.run(
            () -> {
              RecordingModel model = model(day);
              Scene scene = scene(model, file);
              text.append(SceneText.of(scene));
              button(scene, "Choose a recording").fire();
              text.append(SceneText.of(scene));
              button(scene, "Keep it").fire();
              button(scene, "No lap").fire();
              text.append(SceneText.of(scene));
              button(scene, "Use these times").fire();
              text.append(SceneText.of(scene).replaceAll("quarry-\\d", "quarry"));
            });
        seen.add(text.toString());
      }
    }
    assertThat(recordings).hasSizeGreaterThan(2);
    assertThat(seen).allMatch(text -> text.equals(seen.get(0)));
    assertThat(seen.get(0)).contains("the times of 8 laps");
  }
}
