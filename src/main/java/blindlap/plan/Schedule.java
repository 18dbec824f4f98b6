package blindlap.plan;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.IntPredicate;

/**
 * The day against the clock, stint by stint. Durations are elapsed time, so that midnight and a
 * change of the clocks shift what the clock shows, never how long the day is.
 *
 * @param blocks in order, without gaps
 * @param limit when riding must be over
 */
public record Schedule(List<Block> blocks, ZonedDateTime limit) {

  /** What a block of time is for. */
  public enum Kind {
    /** Fitting the warm-up setup. */
    FIRST_HANDLING,
    WARM_UP,
    /** A stint with the handling before it. */
    STINT,
    REST
  }

  /**
   * A block of time.
   *
   * @param kind what it is for
   * @param stint the stint, from 1; 0 if it is none
   * @param from its start; for a stint the start of cool-down and swap
   * @param ride when riding starts; the same as from if nothing is handled
   * @param to its end
   */
  public record Block(
      Kind kind, int stint, ZonedDateTime from, ZonedDateTime ride, ZonedDateTime to) {}

  /** What can be taken out of a day that is too long. */
  public enum Drop {
    /** Fewer stints, in whole blocks. */
    STINTS,
    /** Fewer trials of a telling run. */
    TRIALS,
    /** All rests. */
    RESTS,
    /** All settling laps. */
    SETTLING_LAPS,
    /** All warm-up laps but one. */
    WARM_UP_LAPS
  }

  /**
   * One way of making the day fit.
   *
   * @param drop what is taken out
   * @param left how many are left of it
   * @param end when the day would be over
   */
  public record Way(Drop drop, int left, ZonedDateTime end) {}

  public Schedule {
    blocks = List.copyOf(blocks);
  }

  /** The schedule of a plan; empty if it has no timetable. */
  public static Optional<Schedule> of(Plan plan) {
    return plan.timetable() == null
        ? Optional.empty()
        : Optional.of(of(plan, plan.timetable(), plan.laps(), plan.stints()));
  }

  /** The schedule of a day with this many stints of any plan but a telling run. */
  public static Schedule of(Timetable table, LocalDate day, Plan.Laps laps, int stints) {
    return of(table, day, laps, stints, stint -> true);
  }

  private static Schedule of(Plan plan, Timetable table, Plan.Laps laps, int stints) {
    return of(table, plan.day(), laps, stints, scored(plan));
  }

  /**
   * After which stints somebody is asked. A trial is answered after its last lap, and nobody is
   * asked before unless measures are recorded beside the answers.
   */
  private static IntPredicate scored(Plan plan) {
    TellingRun run = plan.kind() == Plan.Kind.TELLING_RUN ? plan.telling() : null;
    int every = run == null || !plan.askedOnTheDay().isEmpty() ? 1 : run.task().laps();
    return stint -> stint % every == 0;
  }

  private static Schedule of(
      Timetable table, LocalDate day, Plan.Laps laps, int stints, IntPredicate scored) {
    ZonedDateTime at = day.atTime(table.start()).atZone(table.zone());
    List<Block> blocks = new ArrayList<>();
    Duration lap = minutes(table.lap()).plus(minutes(table.climb()));
    if (laps.warmUp() > 0) {
      at = add(blocks, Kind.FIRST_HANDLING, 0, at, minutes(table.swap()), Duration.ZERO);
      at = add(blocks, Kind.WARM_UP, 0, at, Duration.ZERO, lap.multipliedBy(laps.warmUp()));
    }
    Duration handling = minutes(table.coolDown()).plus(minutes(table.swap()));
    Duration riding = lap.multipliedBy(laps.perStint());
    Duration scoring = minutes(table.scoring()).multipliedBy(laps.scored());
    for (int stint = 1; stint <= stints; stint++) {
      if (table.restEvery() > 0 && stint > 1 && (stint - 1) % table.restEvery() == 0) {
        at = add(blocks, Kind.REST, 0, at, Duration.ZERO, minutes(table.rest()));
      }
      Duration ridden = scored.test(stint) ? riding.plus(scoring) : riding;
      at = add(blocks, Kind.STINT, stint, at, handling, ridden);
    }
    return new Schedule(blocks, limit(table, day));
  }

  private static ZonedDateTime add(
      List<Block> blocks,
      Kind kind,
      int stint,
      ZonedDateTime from,
      Duration handling,
      Duration riding) {
    ZonedDateTime ride = from.plus(handling);
    ZonedDateTime to = ride.plus(riding);
    blocks.add(new Block(kind, stint, from, ride, to));
    return to;
  }

  /** The end of daylight: on the next day if its clock time is not after the start. */
  private static ZonedDateTime limit(Timetable table, LocalDate day) {
    LocalTime end = table.daylightEnd();
    LocalDate on = end.isAfter(table.start()) ? day : day.plusDays(1);
    return on.atTime(end).atZone(table.zone());
  }

  private static Duration minutes(BigDecimal minutes) {
    BigDecimal millis = minutes.movePointRight(3).multiply(BigDecimal.valueOf(60));
    return Duration.ofMillis(millis.setScale(0, RoundingMode.HALF_UP).longValue());
  }

  /** When the first handling starts. */
  public ZonedDateTime start() {
    return blocks.get(0).from();
  }

  /** When the last lap is scored and the bike is back. */
  public ZonedDateTime end() {
    return blocks.get(blocks.size() - 1).to();
  }

  /** Time left before the limit; negative if the day is too long. */
  public Duration spare() {
    return Duration.between(end(), limit);
  }

  /** True if the day is over before its limit. */
  public boolean fits() {
    return !spare().isNegative();
  }

  /** The stints in order. */
  public List<Block> stints() {
    return blocks.stream().filter(b -> b.kind() == Kind.STINT).toList();
  }

  /** Stints that are not over before the limit, in order. */
  public List<Block> inTheDark() {
    return stints().stream().filter(block -> block.to().isAfter(limit)).toList();
  }

  /**
   * Time that dropping everything of one sort, or the fewest stints, would need; only ways that do.
   */
  public static List<Way> waysToFit(Plan plan) {
    Timetable table = plan.timetable();
    List<Way> ways = new ArrayList<>();
    if (table == null || of(plan, table, plan.laps(), plan.stints()).fits()) {
      return ways;
    }
    Plan.Laps laps = plan.laps();
    way(ways, Drop.RESTS, 0, of(plan, table.withoutRests(), laps, plan.stints()));
    Plan.Laps settled = new Plan.Laps(laps.warmUp(), 0, laps.scored());
    way(ways, Drop.SETTLING_LAPS, 0, of(plan, table, settled, plan.stints()));
    Plan.Laps cold = new Plan.Laps(Math.min(1, laps.warmUp()), laps.settling(), laps.scored());
    way(ways, Drop.WARM_UP_LAPS, cold.warmUp(), of(plan, table, cold, plan.stints()));
    int most = mostStints(plan);
    TellingRun run = plan.kind() == Plan.Kind.TELLING_RUN ? plan.telling() : null;
    if (most > 0) {
      int left = run == null ? most : most / run.task().laps();
      way(ways, run == null ? Drop.STINTS : Drop.TRIALS, left, of(plan, table, laps, most));
    }
    return ways;
  }

  private static void way(List<Way> ways, Drop drop, int left, Schedule schedule) {
    if (schedule.fits()) {
      ways.add(new Way(drop, left, schedule.end()));
    }
  }

  /**
   * The largest number of stints, in whole blocks, that daylight and lap budget leave room for; 0
   * if not even one block fits, without a timetable as many as the kind of plan may have.
   */
  public static int mostStints(Plan plan) {
    return mostStints(plan, plan.laps());
  }

  /** The same with other laps a stint. */
  public static int mostStints(Plan plan, Plan.Laps planned) {
    Integer block = plan.protocol().block();
    int step = block == null || block < 1 ? Math.max(1, plan.setups().size()) : block;
    int most = 0;
    for (int n = step; n <= plan.kind().mostStints(); n += step) {
      Timetable table = plan.timetable();
      if (table != null) {
        Integer budget = table.lapBudget();
        int laps = planned.warmUp() + n * planned.perStint();
        if (budget != null && laps > budget || !of(plan, table, planned, n).fits()) {
          return most;
        }
      }
      most = n;
    }
    return most;
  }
}
