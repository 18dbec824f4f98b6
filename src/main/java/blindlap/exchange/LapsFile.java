package blindlap.exchange;

import blindlap.fault.Decimals;
import blindlap.fault.Problem;
import blindlap.fault.TypedNumber;
import blindlap.plan.Covariate;
import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.session.day.LapId;
import blindlap.session.day.LapInput;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Reads a file of laps (docs/laps-file.md): separator {@code ;}, tab or {@code ,}; a header row;
 * one row per lap. Every mistake is named with line and column; the caller records all rows or
 * none.
 */
public final class LapsFile {
  private static final List<String> LATER =
      Stream.concat(Stream.of("sureness", "cue"), LapInput.CONDITIONS.stream()).toList();

  private final Plan plan;
  private final List<Integer> codes;
  private final List<Problem> problems = new ArrayList<>();
  private final Decimals decimals;
  private final List<String> header = new ArrayList<>();
  private final Map<String, Integer> columns = new LinkedHashMap<>();

  private LapsFile(Plan plan, List<Integer> codes, char separator) {
    this.plan = plan;
    this.codes = codes;
    this.decimals = new Decimals(separator != ',');
  }

  /**
   * What a file holds.
   *
   * @param laps one per row; to be used only if there are no problems
   * @param problems mistakes, in the order of the file
   */
  public record Reading(List<LapInput> laps, List<Problem> problems) {
    public Reading {
      laps = List.copyOf(laps);
      problems = List.copyOf(problems);
    }
  }

  /**
   * Reads a file's bytes.
   *
   * @param bytes UTF-8, with or without byte order mark
   * @param plan the session's plan
   * @param codes the session's codes, one per stint
   */
  public static Reading read(byte[] bytes, Plan plan, List<Integer> codes) {
    try {
      CsvTable table = CsvTable.ofTexts(bytes);
      return new LapsFile(plan, codes, table.separator()).read(table);
    } catch (CsvTable.Unreadable e) {
      return new Reading(List.of(), e.problems());
    }
  }

  private Reading read(CsvTable table) {
    header.addAll(table.header());
    columns(table.headerLine());
    List<LapInput> laps = new ArrayList<>();
    if (problems.isEmpty()) {
      table.rows().forEach(row -> lap(row).ifPresent(laps::add));
    }
    return new Reading(laps, problems);
  }

  private void columns(int line) {
    String where = "line " + line;
    for (int c = 0; c < header.size(); c++) {
      String name = known(header.get(c));
      if (name == null) {
        problems.add(Problem.of(FileFault.UNKNOWN_COLUMN, where, header.get(c), knownColumns()));
      } else if (columns.putIfAbsent(name, c) != null) {
        problems.add(Problem.of(FileFault.COLUMN_TWICE, where, header.get(c)));
      }
    }
    boolean byLap = columns.containsKey("lap");
    boolean byCode = columns.containsKey("code");
    if (!byLap && !byCode) {
      problems.add(Problem.of(FileFault.NO_LAP_COLUMN, where, String.join(", ", header)));
    } else if (!byLap && plan.laps().perStint() > 1 && !columns.containsKey("lap_in_stint")) {
      problems.add(Problem.of(FileFault.NO_LAP_IN_STINT, where, plan.laps().perStint()));
    }
  }

  private @Nullable String known(String column) {
    String lower = column.toLowerCase(Locale.ROOT);
    if (List.of("lap", "code", "lap_in_stint", "void", "note", "guess").contains(lower)) {
      return lower;
    }
    for (Measure measure : plan.measures()) {
      if (measure.name().equalsIgnoreCase(column)) {
        return "measure " + measure.name();
      }
    }
    for (Covariate covariate : plan.covariates()) {
      if (covariate.called(column)) {
        return "covariate " + covariate.name();
      }
    }
    if (lower.equals("answer") && plan.telling() != null) {
      return "guess";
    }
    // After the measures: a plan may have called one of them so before these columns were known.
    return LATER.contains(lower) ? lower : null;
  }

  private String knownColumns() {
    List<String> known = new ArrayList<>(List.of("lap", "code", "lap_in_stint"));
    plan.measures().stream().filter(m -> m.timing().by().asked()).forEach(m -> known.add(m.name()));
    plan.covariates().forEach(c -> known.add(c.name()));
    known.addAll(
        List.of(plan.telling() == null ? "guess" : "answer", "sureness", "cue", "void", "note"));
    known.addAll(LapInput.CONDITIONS);
    return String.join(", ", known);
  }

  private Optional<LapInput> lap(CsvTable.Row row) {
    int line = row.line();
    String where = "line " + line;
    Map<String, String> cells = new HashMap<>();
    columns.forEach((name, c) -> cells.put(name, row.cells().get(c)));
    int before = problems.size();
    LapId lap = lapId(cells, where);
    Map<String, String> places = new LinkedHashMap<>();
    Map<String, BigDecimal> values = values(cells, places, line);
    Map<String, Optional<BigDecimal>> covariates = covariates(cells, places, line);
    if (lap == null || problems.size() > before) {
      return Optional.empty();
    }
    return Optional.of(
        new LapInput(
            lap,
            values,
            cells.get("void"),
            cells.getOrDefault("note", ""),
            cells.get("guess"),
            cells.get("sureness"),
            cells.getOrDefault("cue", ""),
            conditions(cells),
            covariates,
            where,
            places));
  }

  private Map<String, BigDecimal> values(
      Map<String, String> cells, Map<String, String> places, int line) {
    Map<String, BigDecimal> values = new LinkedHashMap<>();
    for (Measure measure : plan.measures()) {
      Integer column = columns.get("measure " + measure.name());
      String cell = cells.getOrDefault("measure " + measure.name(), "");
      if (column == null) {
        continue;
      }
      places.put(measure.name(), "column " + (column + 1));
      if (cell.isEmpty()) {
        continue;
      }
      BigDecimal value =
          value(
              measure.name(),
              measure.kind().timed(),
              cell,
              "line " + line + ", column " + (column + 1),
              line);
      if (value != null) {
        values.put(measure.name(), value);
      }
    }
    return values;
  }

  /** What is said of covariates; an empty cell where the column is there. */
  private Map<String, Optional<BigDecimal>> covariates(
      Map<String, String> cells, Map<String, String> places, int line) {
    Map<String, Optional<BigDecimal>> covariates = new LinkedHashMap<>();
    for (Covariate covariate : plan.covariates()) {
      Integer column = columns.get("covariate " + covariate.name());
      if (column == null) {
        continue;
      }
      String cell = cells.getOrDefault("covariate " + covariate.name(), "");
      String place = "column " + (column + 1);
      places.put(covariate.name(), place);
      boolean timed = covariate.kind().timed();
      covariates.put(
          covariate.name(),
          cell.isEmpty()
              ? Optional.empty()
              : Optional.ofNullable(
                  value(covariate.name(), timed, cell, "line " + line + ", " + place, line)));
    }
    return covariates;
  }

  private static Map<String, String> conditions(Map<String, String> cells) {
    Map<String, String> conditions = new LinkedHashMap<>();
    for (String name : LapInput.CONDITIONS) {
      String words = cells.getOrDefault(name, "");
      if (!words.isBlank()) {
        conditions.put(name, words);
      }
    }
    return conditions;
  }

  private @Nullable LapId lapId(Map<String, String> cells, String where) {
    LapId byLap = null;
    String typed = cells.get("lap");
    if (typed != null) {
      Integer number = whole(typed);
      if (number == null || number < 1 || number > plan.lapsOfDay()) {
        problems.add(Problem.of(FileFault.NOT_A_LAP, where, typed, plan.lapsOfDay()));
        return null;
      }
      byLap = LapId.ofDay(number, plan.laps().perStint());
    }
    String code = cells.get("code");
    if (code == null || (code.isEmpty() && byLap != null)) {
      return byLap;
    }
    Integer codeNumber = whole(code);
    int stint = codeNumber == null ? 0 : codes.indexOf(codeNumber) + 1;
    if (stint == 0) {
      problems.add(Problem.of(FileFault.UNKNOWN_CODE, where, code));
      return null;
    }
    if (byLap != null) {
      if (byLap.stint() != stint) {
        problems.add(Problem.of(FileFault.LAP_AND_CODE_DIFFER, where, typed, code));
        return null;
      }
      return byLap;
    }
    return inStint(cells, stint, where);
  }

  private @Nullable LapId inStint(Map<String, String> cells, int stint, String where) {
    String typed = cells.getOrDefault("lap_in_stint", "1");
    Integer lap = whole(typed);
    if (lap == null || lap < 1 || lap > plan.laps().perStint()) {
      problems.add(Problem.of(FileFault.NOT_A_LAP, where, typed, plan.laps().perStint()));
      return null;
    }
    return new LapId(stint, lap);
  }

  private static @Nullable Integer whole(String text) {
    return TypedNumber.whole(text).orElse(null);
  }

  private @Nullable BigDecimal value(
      String name, boolean timed, String cell, String where, int line) {
    if (decimals.mixed(cell, line)) {
      problems.add(Problem.of(FileFault.MIXED_DECIMALS, where, cell, decimals.firstLine()));
      return null;
    }
    if (TypedNumber.twoSigns(cell)) {
      problems.add(Problem.of(FileFault.TWO_SIGNS, where, name, cell));
      return null;
    }
    Optional<BigDecimal> value = timed ? decimals.time(cell) : decimals.number(cell);
    if (value.isEmpty()) {
      FileFault fault = timed ? FileFault.NOT_A_TIME_FORM : FileFault.NOT_A_NUMBER;
      problems.add(Problem.of(fault, where, name, cell));
    }
    return value.orElse(null);
  }
}
