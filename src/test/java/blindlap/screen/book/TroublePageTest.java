package blindlap.screen.book;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.SafeKeeping;
import blindlap.desk.TestDay;
import blindlap.screen.NoDialogs;
import blindlap.screen.Window;
import blindlap.screen.part.Background;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import blindlap.screen.part.Theme;
import blindlap.session.NotebookException;
import blindlap.session.day.LapId;
import blindlap.store.SqliteFiles;
import blindlap.store.SqliteNotebook;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the window shows if its notebook cannot be opened. */
class TroublePageTest {
  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2026-11-15T08:00:00Z"), ZoneOffset.UTC);

  @TempDir Path folder;

  @BeforeAll
  static void startWindowSystem() throws InterruptedException {
    Window.start();
    Window.run(Fonts::load);
  }

  private Path damaged() throws IOException {
    try (TestDay day = new TestDay(folder, TestDay.EIGHT, 1)) {
      for (int i = 0; i < 160; i++) {
        day.desk().riderDays().note(day.id(), new LapId(1 + i % 8, 1), "note " + i);
      }
    }
    Path file = folder.resolve("day-1.blindlap");
    byte[] whole = Files.readAllBytes(file);
    Files.write(file, Arrays.copyOf(whole, whole.length / 2 / 4096 * 4096));
    return file;
  }

  @Test
  void aDamagedNotebookIsSavedAndOpenedByButtonsAlone() throws IOException {
    Path file = damaged();
    SafeKeeping keeping = new SafeKeeping(new SqliteFiles(CLOCK, () -> new byte[16]), file);
    AtomicReference<Path> opened = new AtomicReference<>();
    NotebookException why =
        org.assertj.core.api.Assertions.catchThrowableOfType(
            NotebookException.class,
            () -> SqliteNotebook.open(file, new byte[16], CLOCK.instant()).close());
    Window.run(
        () -> {
          TroubleModel model =
              TroubleModel.of(keeping, why, Background.immediate(), opened::set).orElseThrow();
          for (Theme theme : Theme.values()) {
            Look look = new Look();
            look.themeProperty().set(theme);
            Scene scene =
                new Scene(new TroublePage(look, model, new Suggested(), () -> {}), 1280, 800);
            look.dress(scene);
            Window.picture(scene, "trouble-" + theme.name().toLowerCase(java.util.Locale.ROOT));
          }
          Look large = new Look();
          large.textScaleProperty().set(2);
          TroublePage page = new TroublePage(large, model, new Suggested(), () -> {});
          Scene scene = new Scene(page, 1280, 800);
          large.dress(scene);
          Window.picture(scene, "trouble-200");
          assertThat(shown(page))
              .containsExactly("Save what still verifies …", "Try again", "Close");
          press(page, "Save what still verifies …");
          assertThat(shown(page)).containsExactly("Open the new notebook", "Try again", "Close");
          Window.picture(scene, "trouble-saved-200");
          press(page, "Open the new notebook");
        });
    assertThat(opened.get()).isEqualTo(folder.resolve("day-1-saved.blindlap")).exists();
  }

  private static List<Button> buttons(TroublePage page) {
    page.applyCss();
    page.layout();
    return page.lookupAll(".button").stream().map(Button.class::cast).toList();
  }

  private static List<String> shown(TroublePage page) {
    return buttons(page).stream().filter(Button::isVisible).map(Button::getText).toList();
  }

  private static void press(TroublePage page, String words) {
    buttons(page).stream()
        .filter(button -> button.getText().equals(words))
        .findFirst()
        .orElseThrow()
        .fire();
  }

  /** Takes what is suggested. */
  private static final class Suggested extends NoDialogs {
    @Override
    public Optional<Path> saveFile(String title, Path suggested) {
      return Optional.of(suggested);
    }
  }

  @Test
  void aNotebookOfALaterProgramIsToldInOneSentenceAndNothingIsSavedOrChanged() throws Exception {
    Path file = folder.resolve("day-2.blindlap");
    try (TestDay day = new TestDay(folder, TestDay.EIGHT, 2)) {
      assertThat(day.state().plan().stints()).isEqualTo(8);
    }
    try (Connection notebook = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement statement = notebook.createStatement()) {
      statement.execute("PRAGMA user_version = 99");
    }
    byte[] before = Files.readAllBytes(file);
    NotebookException why =
        org.assertj.core.api.Assertions.catchThrowableOfType(
            NotebookException.class,
            () -> SqliteNotebook.open(file, new byte[16], CLOCK.instant()).close());
    SafeKeeping keeping = new SafeKeeping(new SqliteFiles(CLOCK, () -> new byte[16]), file);
    Window.run(
        () -> {
          TroubleModel model =
              TroubleModel.of(keeping, why, Background.immediate(), again -> {}).orElseThrow();
          TroublePage page = new TroublePage(new Look(), model, new Suggested(), () -> {});
          assertThat(new Scene(page, 900, 600).getRoot()).isSameAs(page);
          assertThat(model.sentenceProperty().get()).contains("99").endsWith(".");
          assertThat(model.damagedProperty().get()).isFalse();
          assertThat(shown(page)).containsExactly("Try again", "Close");
        });
    assertThat(Files.readAllBytes(file)).isEqualTo(before);
  }
}
