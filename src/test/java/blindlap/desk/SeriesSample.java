package blindlap.desk;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;

/** Writes the reports of an invented series of one rider and of one of several to a folder. */
public final class SeriesSample {
  private SeriesSample() {}

  /** Writes to the folder given. */
  public static void main(String[] arguments) throws IOException {
    for (String which : List.of("one", "riders")) {
      Path folder = Files.createDirectories(Path.of(arguments[0]).resolve(which));
      Path notebook = Files.createTempDirectory("series");
      try (SeriesDays days = new SeriesDays(notebook, which.equals("one") ? 1 : 2)) {
        if (which.equals("one")) {
          days.oneRider();
        } else {
          days.riders();
        }
        files(days).forEach((name, bytes) -> write(folder.resolve(name), bytes));
      }
    }
  }

  private static Map<String, byte[]> files(SeriesDays days) {
    return ((SeriesReports.Result.Made) days.desk().seriesReports().of(SeriesDays.SERIES, false))
        .files();
  }

  private static void write(Path file, byte[] bytes) {
    try {
      Files.write(file, bytes);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
