package blindlap.exchange;

import blindlap.fault.Decimals;
import blindlap.fault.Problem;
import blindlap.fault.TypedNumber;
import blindlap.plan.Plan;
import blindlap.plan.Setting;
import blindlap.plan.Setup;
import blindlap.plan.TellingRun;
import blindlap.session.GuessWords;
import blindlap.session.KeptOnPaper;
import blindlap.session.SafetyCheck;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/**
 * The helper's paper as a table that is typed: one row a stint; columns {@code stint}, {@code code}
 * and of a telling run {@code trial} (checked where they are filled in), {@code fitted} ("as
 * scheduled" or a setup), one for each item of the safety list, {@code confirmed by}, one for each
 * setting of any setup, {@code note}. The empty table names no setup and has the same columns
 * whatever was drawn. A row of which nothing but stint and code is filled in is of a stint that is
 * still to come.
 */
public final class HelperTable {
  private static final String STINT = "stint";
  private static final String CODE = "code";
  private static final String TRIAL = "trial";
  private static final String FITTED = "fitted";
  private static final String BY = "confirmed by";
  private static final String NOTE = "note";
  private static final String TICK = "safe: ";
  private static final String SETTING = "set: ";
  private static final int NOT_FILLED_IN = -2;
  private static final List<String> AS_SCHEDULED = List.of("as scheduled", "scheduled");
  private static final List<String> TICKED = List.of("x", "yes", "y", "ok", "\u2713", "\u2714");
  private static final List<String> NOT_TICKED = List.of("", "no", "n", "-", "\u2212", "\u2013");

  private final Plan plan;
  private final List<Integer> codes;
  private final List<Problem> problems = new ArrayList<>();
  private final Map<String, Integer> columns = new LinkedHashMap<>();
  private final Decimals decimals;

  private HelperTable(Plan plan, List<Integer> codes, char separator) {
    this.plan = plan;
    this.codes = codes;
    this.decimals = new Decimals(separator != ',');
  }

  /**
   * What a table holds.
   *
   * @param stints those that are filled in, by stint; to be used only if there are no problems
   * @param problems mistakes, in the order of the table
   */
  public record Reading(List<KeptOnPaper> stints, List<Problem> problems) {
    public Reading {
      stints = List.copyOf(stints);
      problems = List.copyOf(problems);
    }
  }

  /**
   * The empty table.
   *
   * @param stints a row each, 0 = the warm-up
   */
  public static byte[] form(Plan plan, List<Integer> codes, List<Integer> stints) {
    List<String> header = names(plan);
    List<List<String>> rows = new ArrayList<>();
    for (int stint : stints) {
      List<String> row = new ArrayList<>(java.util.Collections.nCopies(header.size(), ""));
      row.set(header.indexOf(STINT), String.valueOf(stint));
      row.set(header.indexOf(CODE), stint == 0 ? "" : String.valueOf(codes.get(stint - 1)));
      if (header.contains(TRIAL)) {
        row.set(header.indexOf(TRIAL), trial(plan, stint));
      }
      rows.add(row);
    }
    return CsvText.write(';', header, rows).getBytes(StandardCharsets.UTF_8);
  }

  private static List<String> names(Plan plan) {
    List<String> names = new ArrayList<>(List.of(STINT, CODE, FITTED));
    if (plan.telling() != null) {
      names.add(0, TRIAL);
    }
    for (SafetyCheck check : SafetyCheck.values()) {
      names.add(tick(check));
    }
    names.add(BY);
    settings(plan).keySet().forEach(setting -> names.add(SETTING + setting));
    names.add(NOTE);
    return names;
  }

  /** The number of a stint's trial; empty for the warm-up, and where there are no trials. */
  private static String trial(Plan plan, int stint) {
    TellingRun run = plan.telling();
    return run == null || stint == 0 ? "" : String.valueOf(run.trial(stint));
  }

  private static String tick(SafetyCheck check) {
    return TICK + check.name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }

  /** All settings that any setup is measured by, each once; true for those that are numbers. */
  private static Map<String, Boolean> settings(Plan plan) {
    Map<String, Boolean> all = new LinkedHashMap<>();
    for (Setup setup : plan.setups()) {
      setup.settings().forEach(setting -> add(all, setting));
    }
    plan.bike().forEach(setting -> add(all, setting));
    return all;
  }

  private static void add(Map<String, Boolean> all, Setting setting) {
    all.merge(setting.name(), setting.number() != null, Boolean::logicalAnd);
  }

  /**
   * Reads a typed table.
   *
   * @param bytes UTF-8, separator {@code ;}, tab or {@code ,}
   * @param codes the session's codes, one per stint
   */
  public static Reading read(byte[] bytes, Plan plan, List<Integer> codes) {
    try {
      CsvTable table = CsvTable.ofTexts(bytes);
      return new HelperTable(plan, codes, table.separator()).read(table);
    } catch (CsvTable.Unreadable e) {
      return new Reading(List.of(), e.problems().stream().map(HelperTable::ofHelper).toList());
    }
  }

  private static Problem ofHelper(Problem problem) {
    FileFault fault =
        problem.fault() == FileFault.NOT_UTF8
            ? FileFault.HELPER_NOT_UTF8
            : problem.fault() == FileFault.NO_ROWS
                ? FileFault.HELPER_NO_ROWS
                : FileFault.HELPER_CANNOT_READ;
    boolean own = problem.fault() == FileFault.CANNOT_READ || fault != FileFault.HELPER_CANNOT_READ;
    return own ? new Problem(fault, problem.where(), problem.details()) : problem;
  }

  private Reading read(CsvTable table) {
    columns(table);
    Map<Integer, KeptOnPaper> stints = new TreeMap<>();
    Map<Integer, String> seen = new TreeMap<>();
    if (problems.isEmpty()) {
      for (CsvTable.Row row : table.rows()) {
        int before = problems.size();
        KeptOnPaper kept = stint(row, seen);
        if (problems.size() == before && kept.otherwise() != NOT_FILLED_IN) {
          stints.put(kept.stint(), kept);
        }
      }
    }
    if (problems.isEmpty() && stints.isEmpty()) {
      problems.add(Problem.of(FileFault.HELPER_NO_ROWS, ""));
    }
    return new Reading(List.copyOf(stints.values()), problems);
  }

  private void columns(CsvTable table) {
    String where = "line " + table.headerLine();
    List<String> known = names(plan);
    for (int c = 0; c < table.header().size(); c++) {
      String typed = table.header().get(c);
      String name = known.stream().filter(typed::equalsIgnoreCase).findFirst().orElse("");
      if (name.isEmpty()) {
        String all = String.join(", ", known);
        problems.add(Problem.of(FileFault.UNKNOWN_COLUMN, where, typed, all));
      } else if (columns.putIfAbsent(name, c) != null) {
        problems.add(Problem.of(FileFault.COLUMN_TWICE, where, typed));
      }
    }
    if (!columns.containsKey(STINT)) {
      String found = String.join(", ", table.header());
      problems.add(Problem.of(FileFault.NO_STINT_COLUMN, where, found));
    }
  }

  private KeptOnPaper stint(CsvTable.Row row, Map<Integer, String> seen) {
    String where = "line " + row.line();
    int stint = number(row, where);
    String before = stint < 0 ? null : seen.putIfAbsent(stint, where);
    if (before != null) {
      problems.add(Problem.of(FileFault.STINT_TWICE, where, stint, before));
    }
    boolean filled =
        columns.entrySet().stream()
            .filter(e -> !List.of(TRIAL, STINT, CODE).contains(e.getKey()))
            .anyMatch(e -> !row.cells().get(e.getValue()).isEmpty());
    return new KeptOnPaper(
        stint,
        filled ? fitted(row, stint, where) : NOT_FILLED_IN,
        cell(row, BY),
        ticks(row, where),
        measured(row, where),
        cell(row, NOTE));
  }

  private String cell(CsvTable.Row row, String column) {
    Integer at = columns.get(column);
    return at == null ? "" : row.cells().get(at);
  }

  private int number(CsvTable.Row row, String where) {
    String typed = cell(row, STINT);
    int first = plan.laps().warmUp() > 0 ? 0 : 1;
    int stint = TypedNumber.whole(typed).orElse(-1);
    if (stint < first || stint > plan.stints()) {
      problems.add(Problem.of(FileFault.NOT_A_STINT, where, typed, first, plan.stints()));
      return -1;
    }
    String code = cell(row, CODE);
    String own = stint == 0 ? "" : String.valueOf(codes.get(stint - 1));
    if (!code.isEmpty() && !code.equals(own)) {
      problems.add(Problem.of(FileFault.CODE_OF_ANOTHER, where, stint, code));
    }
    String trial = cell(row, TRIAL);
    if (!trial.isEmpty() && !trial.equals(trial(plan, stint))) {
      problems.add(Problem.of(FileFault.TRIAL_OF_ANOTHER, where, stint, trial));
    }
    return stint;
  }

  private int fitted(CsvTable.Row row, int stint, String where) {
    String typed = cell(row, FITTED);
    if (typed.isEmpty()) {
      problems.add(Problem.of(FileFault.FITTED_MISSING, where, stint));
      return KeptOnPaper.AS_SCHEDULED;
    }
    if (AS_SCHEDULED.stream().anyMatch(typed::equalsIgnoreCase)) {
      return KeptOnPaper.AS_SCHEDULED;
    }
    Integer setup = GuessWords.setup(plan, typed).orElse(null);
    if (setup == null) {
      String names = String.join(", ", plan.setups().stream().map(Setup::name).toList());
      problems.add(Problem.of(FileFault.NOT_A_FIT, where, typed, names));
      return KeptOnPaper.AS_SCHEDULED;
    }
    return setup;
  }

  private Set<SafetyCheck> ticks(CsvTable.Row row, String where) {
    Set<SafetyCheck> ticks = EnumSet.noneOf(SafetyCheck.class);
    for (SafetyCheck check : SafetyCheck.values()) {
      String typed = cell(row, tick(check)).toLowerCase(Locale.ROOT);
      if (TICKED.contains(typed)) {
        ticks.add(check);
      } else if (!NOT_TICKED.contains(typed)) {
        problems.add(Problem.of(FileFault.NOT_A_TICK, where, tick(check), typed));
      }
    }
    return ticks;
  }

  private Map<String, String> measured(CsvTable.Row row, String where) {
    Map<String, String> measured = new LinkedHashMap<>();
    settings(plan)
        .forEach(
            (name, isNumber) -> {
              String typed = cell(row, SETTING + name);
              if (typed.isEmpty()) {
                return;
              }
              measured.put(name, typed);
              if (!isNumber) {
                return;
              }
              if (decimals.mixed(typed, row.line())) {
                problems.add(
                    Problem.of(FileFault.MIXED_DECIMALS, where, typed, decimals.firstLine()));
              } else if (TypedNumber.twoSigns(typed)) {
                problems.add(Problem.of(FileFault.TWO_SIGNS, where, name, typed));
              } else if (decimals.number(typed).isEmpty()) {
                problems.add(Problem.of(FileFault.NOT_A_NUMBER, where, name, typed));
              }
            });
    return measured;
  }
}
