package blindlap.desk.day;

import blindlap.fault.TypedNumber;
import blindlap.plan.Covariate;
import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plan.TellingRun;
import blindlap.session.day.CovariateAt;
import blindlap.session.day.Day;
import blindlap.session.day.LapId;
import blindlap.session.day.LapInput;
import blindlap.session.day.LapState;
import java.util.ArrayList;
import java.util.List;

/**
 * A table of laps as it was typed from paper.
 *
 * @param columns headings: lap, code, the measures, covariates, guess, sureness and cue if asked,
 *     void, note, conditions; of a telling run answer and sureness, void and note
 * @param rows one for every lap that is still to be recorded or has an open answer, in ridden order
 */
public record LapTable(List<String> columns, List<List<String>> rows) {
  /** The first columns, lap and code, which nobody types. */
  public static final int FIXED = 2;

  /**
   * A cell in which two tables differ.
   *
   * @param row from 0
   * @param column from 0
   * @param lap as it stands in the first column
   * @param heading of the column
   * @param first what was typed first
   * @param second what was typed second
   */
  public record Difference(
      int row, int column, String lap, String heading, String first, String second) {}

  public LapTable {
    columns = List.copyOf(columns);
    rows = rows.stream().map(List::copyOf).toList();
  }

  /** Names of the measures that people give, in the order of their columns. */
  public static List<String> measures(Day day) {
    return day.plan().measures().stream()
        .filter(m -> m.timing().by().asked())
        .map(Measure::name)
        .toList();
  }

  /**
   * The empty table of a day: laps not recorded yet, and ridden ones with an open answer; settling
   * laps left out.
   */
  public static LapTable empty(Day day) {
    Plan plan = day.plan();
    List<String> columns = new ArrayList<>(List.of("lap", "code"));
    columns.addAll(measures(day));
    columns.addAll(plan.covariates().stream().map(Covariate::name).toList());
    if (plan.telling() != null) {
      columns.add(plan.measure("answer").isEmpty() ? "answer" : "guess");
      columns.addAll(without(plan, List.of("sureness")));
    } else if (plan.blinding().guesses()) {
      columns.add("guess");
      columns.addAll(without(plan, List.of("sureness", "cue")));
    }
    columns.add("void");
    columns.add("note");
    if (plan.telling() == null) {
      columns.addAll(without(plan, LapInput.CONDITIONS));
    }
    List<List<String>> rows = new ArrayList<>();
    int per = plan.laps().perStint();
    for (int lap = 1; lap <= day.lastStint() * per; lap++) {
      boolean settling = (lap - 1) % per < plan.laps().settling();
      LapId id = LapId.ofDay(lap, per);
      boolean left = !day.ridden(id) && !day.inVoidTrial(id.stint());
      if (!settling && (left || day.ridden(id) && open(day, id))) {
        List<String> row = new ArrayList<>();
        row.add(String.valueOf(lap));
        row.add(String.valueOf(day.code((lap - 1) / per + 1)));
        while (row.size() < columns.size()) {
          row.add("");
        }
        rows.add(row);
      }
    }
    return new LapTable(columns, rows);
  }

  /** A measure or covariate that a plan has called so keeps its column. */
  private static List<String> without(Plan plan, List<String> names) {
    return names.stream()
        .filter(name -> plan.measure(name).isEmpty())
        .filter(name -> plan.covariates().stream().noneMatch(c -> c.called(name)))
        .toList();
  }

  private static boolean open(Day day, LapId lap) {
    LapState known = day.lap(lap).orElseThrow();
    boolean guess = answers(day, lap) && !day.guesses().containsKey(lap.stint());
    return known.voided().isEmpty()
        && !day.inVoidTrial(lap.stint())
        && (guess
            || asked(day, lap).stream().anyMatch(at -> !day.covariates().containsKey(at))
            || !known.values().keySet().containsAll(measures(day)));
  }

  /** True if a guess is given at the end of a lap: of a telling run its trial's answer. */
  private static boolean answers(Day day, LapId lap) {
    return day.plan().asksGuessAfter(lap.stint()) && lap.lap() == day.plan().laps().perStint();
  }

  /**
   * True where a cell is asked for: the answer to a trial stands beside its last lap alone.
   *
   * @param number of the lap over the day
   */
  public static boolean asked(Day day, int number, String column) {
    boolean answer = List.of("answer", "guess", "sureness").contains(column);
    return day.plan().telling() == null
        || !answer
        || day.plan().measure(column).isPresent()
        || answers(day, LapId.ofDay(number, day.plan().laps().perStint()));
  }

  /**
   * True where something stands on a ridden lap's sheet already: it is not typed again.
   *
   * @param number of the lap over the day
   */
  public static boolean given(Day day, int number, String column) {
    LapId lap = LapId.ofDay(number, day.plan().laps().perStint());
    Covariate covariate = day.plan().covariate(column).orElse(null);
    if (covariate != null) {
      return covariate(day, lap, covariate);
    }
    LapState known = day.lap(lap).filter(LapState::ridden).orElse(null);
    if (known == null) {
      return false;
    }
    if (day.plan().measure(column).isPresent()) {
      return known.values().containsKey(column);
    }
    return switch (column) {
      case "guess", "answer", "sureness", "cue" ->
          day.guesses().containsKey(lap.stint()) || lap.lap() < day.plan().laps().perStint();
      case "note" -> !known.note().isBlank();
      case "void" -> true; // what spoiled a ridden lap is said on the page, or in the review
      default -> known.conditions().containsKey(column);
    };
  }

  /** The covariates that are typed beside a lap. */
  private static List<CovariateAt> asked(Day day, LapId lap) {
    boolean first = lap.lap() == day.plan().laps().settling() + 1;
    return day.plan().covariates().stream()
        .filter(c -> c.perLap() || first)
        .map(c -> new CovariateAt(c.name(), lap.stint(), c.perLap() ? lap.lap() : 0))
        .toList();
  }

  /** True where a covariate stands already, or is typed beside the stint's first lap. */
  private static boolean covariate(Day day, LapId lap, Covariate covariate) {
    return asked(day, lap).stream()
        .filter(at -> at.covariate().equals(covariate.name()))
        .findFirst()
        .map(at -> day.ridden(lap) && day.covariates().containsKey(at))
        .orElse(true);
  }

  /** True if nothing was typed in a row but its lap and code. */
  public boolean blank(int row) {
    return rows.get(row).subList(FIXED, columns.size()).stream().allMatch(String::isBlank);
  }

  /** The row, and of a telling run the other rows of its trial, which one answer is about. */
  public LapTable together(Day day, int row) {
    TellingRun run = day.plan().telling();
    return run == null
        ? new LapTable(columns, List.of(rows.get(row)))
        : new LapTable(
            columns,
            rows.stream().filter(each -> trial(run, each) == trial(run, rows.get(row))).toList());
  }

  private static int trial(TellingRun run, List<String> row) {
    return run.trial(Integer.parseInt(row.get(0)));
  }

  /** Where two tables of one day differ; numbers count by their value, not their spelling. */
  public List<Difference> differences(LapTable again) {
    List<Difference> found = new ArrayList<>();
    for (int row = 0; row < rows.size(); row++) {
      for (int column = 0; column < columns.size(); column++) {
        String one = rows.get(row).get(column).strip();
        String two = again.rows().get(row).get(column).strip();
        if (!same(one, two)) {
          found.add(
              new Difference(row, column, rows.get(row).get(0), columns.get(column), one, two));
        }
      }
    }
    return found;
  }

  /** True if two cells say the same. */
  public static boolean same(String one, String two) {
    if (one.equals(two)) {
      return true;
    }
    return TypedNumber.number(one)
        .flatMap(first -> TypedNumber.number(two).map(second -> first.compareTo(second) == 0))
        .orElse(false);
  }

  /** The table with one cell settled. */
  public LapTable settled(Difference difference, String value) {
    List<List<String>> settled = new ArrayList<>(rows);
    List<String> row = new ArrayList<>(settled.get(difference.row()));
    row.set(difference.column(), value);
    settled.set(difference.row(), row);
    return new LapTable(columns, settled);
  }
}
