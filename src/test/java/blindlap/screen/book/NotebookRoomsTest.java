package blindlap.screen.book;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.Desk;
import blindlap.desk.SeriesDays;
import blindlap.screen.Keyboard;
import blindlap.screen.Models;
import blindlap.screen.SceneText;
import blindlap.screen.Window;
import blindlap.screen.part.Background;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Shell;
import blindlap.screen.part.Theme;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The rooms behind the Notebook page, entered and used with keys alone, and photographed. */
class NotebookRoomsTest {
  @TempDir Path folder;

  @BeforeAll
  static void startWindowSystem() throws InterruptedException {
    Window.start();
    Window.run(Fonts::load);
  }

  /** Days of a rider who learns a trail, as a logger writes them; one lap of the last is wrong. */
  private Path days(boolean mistake) throws Exception {
    Random random = new Random(5);
    StringBuilder csv = new StringBuilder("When;Lap;Setup;Air;Zeit;void\n");
    String[] days = {"10.05.2025", "21.06.2025", "02.08.2025", "11.10.2025"};
    for (int i = 0; i < days.length; i++) {
      for (int lap = 1; lap <= 14; lap++) {
        String time =
            String.format(
                Locale.GERMANY, "%.2f", 96 - 0.05 * lap + (1.3 - 0.28 * i) * random.nextGaussian());
        csv.append(days[i]).append(';').append(lap).append(';').append(lap % 2 == 0 ? "K" : "L");
        csv.append(";21 °C;");
        csv.append(mistake && i == 3 && lap == 5 ? "1:3x,2" : time);
        csv.append(';').append(i == 1 && lap == 3 ? "ja" : "").append('\n');
      }
    }
    return Files.write(folder.resolve("days.csv"), csv.toString().getBytes(StandardCharsets.UTF_8));
  }

  /** A room is entered once; its window is then drawn in both widths, at 100 and 200 % text. */
  private static void photograph(
      Desk desk, Path folder, Theme other, Rooms.Room room, String name) {
    Book book = Window.call(() -> open(desk, folder, room));
    book.take(new Book.Shot(Theme.PAPER, 1, 1366, 768), name + "-paper");
    book.take(
        new Book.Shot(other, 1, 900, 768), name + "-" + other.name().toLowerCase(Locale.ROOT));
    book.take(new Book.Shot(Theme.PAPER, 1, 1366, 2200), name + "-whole");
    book.take(new Book.Shot(Theme.PAPER, 2, 1366, 4400), name + "-200");
    book.take(new Book.Shot(Theme.PAPER, 2, 900, 768), name + "-900-200");
  }

  private static Book open(Desk desk, Path folder, Rooms.Room room) {
    Book book = new Book(desk, folder, Theme.PAPER, 1, 1280, 800);
    book.rooms.go(room);
    if (room == Rooms.Room.OLD_DAY) {
      book.oldDay.open(folder.resolve("days.csv"));
      book.oldDay.form().field("trail").set("Quarry loop");
      book.oldDay.form().field("rider").set("R. Lind");
      book.oldDay.form().field("file").set("days.csv");
    }
    return book;
  }

  @Test
  void riderNoiseIsPhotographed() throws Exception {
    days(false);
    try (SeriesDays days = new SeriesDays(folder, 1)) {
      days.oneRider();
      bring(days.desk());
      photograph(days.desk(), folder, Theme.SUNLIGHT, Rooms.Room.NOISE, "noise");
      Book book = Window.call(() -> open(days.desk(), folder, Rooms.Room.NOTEBOOK));
      book.take(new Book.Shot(Theme.PAPER, 1, 1366, 768), "notebook-doors");
    }
  }

  private void bring(Desk desk) {
    OldDayModel model = new OldDayModel(desk.plainDays(), desk.history(), Background.immediate());
    model.open(folder.resolve("days.csv"));
    model.form().field("rider").set("R. Lind");
    model.form().field("trail").set("Quarry loop");
    model.take();
    assertThat(model.noticeProperty().get()).startsWith("Brought in: 4 days with 56 laps.");
  }

  @Test
  void seriesArePhotographedSealedAndOpen() {
    try (SeriesDays days = new SeriesDays(folder, 1)) {
      days.ride(new SeriesDays.Day("R. Lind", "2026-10-03", 3, -1.2, 0.7, true));
      days.ride(new SeriesDays.Day("R. Lind", "2026-10-10", 3, -1.2, 0.7, true));
      days.commit(new SeriesDays.Day("R. Lind", "2026-10-17", 3, -1.2, 0.7, true));
      photograph(days.desk(), folder, Theme.DARK, Rooms.Room.SERIES, "series-sealed");
    }
  }

  @Test
  void aSeriesOfOneRiderAndOneOfSeveralArePhotographed() throws Exception {
    Path other = Files.createDirectories(folder.resolve("riders"));
    try (SeriesDays one = new SeriesDays(folder, 1);
        SeriesDays riders = new SeriesDays(other, 2)) {
      one.oneRider();
      photograph(one.desk(), folder, Theme.DARK, Rooms.Room.SERIES, "series-one");
      riders.riders();
      photograph(riders.desk(), other, Theme.SUNLIGHT, Rooms.Room.SERIES, "series-riders");
    }
  }

  @Test
  void profilesArePhotographed() {
    try (SeriesDays days = new SeriesDays(folder, 1)) {
      days.desk().profiles().keep("Fast and steep: lap time");
      days.desk().profiles().keep("Fast and steep: lap time, harshness at the hands");
      days.desk().profiles().keep("Long days: climbing time, mass");
      photograph(days.desk(), folder, Theme.DARK, Rooms.Room.PROFILES, "profiles");
      Book book = Window.call(() -> open(days.desk(), folder, Rooms.Room.PROFILES));
      book.take(new Book.Shot(Theme.SUNLIGHT, 1, 1366, 768), "profiles-sunlight");
    }
  }

  @Test
  void aProfileIsMadeRefusedChangedAndRemovedWithKeysAlone() {
    try (SeriesDays days = new SeriesDays(folder, 1)) {
      days.commit(new SeriesDays.Day("R. Lind", "2026-10-03", 0, 0, 1, false));
      withKeys(
          days.desk(),
          (book, keys) -> {
            keys.choose("Profiles");
            keys.goTo("Kind of rider");
            keys.type("Fast and steep");
            keys.press(KeyCode.ENTER);
            assertThat(book.profiles.saidProperty().get())
                .isEqualTo(
                    "\"Fast and steep\" names no measure. Nothing was kept; name at least one, or"
                        + " remove the profile.");
            keys.goTo("Measures that count");
            keys.type("lap time");
            keys.strike(KeyCode.COMMA);
            keys.type(" mass");
            keys.press(KeyCode.ENTER);
            assertThat(book.profiles.saidProperty().get()).contains("is kept as version 1");
            assertThat(book.profiles.nameProperty().get()).isEmpty();
            keys.choose("Change Fast and steep");
            keys.goTo("Measures that count");
            keys.press(KeyCode.END);
            keys.strike(KeyCode.SEMICOLON);
            keys.type(" price");
            keys.choose("Keep");
            assertThat(book.profiles.keptProperty().get().profiles())
                .singleElement()
                .satisfies(row -> assertThat(row.measures()).isEqualTo("lap time; mass; price"));
            keys.choose("Remove Fast and steep");
            assertThat(book.profiles.keptProperty().get().profiles()).isEmpty();
            assertThat(book.profiles.keptProperty().get().earlier()).hasSize(3);
            assertThat(keys.here()).contains("Kind of rider");
          });
      assertThat(days.desk().profiles().profiles()).isEmpty();
      assertThat(days.desk().profiles().versions("fast and steep")).hasSize(3);
    }
  }

  @Test
  void bringingInOldDaysIsPhotographed() throws Exception {
    days(true);
    try (SeriesDays days = new SeriesDays(folder, 1)) {
      photograph(days.desk(), folder, Theme.DARK, Rooms.Room.OLD_DAY, "old-days");
    }
  }

  @Test
  void everyRoomIsEnteredAndLeftWithKeysAlone() {
    try (SeriesDays days = new SeriesDays(folder, 1)) {
      days.oneRider();
      Book book = Window.call(() -> new Book(days.desk(), folder, Theme.PAPER, 1, 1280, 800));
      Stage stage = Window.call(book::window);
      Keyboard keys = new Keyboard(book.scene);
      for (Rooms.Room room : Rooms.Room.values()) {
        if (room == Rooms.Room.COMMITTED_PLAN) {
          keys.choose("Read the plan");
          assertThat(book.rooms.roomProperty().get()).isEqualTo(room);
          assertThat(keys.here()).contains("Back to the notebook");
          keys.press(KeyCode.ESCAPE);
          assertThat(book.rooms.roomProperty().get()).isEqualTo(Rooms.Room.NOTEBOOK);
        } else if (room != Rooms.Room.NOTEBOOK) {
          String door = blindlap.wording.day.Words.of("rooms").say(room.name());
          keys.choose(door);
          assertThat(book.rooms.roomProperty().get()).isEqualTo(room);
          assertThat(keys.here()).contains("Back to the notebook");
          keys.press(KeyCode.ESCAPE);
          assertThat(book.rooms.roomProperty().get()).isEqualTo(Rooms.Room.NOTEBOOK);
          assertThat(keys.here()).contains(door);
        }
      }
      Window.run(stage::close);
    }
  }

  private void withKeys(Desk desk, java.util.function.BiConsumer<Book, Keyboard> work) {
    Book book = Window.call(() -> new Book(desk, folder, Theme.PAPER, 1, 1280, 800));
    Stage stage = Window.call(book::window);
    try {
      work.accept(book, new Keyboard(book.scene));
    } finally {
      Window.run(stage::close);
    }
  }

  @Test
  void oldDaysAreTakenWithKeysAloneAndTheDayWithAMistakeStaysOut() throws Exception {
    days(true);
    try (SeriesDays days = new SeriesDays(folder, 1)) {
      days.commit(new SeriesDays.Day("R. Lind", "2026-10-03", 0, 0, 1, false));
      withKeys(
          days.desk(),
          (book, keys) -> {
            keys.choose("Bring in old days");
            keys.choose("Choose a file");
            keys.choose("Take 3 days");
            assertThat(book.oldDay.noticeProperty().get())
                .startsWith("Brought in: 3 days with 42 laps.")
                .contains("never give a verdict", "R. Lind's noise on Quarry loop");
          });
      assertThat(days.desk().history().records("R. Lind", "Quarry loop"))
          .singleElement()
          .satisfies(record -> assertThat(record.days()).hasSize(3));
      assertThat(days.desk().notebook().summaries()).hasSize(4);
    }
  }

  @Test
  void afterOldDaysCameInTheNotebookStillOpensWithTheLatestFinding() throws Exception {
    days(false);
    try (SeriesDays days = new SeriesDays(folder, 1)) {
      days.ride(new SeriesDays.Day("R. Lind", "2026-10-03", 0, -1.2, 0.7, true));
      days.unsealAll();
      bring(days.desk());
      NotebookModel model = Models.notebook(days.desk(), new Shell(), Background.immediate());
      model.refresh();
      assertThat(model.answerProperty().get().before()).startsWith("Shock K against Shock L");
    }
  }

  @Test
  void aSeriesAtItsEndIsReportedWithKeysAloneAndASealedOneHasNothingToPress() {
    try (SeriesDays days = new SeriesDays(folder, 1)) {
      days.ride(new SeriesDays.Day("R. Lind", "2026-10-03", 2, -1.2, 0.7, true));
      days.ride(new SeriesDays.Day("R. Lind", "2026-10-10", 2, -1.2, 0.7, true));
      withKeys(
          days.desk(),
          (book, keys) -> {
            keys.choose("Series");
            assertThat(book.series.viewProperty().get().open()).isFalse();
            assertThat(SceneText.of(book.scene)).contains("disabled", "Write the report");
            Window.run(() -> book.series.report(folder));
            assertThat(book.series.noticeProperty().get()).contains("Nothing was written");
          });
      days.unsealAll();
      withKeys(
          days.desk(),
          (book, keys) -> {
            keys.choose("Series");
            keys.choose("Write the report");
            assertThat(book.series.noticeProperty().get()).contains("series-k-or-l.pdf");
          });
      assertThat(folder.resolve("series-k-or-l.pdf")).isNotEmptyFile();
      assertThat(folder.resolve("series-k-or-l.html")).isNotEmptyFile();
    }
  }

  @Test
  void anotherRidersNoiseIsChosenWithKeysAlone() {
    try (SeriesDays days = new SeriesDays(folder, 2)) {
      days.ride(new SeriesDays.Day("R. Lind", "2026-10-03", 2, 0, 0.7, false));
      days.ride(new SeriesDays.Day("M. Oster", "2026-10-10", 2, 0, 0.7, false));
      days.unsealAll();
      withKeys(
          days.desk(),
          (book, keys) -> {
            keys.choose("Rider noise");
            assertThat(book.noise.viewProperty().get().headline().before()).contains("M. Oster");
            keys.goTo("Rider and trail");
            keys.press(KeyCode.DOWN);
            assertThat(book.noise.viewProperty().get().headline().before()).contains("R. Lind");
            assertThat(SceneText.of(book.scene)).contains("R. Lind on Quarry loop: ");
          });
    }
  }

  @Test
  void theRoomOfASealedSeriesLooksTheSameWhateverTheOrders() throws Exception {
    java.util.Set<String> seen = new java.util.TreeSet<>();
    for (int seed = 0; seed < 3; seed++) {
      Path own = Files.createDirectories(folder.resolve("n" + seed));
      try (SeriesDays days = new SeriesDays(own, seed)) {
        days.ride(new SeriesDays.Day("R. Lind", "2026-10-03", 2, 0, 0.7, false));
        days.commit(new SeriesDays.Day("R. Lind", "2026-10-10", 2, 0, 0.7, false));
        for (Rooms.Room room : List.of(Rooms.Room.SERIES, Rooms.Room.NOISE, Rooms.Room.FIELD)) {
          seen.add(
              Window.call(
                  () -> {
                    Book book = new Book(days.desk(), own, Theme.PAPER, 1, 1280, 2000);
                    book.rooms.go(room);
                    return room + SceneText.of(book.scene);
                  }));
        }
      }
    }
    assertThat(seen).hasSize(3);
  }
}
