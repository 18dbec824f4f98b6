package blindlap.plan;

import java.math.BigDecimal;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;

/** Checks of the day: laps, durations, daylight, lap budget. */
final class DayCheck {
  private static final int MOST_LAPS = 9;
  private static final BigDecimal MOST_MINUTES = BigDecimal.valueOf(24 * 60);
  private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);
  private static final DateTimeFormatter DAY_AND_CLOCK =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT);

  private final Plan plan;
  private final FoundProblems problems;

  DayCheck(Plan plan, FoundProblems problems) {
    this.plan = plan;
    this.problems = problems;
  }

  void all() {
    range("laps.warm_up", plan.laps().warmUp(), 0);
    range("laps.settling", plan.laps().settling(), 0);
    range("laps.scored", plan.laps().scored(), 1);
    Timetable table = plan.timetable();
    if (table == null) {
      return;
    }
    int before = problems.count();
    durations(table);
    if (problems.count() > before
        || plan.stints() < 1
        || plan.stints() > plan.kind().mostStints()) {
      return;
    }
    clock(table);
    budget(table);
  }

  private void range(String where, int value, int least) {
    if (value < least || value > MOST_LAPS) {
      problems.add(PlanFault.LAPS_RANGE, where, value, least, MOST_LAPS);
    }
  }

  private void durations(Timetable table) {
    if (table.lap().signum() == 0) {
      problems.add(PlanFault.LAP_MINUTES, "timetable.lap");
    }
    duration("timetable.lap", table.lap());
    duration("timetable.climb", table.climb());
    duration("timetable.swap", table.swap());
    duration("timetable.scoring", table.scoring());
    duration("timetable.rest", table.rest());
    duration("timetable.cool_down", table.coolDown());
    if (table.restEvery() < 0) {
      problems.add(PlanFault.NEGATIVE, "timetable.rest_every", table.restEvery());
    }
    Integer budget = table.lapBudget();
    if (budget != null && budget < 1) {
      problems.add(PlanFault.NOT_POSITIVE, "timetable.lap_budget", budget);
    }
  }

  private void duration(String where, BigDecimal minutes) {
    if (minutes.signum() < 0 || minutes.compareTo(MOST_MINUTES) > 0) {
      problems.add(
          PlanFault.DURATION_RANGE, where, minutes.toPlainString(), MOST_MINUTES.toPlainString());
    }
  }

  private void clock(Timetable table) {
    ZonedDateTime start = plan.day().atTime(table.start()).atZone(table.zone());
    if (!start.toLocalTime().equals(table.start())) {
      problems.add(PlanFault.START_SKIPPED, "timetable.start", table.start());
    }
    Schedule schedule = Schedule.of(plan).orElseThrow();
    if (!schedule.fits()) {
      boolean sameDay = schedule.end().toLocalDate().equals(schedule.limit().toLocalDate());
      DateTimeFormatter form = sameDay ? CLOCK : DAY_AND_CLOCK;
      problems.add(
          PlanFault.DAY_TOO_LONG,
          "timetable",
          form.format(schedule.end()),
          form.format(schedule.limit()),
          ways());
    }
  }

  private String ways() {
    List<Schedule.Way> ways = Schedule.waysToFit(plan);
    return ways.isEmpty()
        ? "NONE"
        : String.join(",", ways.stream().map(w -> w.drop() + ":" + w.left()).toList());
  }

  private void budget(Timetable table) {
    Integer budget = table.lapBudget();
    int laps = plan.laps().warmUp() + plan.lapsOfDay();
    if (budget != null && laps > budget) {
      int most = Schedule.mostStints(plan);
      TellingRun run = plan.kind() == Plan.Kind.TELLING_RUN ? plan.telling() : null;
      problems.add(
          run == null ? PlanFault.LAP_BUDGET : PlanFault.TELLING_LAP_BUDGET,
          "timetable.lap_budget",
          laps,
          budget,
          run == null ? most : most / run.task().laps());
    }
  }
}
