package blindlap.screen.book;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.FieldSeason;
import blindlap.screen.Keyboard;
import blindlap.screen.Reachable;
import blindlap.screen.Window;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Theme;
import java.nio.file.Path;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.control.ScrollPane;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A room's bar with names as long as a line, in a low window with large text. */
class RoomBarTest {
  private static final double LOW = 768;

  @TempDir Path folder;
  private FieldSeason season;

  @BeforeAll
  static void startWindowSystem() throws InterruptedException {
    Window.start();
    Window.run(Fonts::load);
  }

  @BeforeEach
  void rideThreeDays() {
    season = new FieldSeason(folder);
    season.unseal(season.close(longNames(FieldSeason.plan("KL", "2026-08-29"))));
    season.unseal(season.close(longNames(FieldSeason.plan("LM", "2026-09-12"))));
    season.unseal(season.close(longNames(FieldSeason.plan("MP", "2026-09-26"))));
  }

  @AfterEach
  void close() {
    season.close();
  }

  private static String longNames(String plan) {
    return plan.replace("R. Lind", "Rosalind Lindenhofer-Achleitner of the Northern Quarries")
        .replace("Quarry loop", "Quarry loop from the upper hut down to the second bridge")
        .replace("name: Shock", "name: Rebuilt and revalved prototype damper Shock");
  }

  private Book room(double scale) {
    return Window.call(() -> new Book(season.desk(), folder, Theme.PAPER, scale, 1280, (int) LOW));
  }

  private static ScrollPane page(Book book) {
    return Window.call(() -> (ScrollPane) book.scene.getRoot().lookup("PageGrid"));
  }

  /** The bar goes with the page: all but the frame's edges is the page's. */
  private static boolean goesWithThePage(Book book) {
    return Window.call(
        () -> {
          ScrollPane page = (ScrollPane) book.scene.getRoot().lookup("PageGrid");
          return page.getContent().lookup(".room-bar") != null;
        });
  }

  private static boolean inView(Book book, Node node) {
    return Window.call(
        () -> {
          Bounds at = node.localToScene(node.getBoundsInLocal());
          return at.getMinY() >= 0 && at.getMaxY() <= LOW;
        });
  }

  @Test
  void theBarGoesWithThePageSoThatKeysAloneReadAllOfIt() {
    Book book = room(2);
    Stage stage = Window.call(book::window);
    Keyboard keys = new Keyboard(book.scene);
    try {
      keys.choose("The field");
      ScrollPane page = page(book);
      assertThat(keys.here()).contains("Back to the notebook");
      assertThat(inView(book, Window.call(book.scene::getFocusOwner))).isTrue();
      assertThat(goesWithThePage(book)).isTrue();
      assertThat(Window.call(() -> page.getViewportBounds().getHeight())).isGreaterThan(LOW - 20);
      Window.run(() -> Window.look(book.scene, "room-bar-200"));
      Window.run(() -> assertThat(Reachable.wrong(book.scene)).isEmpty());
      keys.press(KeyCode.PAGE_DOWN);
      Node answer = Window.call(() -> book.scene.getRoot().lookup(".answer"));
      assertThat(Window.call(() -> answer.localToScene(answer.getBoundsInLocal()).getMinY()))
          .isBetween(0.0, LOW / 2);
      Window.run(() -> Window.look(book.scene, "room-bar-200-down"));
      keys.goTo("Against");
      assertThat(inView(book, Window.call(book.scene::getFocusOwner))).isTrue();
      keys.press(KeyCode.DOWN);
      assertThat(book.field.viewProperty().get().question()).contains("damper Shock M");
      assertThat(keys.here()).contains("Against");
      assertThat(inView(book, Window.call(book.scene::getFocusOwner))).isTrue();
      keys.press(KeyCode.ESCAPE);
      assertThat(book.rooms.roomProperty().get()).isEqualTo(Rooms.Room.NOTEBOOK);
    } finally {
      Window.run(stage::close);
    }
  }

  /**
   * At the usual text size it stays above; on the way there and back the focus stays where it is.
   */
  @Test
  void whatHasTheFocusInTheBarKeepsItWhileTextGrowsAndShrinks() {
    Book book = room(1);
    Stage stage = Window.call(book::window);
    Keyboard keys = new Keyboard(book.scene);
    try {
      keys.choose("The field");
      assertThat(goesWithThePage(book)).isFalse();
      keys.goTo("Against");
      for (int step = 0; step < 10; step++) {
        keys.press(KeyCode.CONTROL, KeyCode.EQUALS);
      }
      assertThat(goesWithThePage(book)).isTrue();
      assertThat(keys.here()).contains("Against");
      keys.press(KeyCode.CONTROL, KeyCode.DIGIT0);
      keys.press(KeyCode.SHIFT);
      assertThat(goesWithThePage(book)).isFalse();
      assertThat(keys.here()).contains("Against");
      keys.press(KeyCode.TAB);
      assertThat(keys.here()).contains("Write the report");
    } finally {
      Window.run(stage::close);
    }
  }

  /** The notebook's own page is laid out anew for every look; the focus stays on its door. */
  @Test
  void aDoorKeepsTheFocusWhileThemesChange() {
    Book book = room(2);
    Stage stage = Window.call(book::window);
    Keyboard keys = new Keyboard(book.scene);
    try {
      keys.goTo("Profiles");
      keys.press(KeyCode.CONTROL, KeyCode.T);
      keys.press(KeyCode.SHIFT);
      assertThat(keys.here()).contains("Profiles");
      assertThat(inView(book, Window.call(book.scene::getFocusOwner))).isTrue();
    } finally {
      Window.run(stage::close);
    }
  }
}
