package blindlap.desk;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;

/** Writes reports and data packages of invented series to a folder, one folder a series. */
public final class SeriesSample {
  private static final String RIDER = "R. Lind";

  private SeriesSample() {}

  /**
   * The series by name: one rider raw, one on the ratio scale, several riders, and three setups.
   */
  static Map<String, Consumer<SeriesDays>> all() {
    Map<String, Consumer<SeriesDays>> all = new LinkedHashMap<>();
    all.put(
        "one-rider", days -> days.withScales(List.of(RIDER, RIDER, RIDER), "", "eight-stints", 8));
    all.put(
        "one-rider-ratio",
        days -> days.withScales(List.of(RIDER, RIDER), ", scale: ratio", "blocks-of-four", 12));
    all.put("one-rider-sampled", SeriesDays::oneRider);
    all.put(
        "riders",
        days ->
            days.withScales(
                List.of(RIDER, RIDER, "M. Oster", "J. Brand", "T. Falk", "A. Reiter"),
                "",
                "eight-stints",
                8));
    all.put("three-setups", SeriesDays::threeSetups);
    return all;
  }

  /** A series, taken through its whole life in a notebook of its own. */
  static void with(String name, Consumer<SeriesDays> look) throws IOException {
    try (SeriesDays days = new SeriesDays(Files.createTempDirectory("series"), 3)) {
      java.util.Objects.requireNonNull(all().get(name)).accept(days);
      look.accept(days);
    }
  }

  /** Contents of the package of a series. */
  static Map<String, byte[]> packaged(SeriesDays days) {
    return made(days.desk().seriesPackages().of(SeriesDays.SERIES));
  }

  private static Map<String, byte[]> made(SeriesReports.Result result) {
    return ((SeriesReports.Result.Made) result).files();
  }

  /** Writes to the folder given. */
  public static void main(String[] arguments) throws IOException {
    for (String name : all().keySet()) {
      Path folder = Path.of(arguments[0]).resolve(name);
      with(
          name,
          days -> {
            write(folder, made(days.desk().seriesReports().of(SeriesDays.SERIES, false)));
            write(folder.resolve("package"), packaged(days));
          });
    }
  }

  private static void write(Path folder, Map<String, byte[]> files) {
    try {
      WholeFiles.write(folder, files);
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }
}
