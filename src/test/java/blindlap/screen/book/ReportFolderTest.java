package blindlap.screen.book;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.FieldSeason;
import blindlap.desk.SeriesDays;
import blindlap.screen.Window;
import blindlap.screen.part.Background;
import blindlap.screen.part.Shell;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The reports of fields and series asked into a folder that cannot be had, and then into one. */
class ReportFolderTest {
  @TempDir Path folder;

  @BeforeAll
  static void startWindowSystem() throws InterruptedException {
    Window.start();
  }

  private static String refused(Path folder) {
    return "The files cannot be written to "
        + folder
        + "; nothing was left half-written there. Choose another folder.";
  }

  @Test
  void theFieldSaysWhyNothingIsThereAndWritesToTheNextFolder() throws IOException {
    Path file = Files.writeString(folder.resolve("file"), "kept");
    try (FieldSeason season = new FieldSeason(Files.createDirectory(folder.resolve("book")))) {
      season.ride("KL", "2026-08-29");
      season.ride("KM", "2026-09-12");
      FieldModel model = new FieldModel(season.desk().field(), Background.immediate());
      model.refresh();
      model.report(file.resolve("out"));
      assertThat(model.noticeProperty().get()).isEqualTo(refused(file.resolve("out")));
      assertThat(model.viewProperty().get().rows()).isNotEmpty();
      model.report(folder.resolve("out"));
    }
    assertThat(file).hasContent("kept");
    assertThat(folder.resolve("out")).isDirectoryContaining("glob:**.pdf");
  }

  @Test
  void theSeriesSaysWhyNothingIsThereAndWritesToTheNextFolder() throws IOException {
    Path file = Files.writeString(folder.resolve("file"), "kept");
    try (SeriesDays days = new SeriesDays(Files.createDirectory(folder.resolve("book")), 1)) {
      days.ride(new SeriesDays.Day("R. Lind", "2026-10-03", 2, -1.2, 0.7, true));
      days.ride(new SeriesDays.Day("R. Lind", "2026-10-10", 2, -1.2, 0.7, true));
      days.unsealAll();
      SeriesModel model =
          new SeriesModel(
              days.desk().series(),
              days.desk().seriesReports(),
              new NextSession(days.desk().anotherDay(), new Shell(), Background.immediate()),
              Background.immediate());
      model.refresh();
      model.report(file.resolve("out"));
      assertThat(model.noticeProperty().get()).isEqualTo(refused(file.resolve("out")));
      model.report(folder.resolve("out"));
      assertThat(model.noticeProperty().get()).startsWith("Written to " + folder.resolve("out"));
    }
    assertThat(file).hasContent("kept");
    assertThat(folder.resolve("out")).isDirectoryContaining("glob:**.pdf");
  }
}
