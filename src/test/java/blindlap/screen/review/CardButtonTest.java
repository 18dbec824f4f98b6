package blindlap.screen.review;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.Desk;
import blindlap.desk.SampleDays;
import blindlap.desk.SeriesDays;
import blindlap.screen.Keyboard;
import blindlap.screen.Models;
import blindlap.screen.NoDialogs;
import blindlap.screen.Reachable;
import blindlap.screen.Window;
import blindlap.screen.part.Background;
import blindlap.screen.part.Dialogs;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import blindlap.screen.part.Theme;
import blindlap.session.SessionState;
import blindlap.session.day.SessionId;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.control.Labeled;
import javafx.scene.control.ScrollPane;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** The button that writes a card: who sees it, how it is reached, what it says. */
class CardButtonTest {
  private static final String BUTTON = "Write card";

  @TempDir Path folder;

  @BeforeAll
  static void start() throws InterruptedException {
    Window.start();
    Window.run(Fonts::load);
  }

  private static Dialogs into(Path folder) {
    return new NoDialogs() {
      @Override
      public Optional<Path> folder(String title) {
        assertThat(title).isEqualTo(BUTTON);
        return Optional.of(folder);
      }
    };
  }

  private static ReviewPage page(Desk desk, SessionId id, Look look, Dialogs dialogs) {
    ReviewModel model = Models.review(desk, Background.immediate());
    model.open(id);
    return new ReviewPage(look, model, dialogs);
  }

  private static Optional<Button> button(ReviewPage page) {
    return all(page, Button.class).stream().filter(b -> b.getText().equals(BUTTON)).findFirst();
  }

  private static List<String> names(Path folder) {
    try (var files = Files.list(folder)) {
      return files.map(f -> String.valueOf(f.getFileName())).sorted().toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String words(Path folder) {
    try {
      String name =
          names(folder).stream().filter(n -> n.endsWith(".txt")).findFirst().orElseThrow();
      return Files.readString(folder.resolve(name));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @ParameterizedTest
  @EnumSource
  void theKeyboardAloneReachesItInEveryThemeAndAtTwiceTheTextSize(Theme theme) {
    SampleDays.ride(
        "bearings-on-clay-steps",
        (desk, state) -> {
          AtomicReference<Stage> stage = new AtomicReference<>();
          AtomicReference<Scene> shown = new AtomicReference<>();
          Window.run(
              () -> {
                Look look = new Look();
                look.themeProperty().set(theme);
                look.textScaleProperty().set(2);
                Scene scene = new Scene(page(desk, state.id(), look, into(folder)), 1280, 800);
                look.dress(scene);
                shown.set(scene);
                stage.set(new Stage());
                stage.get().setScene(scene);
                stage.get().show();
                stage.get().requestFocus();
              });
          try {
            Keyboard keys = new Keyboard(shown.get());
            keys.goTo(BUTTON);
            keys.press(KeyCode.SPACE);
            Window.run(
                () -> {
                  Window.look(shown.get(), "card-button-" + theme.name().toLowerCase(Locale.ROOT));
                  assertThat(Reachable.wrong(shown.get())).isEmpty();
                });
          } finally {
            Window.run(stage.get()::close);
          }
        });
    assertThat(names(folder)).hasSize(5).allMatch(name -> name.startsWith("card-2026-"));
  }

  /** The report is an entry of its own, which a look at the notebook finds a moment later. */
  @Test
  void aReportThatIsWrittenLeavesThePageWhereItIsAndWhatWasSaidOfItsFiles() {
    SampleDays.ride(
        "bearings-on-clay-steps",
        (desk, state) -> {
          ReviewModel model = Models.review(desk, Background.immediate());
          model.open(state.id());
          Window.run(
              () -> {
                Look look = new Look();
                ReviewPage page = new ReviewPage(look, model, into(folder));
                Scene scene = new Scene(page, 1280, 800);
                look.dress(scene);
                Window.look(scene, "review-before-its-report");
                ScrollPane scroll = all(page, ScrollPane.class).get(0);
                scroll.setVvalue(1);
                int entries = desk.sessions().state(state.id()).orElseThrow().entries().size();
                model.report(folder);
                model.look();
                assertThat(desk.sessions().state(state.id()).orElseThrow().entries())
                    .hasSizeGreaterThan(entries);
                Window.look(scene, "review-after-its-report");
                assertThat(model.troubleProperty().get()).startsWith("Written to ");
                assertThat(scroll.getVvalue()).as("where its buttons are").isGreaterThan(0.9);
              });
        });
    assertThat(names(folder)).anyMatch(name -> name.endsWith(".pdf"));
  }

  @ParameterizedTest
  @CsvSource({
    "clicks-on-wet-steps, The blind was broken in stint 5. ",
    "grips-on-moor-path, 'Unblinded: the rider knew, or could know, what was fitted.'",
    "pads-told-on-slate-run, Another setup than drawn was on in trial 4.",
  })
  void whatSpeaksAgainstTheDayIsOnTheCardOfTheButtonToo(String sample, String mark) {
    SampleDays.ride(
        sample,
        (desk, state) ->
            Window.run(
                () -> {
                  button(page(desk, state.id(), new Look(), into(folder))).orElseThrow().fire();
                  assertThat(words(folder)).contains("\n" + mark).doesNotContain("Ridden blind");
                }));
  }

  @Test
  void aSealedSessionHasNoSuchButton() {
    SampleDays.sealed(
        "shocks-on-quarry-loop",
        (desk, state, phrase) ->
            Window.run(
                () ->
                    assertThat(button(page(desk, state.id(), new Look(), into(folder))))
                        .isEmpty()));
    assertThat(folder).isEmptyDirectory();
  }

  @Test
  void neitherHasASessionOfASeriesBeforeItsEnd(@TempDir Path notebook) {
    try (SeriesDays days = new SeriesDays(notebook, 1)) {
      SessionId first = days.ride(new SeriesDays.Day("R. Lind", "2026-10-03", 2, -1.2, 0.7, true));
      SessionId last = days.ride(new SeriesDays.Day("R. Lind", "2026-10-10", 2, -1.2, 0.7, true));
      days.unseal(first);
      assertThat(days.state(first).unsealed()).isTrue();
      Window.run(
          () -> assertThat(button(page(days.desk(), first, new Look(), into(folder)))).isEmpty());
      assertThat(folder).isEmptyDirectory();
      days.unseal(last);
      Window.run(
          () -> {
            button(page(days.desk(), first, new Look(), into(folder))).orElseThrow().fire();
            assertThat(words(folder)).contains("series");
          });
    }
  }

  /** The page says which files and where; a folder that cannot be had leaves nothing behind. */
  @Test
  void thePageSaysWhereTheFilesAreAndWhyThereAreNone() throws IOException {
    Path file = Files.writeString(folder.resolve("file"), "kept");
    SampleDays.ride(
        "bearings-on-clay-steps",
        (desk, state) -> {
          assertThat(said(desk, state, folder.resolve("cards")))
              .startsWith("Written to " + folder.resolve("cards") + ": card-2026-06-06-")
              .endsWith(".txt");
          assertThat(said(desk, state, file.resolve("cards")))
              .isEqualTo(
                  "The files cannot be written to "
                      + file.resolve("cards")
                      + "; nothing was left half-written there. Choose another folder.");
        });
    assertThat(names(folder)).containsExactly("cards", "file");
    assertThat(file).hasContent("kept");
  }

  private static String said(Desk desk, SessionState state, Path into) {
    return Window.call(
        () -> {
          ReviewPage page = page(desk, state.id(), new Look(), into(into));
          List<String> before = labels(page);
          button(page).orElseThrow().fire();
          List<String> after = labels(page).stream().filter(l -> !before.contains(l)).toList();
          assertThat(after).isNotEmpty();
          return after.get(after.size() - 1);
        });
  }

  private static List<String> labels(ReviewPage page) {
    return all(page, Labeled.class).stream().map(Labeled::getText).toList();
  }

  private static <T> List<T> all(Parent parent, Class<T> type) {
    List<T> found = new ArrayList<>();
    List<? extends Node> within =
        parent instanceof ScrollPane scroll
            ? List.of(scroll.getContent())
            : parent.getChildrenUnmodifiable();
    for (Node node : within) {
      if (type.isInstance(node)) {
        found.add(type.cast(node));
      }
      if (node instanceof Parent inner) {
        found.addAll(all(inner, type));
      }
    }
    return found;
  }
}
