package blindlap.exchange;

import blindlap.compute.StrictJson;
import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.review.DayRecord;
import blindlap.review.HelperFit;
import blindlap.session.day.Guess;
import blindlap.session.day.LapId;
import blindlap.session.day.LapState;
import blindlap.session.day.VoidEvent;
import com.fasterxml.jackson.databind.JsonNode;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/** Reads a data package back into what the analysis uses. */
public final class DataPackageReader {
  private static final String AMENDMENTS = "amendments.csv";

  private final Map<String, byte[]> files;

  private DataPackageReader(Map<String, byte[]> files) {
    this.files = files;
  }

  /**
   * Reads a package.
   *
   * @param files contents by name
   * @throws IllegalArgumentException if it is a blind package, lacks a file or cannot be read; the
   *     message says which
   */
  public static DayRecord read(Map<String, byte[]> files) {
    return new DataPackageReader(files).day();
  }

  /**
   * What was added after unsealing, as the package has it; nothing if it lacks the table.
   *
   * @throws IllegalArgumentException if the table cannot be read; the message says why
   */
  public static List<DataPackage.Amendment> amendments(Map<String, byte[]> files) {
    DataPackageReader reader = new DataPackageReader(files);
    List<DataPackage.Amendment> made = new ArrayList<>();
    if (files.containsKey(AMENDMENTS)) {
      for (Map<String, String> row : CsvText.read(AMENDMENTS, reader.text(AMENDMENTS))) {
        String at = cell(row, "at");
        try {
          made.add(
              new DataPackage.Amendment(Instant.parse(at), cell(row, "text"), cell(row, "reason")));
        } catch (DateTimeParseException e) {
          throw new IllegalArgumentException(
              AMENDMENTS + " has \"" + at + "\" where a time is wanted", e);
        }
      }
    }
    return made;
  }

  private String text(String name) {
    byte[] bytes = files.get(name);
    if (bytes == null) {
      throw new IllegalArgumentException(
          name.equals("key.json")
              ? "there is no key.json in it: a package of a sealed session has no finding"
              : "there is no " + name + " in it");
    }
    return new String(bytes, StandardCharsets.UTF_8);
  }

  private DayRecord day() {
    JsonNode key = StrictJson.parse(text("key.json"));
    Plan plan = PlanReader.stored(text("plan.json"));
    SortedMap<Integer, Guess> guesses = new TreeMap<>();
    SortedMap<Integer, String> broken = new TreeMap<>();
    for (Map<String, String> row : CsvText.read("stints.csv", text("stints.csv"))) {
      int stint = whole(row, "stint");
      String guess = cell(row, "guess");
      if (!guess.isEmpty()) {
        guesses.put(
            stint, new Guess(guess.equals("-") ? null : setup(guess), null, cell(row, "cue")));
      }
      if (!cell(row, "blind_broken").isEmpty()) {
        broken.put(stint, cell(row, "blind_broken"));
      }
    }
    return new DayRecord(
        key.path("session").asText(),
        plan,
        key(key),
        laps(plan),
        guesses,
        broken,
        key.path("last_stint").asInt(plan.stints()),
        fits());
  }

  private static DayRecord.OpenedKey key(JsonNode key) {
    List<Integer> codes = new ArrayList<>();
    key.path("codes").forEach(code -> codes.add(code.asInt()));
    JsonNode nullRun = key.path("null_run");
    return new DayRecord.OpenedKey(
        key.path("algorithm").asText(),
        key.path("order").asText(),
        codes,
        key.path("seed").asText(),
        key.path("nonce").asText(),
        setup(key.path("warm_up").asText("A")),
        nullRun.isTextual() ? Optional.of(setup(nullRun.asText())) : Optional.empty());
  }

  private List<DayRecord.Lap> laps(Plan plan) {
    List<DayRecord.Lap> laps = new ArrayList<>();
    for (Map<String, String> row : CsvText.read("laps.csv", text("laps.csv"))) {
      Map<String, BigDecimal> values = new LinkedHashMap<>();
      for (Measure measure : plan.measures()) {
        String value = cell(row, measure.name());
        if (!value.isEmpty()) {
          values.put(measure.name(), number(value, measure.name()));
        }
      }
      Optional<VoidEvent> event = VoidEvent.parse(cell(row, "void"));
      laps.add(
          new DayRecord.Lap(
              new LapId(whole(row, "stint"), whole(row, "lap_in_stint")),
              Boolean.parseBoolean(cell(row, "ridden")),
              values,
              event.map(
                  e ->
                      new LapState.Voided(
                          e,
                          cell(row, "void_words"),
                          Boolean.parseBoolean(cell(row, "void_after_values_seen")))),
              cell(row, "note")));
    }
    return laps;
  }

  private SortedMap<Integer, HelperFit> fits() {
    SortedMap<Integer, HelperFit> fits = new TreeMap<>();
    for (Map<String, String> row : CsvText.read("helper.csv", text("helper.csv"))) {
      int stint = whole(row, "stint");
      String fitted = cell(row, "fitted");
      HelperFit before = fits.get(stint);
      Map<String, BigDecimal> measured =
          new LinkedHashMap<>(before == null ? Map.of() : before.measured());
      if (!cell(row, "setting").isEmpty()) {
        measured.put(cell(row, "setting"), number(cell(row, "measured"), "measured"));
      }
      String note = before == null ? cell(row, "note") : before.note();
      fits.put(
          stint, new HelperFit(stint, fitted.isEmpty() ? null : setup(fitted), measured, note));
    }
    return fits;
  }

  private static String cell(Map<String, String> row, String column) {
    String cell = row.get(column);
    if (cell == null) {
      throw new IllegalArgumentException("the column \"" + column + "\" is missing");
    }
    return cell;
  }

  private static int whole(Map<String, String> row, String column) {
    return number(cell(row, column), column).intValueExact();
  }

  private static BigDecimal number(String text, String column) {
    try {
      return new BigDecimal(text.strip());
    } catch (NumberFormatException e) {
      throw new IllegalArgumentException(
          "\"" + text + "\" is not a number for \"" + column + "\"", e);
    }
  }

  private static int setup(String letter) {
    if (letter.length() != 1 || letter.charAt(0) < 'A' || letter.charAt(0) > 'D') {
      throw new IllegalArgumentException("\"" + letter + "\" is not the letter of a setup");
    }
    return letter.charAt(0) - 'A';
  }
}
