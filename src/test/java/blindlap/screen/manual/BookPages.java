package blindlap.screen.manual;

import blindlap.phone.FakeMaker;
import blindlap.screen.ManualWindow;
import blindlap.screen.part.Shell;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import javafx.scene.control.ComboBox;

/** The Notebook page and the rooms behind it, over a season of forks. */
final class BookPages {
  private BookPages() {}

  private static ManualWindow window(ForkDay day) {
    return ManualWindow.open(day.desk(), day.notebook(), day.clock(), new FakeMaker(), Map.of());
  }

  static void season(Path folder, Album album) throws IOException {
    try (ForkDay day =
        new ForkDay(folder, "season").profiles().commit().ride(16).record().over().unseal()) {
      ForkSeason season = new ForkSeason(day.desk(), day.clock());
      season.old().field();
      season.commit("MP", "K. Vogt", "2026-11-14", 16, "");
      while (day.desk().sessionList().keepVerdicts(10)) {
        // every verdict is in the list afterwards
      }
      try (ManualWindow window = window(day)) {
        window.go(Shell.Page.NOTEBOOK);
        album.take(window, ManualPicture.NOTEBOOK);
        room(window, album, "Rider noise", ManualPicture.NOISE);
        field(window, album);
        oldDays(folder, window, album);
      }
    }
  }

  private static void room(ManualWindow window, Album album, String door, ManualPicture picture) {
    window.press(door);
    album.take(window, picture);
    window.press("Back to the notebook");
  }

  /** Against Fork M, which Fork P never met. */
  private static void field(ManualWindow window, Album album) {
    window.press("The field");
    window.with(ComboBox.class, "Against", box -> choose(box, "Fork M"));
    album.take(window, ManualPicture.FIELD);
    window.press("Back to the notebook");
  }

  private static <T> void choose(ComboBox<T> box, String words) {
    T wanted =
        box.getItems().stream()
            .filter(each -> box.getConverter().toString(each).equals(words))
            .findFirst()
            .orElseThrow();
    box.getSelectionModel().select(wanted);
  }

  private static void oldDays(Path folder, ManualWindow window, Album album) throws IOException {
    Path file = Files.writeString(folder.resolve("old-days.csv"), logged());
    window.press("Bring in old days");
    window.type("File", file.toString());
    window.press("Read it");
    window.type("Trail", "Juniper chute");
    window.type("Rider", "K. Vogt");
    window.type("File", "old-days.csv");
    album.take(window, ManualPicture.OLD_DAYS);
  }

  /** Two days as a logger writes them. */
  private static String logged() {
    Random random = new Random(5);
    StringBuilder csv = new StringBuilder("When;Lap;Setup;Air;Time;void\n");
    for (String day : new String[] {"2025-05-10", "2025-06-21"}) {
      for (int lap = 1; lap <= 12; lap++) {
        csv.append(
            String.format(
                Locale.ROOT,
                "%s;%d;%s;21 °C;%.2f;%s%n",
                day,
                lap,
                lap % 2 == 0 ? "M" : "N",
                62 - 0.05 * lap + random.nextGaussian(),
                lap == 3 ? "yes" : ""));
      }
    }
    return csv.toString();
  }

  static void series(Path folder, Album album) {
    try (ForkDay day = new ForkDay(folder, "series")) {
      new ForkSeason(day.desk(), day.clock()).sealedSeries();
      try (ManualWindow window = window(day)) {
        window.go(Shell.Page.NOTEBOOK);
        room(window, album, "Series", ManualPicture.SERIES_SEALED);
      }
    }
    try (ForkDay day = new ForkDay(folder, "riders")) {
      new ForkSeason(day.desk(), day.clock()).riders();
      try (ManualWindow window = window(day)) {
        window.go(Shell.Page.NOTEBOOK);
        room(window, album, "Series", ManualPicture.SERIES_RIDERS);
      }
    }
  }
}
