package blindlap.screen.plan;

import blindlap.plan.DayDivided;
import blindlap.plan.Division;
import blindlap.plan.Plan;
import blindlap.plan.Schedule;
import blindlap.plan.Timetable;
import blindlap.plot.DayShape;
import blindlap.plot.RangeBar;
import blindlap.plot.surface.Spoken;
import blindlap.wording.DivideWords;
import java.math.BigDecimal;
import java.time.Duration;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;

/**
 * What the page shows of how a day can be divided.
 *
 * @param day the day that is divided
 * @param rows the plan's own rule, the division as planned and the best first, then the others
 * @param own how many of the rows come first
 * @param notes what is to be said beside them
 */
record PlanDivisions(String day, List<Row> rows, int own, List<String> notes) {
  static final PlanDivisions NONE = new PlanDivisions("", List.of(), 0, List.of());

  /**
   * A division.
   *
   * @param division what a press takes
   * @param rule its rule's title
   * @param cells its row in a table
   * @param line the same in one sentence
   * @param chosen true for the one that is planned
   * @param shape the day to scale
   * @param bar what it can show
   */
  record Row(
      Division division,
      String rule,
      List<String> cells,
      String line,
      boolean chosen,
      DayShape shape,
      RangeBar bar) {
    Row {
      cells = List.copyOf(cells);
    }
  }

  PlanDivisions {
    rows = List.copyOf(rows);
    notes = List.copyOf(notes);
  }

  static PlanDivisions of(Plan plan, DayDivided divided) {
    DivideWords words = new DivideWords(plan, divided);
    List<Division> listed =
        divided.divisions().stream().filter(d -> d.longest() || d.is(plan)).toList();
    List<Division> own =
        listed.stream()
            .filter(d -> d.best() || d.plan().protocol().equals(plan.protocol()))
            .toList();
    List<Division> others = listed.stream().filter(d -> !own.contains(d)).toList();
    List<Row> rows = new ArrayList<>(rows(plan, own, words));
    rows.addAll(rows(plan, others, words));
    String day = words.upright().map(upright -> words.day() + " " + upright).orElseGet(words::day);
    return new PlanDivisions(day, rows, own.size(), words.notes());
  }

  /** Bars of rows that stand together have one scale. */
  private static List<Row> rows(Plan plan, List<Division> divisions, DivideWords words) {
    double most = divisions.stream().mapToDouble(Division::most).max().orElse(1);
    double scale = Math.max(most, Double.isNaN(words.worthwhile()) ? 0 : words.worthwhile());
    return divisions.stream().map(each -> row(plan, each, words, scale)).toList();
  }

  private static Row row(Plan plan, Division division, DivideWords words, double most) {
    List<String> ends = words.ends(division);
    return new Row(
        division,
        division.plan().protocol().title(),
        words.cells(division),
        words.line(division),
        division.is(plan),
        shape(division, words),
        new RangeBar(
            division.least(),
            division.most(),
            most,
            words.worthwhile(),
            ends.get(0),
            ends.get(1),
            new Spoken(words.shown(division), "")));
  }

  private static DayShape shape(Division division, DivideWords words) {
    Schedule schedule = division.schedule();
    Plan plan = division.plan();
    Timetable table = java.util.Objects.requireNonNull(plan.timetable());
    List<DayShape.Block> blocks = new ArrayList<>();
    for (Schedule.Block block : schedule.blocks()) {
      double from = minutes(schedule, block.from());
      double ride = minutes(schedule, block.ride());
      double to = minutes(schedule, block.to());
      switch (block.kind()) {
        case WARM_UP, REST -> blocks.add(new DayShape.Block(DayShape.Kind.PAUSE, from, to));
        case FIRST_HANDLING -> blocks.add(new DayShape.Block(DayShape.Kind.HANDLING, from, ride));
        case STINT -> {
          blocks.add(new DayShape.Block(DayShape.Kind.HANDLING, from, ride));
          double settling = settling(plan, table);
          double each = (to - ride - settling) / plan.laps().scored();
          for (int lap = 0; lap < plan.laps().scored(); lap++) {
            double at = ride + settling + lap * each;
            blocks.add(new DayShape.Block(DayShape.Kind.LAP, at, at + each));
          }
        }
      }
    }
    return new DayShape(
        blocks, minutes(schedule, schedule.limit()), new Spoken(words.finish(division), ""));
  }

  private static double settling(Plan plan, Timetable table) {
    BigDecimal lap = table.lap().add(table.climb());
    return lap.multiply(BigDecimal.valueOf(plan.laps().settling())).doubleValue();
  }

  private static double minutes(Schedule schedule, ZonedDateTime at) {
    return Duration.between(schedule.start(), at).toSeconds() / 60.0;
  }
}
