package blindlap.exchange;

import blindlap.compute.RequestException;
import blindlap.compute.StrictJson;
import blindlap.fault.Unreadable;
import blindlap.plan.Plan;
import blindlap.review.DayRecord;
import blindlap.review.Handling;
import blindlap.review.HelperFit;
import blindlap.review.Masks;
import blindlap.review.Remark;
import blindlap.review.TakenLook;
import blindlap.seal.OpenKey;
import blindlap.session.GuessWords;
import blindlap.session.day.CovariateAt;
import blindlap.session.day.Guess;
import blindlap.session.day.SessionId;
import com.fasterxml.jackson.databind.JsonNode;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import tech.tablesaw.api.Row;
import tech.tablesaw.api.StringColumn;
import tech.tablesaw.api.Table;

/** Reads a data package back into what the analysis uses. */
public final class DataPackageReader {
  private static final String AMENDMENTS = "amendments.csv";
  private static final String KEY = "key.json";
  private static final String LAPS = "laps.csv";
  private static final String STINTS = "stints.csv";
  private static final String TRIALS = "trials.csv";
  private static final String HELPER = "helper.csv";

  private final Map<String, byte[]> files;

  private DataPackageReader(Map<String, byte[]> files) {
    this.files = files;
  }

  /**
   * Reads a package.
   *
   * @param files contents by name
   * @throws Unreadable if it is a blind package, lacks a file or cannot be read
   */
  public static DayRecord read(Map<String, byte[]> files) {
    return new DataPackageReader(files).day();
  }

  /**
   * What was added after unsealing, as the package has it; nothing if it lacks the table.
   *
   * @throws Unreadable if the table cannot be read
   */
  public static List<DataPackage.Amendment> amendments(Map<String, byte[]> files) {
    DataPackageReader reader = new DataPackageReader(files);
    List<DataPackage.Amendment> made = new ArrayList<>();
    if (files.containsKey(AMENDMENTS)) {
      for (Map<String, String> row : CsvText.read(AMENDMENTS, reader.text(AMENDMENTS))) {
        String at = PackageCells.text(row, "at");
        try {
          made.add(
              new DataPackage.Amendment(
                  Instant.parse(at),
                  PackageCells.text(row, "text"),
                  PackageCells.text(row, "reason")));
        } catch (DateTimeParseException e) {
          throw PackageCells.because(e, PackageFault.NOT_A_TIME, AMENDMENTS, at);
        }
      }
    }
    return made;
  }

  private String text(String name) {
    byte[] bytes = files.get(name);
    if (bytes == null) {
      throw name.equals(KEY)
          ? new Unreadable(
              files.containsKey("answer.csv") ? PackageFault.OF_A_SERIES : PackageFault.NO_KEY)
          : new Unreadable(PackageFault.NO_FILE, name);
    }
    return new String(bytes, StandardCharsets.UTF_8);
  }

  private DayRecord day() {
    JsonNode key = json(KEY);
    Plan plan = plan();
    List<Remark> remarks = remarks();
    SortedMap<Integer, Guess> guesses = new TreeMap<>();
    SortedMap<Integer, String> broken = new TreeMap<>();
    for (Map<String, String> row : CsvText.read(STINTS, text(STINTS))) {
      int stint = PackageCells.stint(row, STINTS, 1, plan);
      String guess = PackageCells.text(row, "guess");
      if (!guess.isEmpty()) {
        guesses.put(stint, guess(plan, guess, PackageCells.text(row, "cue")));
      }
      if (!PackageCells.text(row, "blind_broken").isEmpty()) {
        broken.put(stint, PackageCells.text(row, "blind_broken"));
      }
    }
    if (plan.telling() != null) {
      TrialTable.sureness(CsvText.read(TRIALS, text(TRIALS)), plan.telling(), guesses);
    }
    Optional<Masks> masks = MaskTable.of(files, plan);
    return new DayRecord(
        session(key),
        masks.map(Masks::analysed).orElse(plan),
        key(key, plan),
        PackageLaps.read(CsvText.read(LAPS, text(LAPS)), files, plan, remarks),
        guesses,
        broken,
        PackageCells.inside(key.path("last_stint").asInt(plan.stints()), KEY, 0, plan),
        fits(plan),
        remarks,
        handlings(plan),
        covariates(plan),
        looks(plan),
        masks,
        RecordedTables.read(files, plan));
  }

  /** What was said of covariates; nothing where the plan declares none. */
  private SortedMap<CovariateAt, BigDecimal> covariates(Plan plan) {
    return plan.covariates().isEmpty()
        ? new TreeMap<>()
        : CovariateTables.read(
            CsvText.read(CovariateTables.FILE, text(CovariateTables.FILE)), plan);
  }

  /** Looks before the end; nothing where none was taken. */
  private List<TakenLook> looks(Plan plan) {
    return files.containsKey(LookTable.FILE)
        ? LookTable.read(CsvText.read(LookTable.FILE, text(LookTable.FILE)), plan)
        : List.of();
  }

  /**
   * How long handlings took; nothing where nobody timed them, or the program was an earlier one.
   */
  private SortedMap<Integer, Handling> handlings(Plan plan) {
    return files.containsKey(WaitTable.FILE)
        ? WaitTable.read(CsvText.read(WaitTable.FILE, text(WaitTable.FILE)), plan)
        : new TreeMap<>();
  }

  /** What was said and done; nothing in the packages of earlier programs. */
  private List<Remark> remarks() {
    return files.containsKey(RemarkTable.FILE)
        ? RemarkTable.read(CsvText.read(RemarkTable.FILE, text(RemarkTable.FILE)))
        : List.of();
  }

  private JsonNode json(String name) {
    try {
      return StrictJson.parse(text(name));
    } catch (RequestException e) {
      throw PackageCells.because(e, PackageFault.NOT_JSON, name);
    }
  }

  private Plan plan() {
    PlanReader.Reading reading = PlanReader.storedReading(text("plan.json"));
    Plan plan = reading.plan();
    if (plan == null || !reading.problems().isEmpty()) {
      throw new Unreadable(PackageFault.NOT_A_PLAN, "plan.json", reading.problems().get(0).where());
    }
    return plan;
  }

  private static String session(JsonNode key) {
    JsonNode session = key.path("session");
    if (session.isMissingNode()) {
      throw new Unreadable(PackageFault.KEY_NO_SESSION);
    }
    try {
      return new SessionId(session.asText()).text();
    } catch (IllegalArgumentException e) {
      throw PackageCells.because(e, PackageFault.KEY_SESSION, session.asText());
    }
  }

  private static String algorithm(JsonNode key) {
    String algorithm = key.path("algorithm").asText();
    if (!OpenKey.knows(algorithm)) {
      throw new Unreadable(PackageFault.KEY_ALGORITHM, algorithm);
    }
    return algorithm;
  }

  private static OpenKey key(JsonNode key, Plan plan) {
    String order = key.path("order").asText();
    int setups = plan.setups().size();
    if (order.length() != plan.stints()
        || order.chars().anyMatch(letter -> letter < 'A' || letter >= 'A' + setups)) {
      throw new Unreadable(PackageFault.ORDER_DOES_NOT_FIT, order, plan.stints());
    }
    List<Integer> codes = new ArrayList<>();
    key.path("codes").forEach(code -> codes.add(code.isInt() ? code.asInt() : 0));
    if (new HashSet<>(codes).size() != plan.stints()) {
      throw new Unreadable(PackageFault.KEY_DOES_NOT_FIT, plan.stints());
    }
    String algorithm = algorithm(key);
    JsonNode nullRun = key.path("null_run");
    try {
      return OpenKey.opened(
          algorithm,
          order,
          codes,
          key.path("seed").asText(),
          key.path("nonce").asText(),
          setup(plan, key.path("warm_up").asText("A")),
          nullRun.isTextual() ? Optional.of(setup(plan, nullRun.asText())) : Optional.empty());
    } catch (IllegalArgumentException e) {
      throw new Unreadable(PackageFault.KEY_DOES_NOT_FIT, plan.stints());
    }
  }

  /** The helper's records: a row for a stint, and one more for each setting of it. */
  private SortedMap<Integer, HelperFit> fits(Plan plan) {
    SortedMap<Integer, HelperFit> fits = new TreeMap<>();
    Table helper = table(HELPER, "stint", "fitted", "setting", "measured", "note");
    for (Table stint : helper.splitOn("stint").asTableList()) {
      HelperFit fit = fit(stint, plan);
      fits.put(fit.stint(), fit);
    }
    return fits;
  }

  private static HelperFit fit(Table stint, Plan plan) {
    Map<String, BigDecimal> measured = new LinkedHashMap<>();
    Map<String, String> words = new LinkedHashMap<>();
    for (Row row : stint.dropWhere(stint.stringColumn("setting").isMissing())) {
      String typed = row.getString("measured");
      if (typed.isEmpty()) {
        words.put(row.getString("setting"), row.getString("note"));
      } else {
        measured.put(row.getString("setting"), PackageCells.number(typed, "measured"));
      }
    }
    Row first = stint.row(0);
    String fitted = first.getString("fitted");
    return new HelperFit(
        PackageCells.stint(Map.of("stint", first.getString("stint")), HELPER, 0, plan),
        fitted.isEmpty() ? null : setup(plan, fitted),
        measured,
        words,
        first.getString("note"));
  }

  /** Columns of one of the tables as texts. */
  private Table table(String name, String... columns) {
    List<Map<String, String>> rows = CsvText.read(name, text(name));
    Table table = Table.create(name);
    for (String column : columns) {
      List<String> cells = rows.stream().map(row -> PackageCells.text(row, column)).toList();
      table.addColumns(StringColumn.create(column, cells));
    }
    return table;
  }

  private static Guess guess(Plan plan, String typed, String cue) {
    Guess read =
        GuessWords.parse(plan, typed)
            .filter(each -> GuessWords.text(plan, each).equals(typed))
            .orElseThrow(() -> new Unreadable(PackageFault.NOT_A_SETUP, typed));
    return new Guess(read.setup(), null, cue);
  }

  /** The letter of a setup of the plan, or of a level of a steps day. */
  private static int setup(Plan plan, String letter) {
    int setup = letter.length() == 1 ? letter.charAt(0) - 'A' : -1;
    if (setup < 0 || setup >= plan.setups().size()) {
      throw new Unreadable(PackageFault.NOT_A_SETUP, letter);
    }
    return setup;
  }
}
