package blindlap.desk;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Consumer;

/** Writes the numbers of invented fields to a folder, a JSON file each. */
public final class FieldSample {
  private FieldSample() {}

  private static Map<String, Consumer<FieldSeason>> all() {
    Map<String, Consumer<FieldSeason>> all = new LinkedHashMap<>();
    all.put("mixed", FieldSeason::whole);
    all.put(
        "star",
        season -> {
          season.ride("KL", "2026-08-29");
          season.ride("KM", "2026-09-12");
          season.ride("KN", "2026-09-26");
        });
    all.put(
        "threes",
        season -> {
          season.ride("KLM", "2026-08-29");
          season.ride("MNP", "2026-09-12");
          season.ride("KP", "2026-09-26");
        });
    all.put(
        "apart",
        season -> {
          season.ride("KL", "2026-08-29");
          season.ride("QR", "2026-09-12");
        });
    all.put(
        "withheld",
        season -> {
          season.ride("KL", "2026-08-29");
          season.ride("KM", "2026-09-12");
          season.rideChanged("LM", "2026-09-26", "M", 4);
        });
    all.put(
        "ratio",
        season -> {
          for (String[] day :
              new String[][] {{"KL", "2026-08-29"}, {"LM", "2026-09-12"}, {"KM", "2026-09-26"}}) {
            season.unseal(
                season.close(
                    FieldSeason.plan(day[0], day[1])
                        .replace("worthwhile: 0.5", "worthwhile: 0.5, scale: ratio")));
          }
        });
    return all;
  }

  /** Writes to the folder given. */
  public static void main(String[] arguments) throws IOException {
    Path folder = Files.createDirectories(Path.of(arguments[0]));
    for (Map.Entry<String, Consumer<FieldSeason>> each : all().entrySet()) {
      try (FieldSeason season = new FieldSeason(Files.createTempDirectory("field"))) {
        each.getValue().accept(season);
        FieldBook.Result.Found found =
            (FieldBook.Result.Found) season.desk().field().find(FieldBook.Wanted.ANY);
        Files.writeString(folder.resolve(each.getKey() + ".json"), FieldBook.json(found));
      }
    }
  }
}
