package blindlap.screen.swap;

import blindlap.plan.Plan;
import blindlap.plan.Schedule;
import blindlap.plan.Timetable;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Duration;
import java.time.Instant;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * How the day runs against its timetable.
 *
 * @param late how late; zero if on time or early
 * @param end when the day will be over at this pace
 * @param limit when riding must be over
 * @param withoutRests true if dropping the rests still to come makes the day fit
 * @param mostStints the last stint that can still be ridden before the limit, rests kept
 */
record SwapPace(
    Duration late, ZonedDateTime end, ZonedDateTime limit, boolean withoutRests, int mostStints) {

  /** How long every handling takes, real or dummy alike; zero without a timetable. */
  static Duration handling(Plan plan, int stint) {
    Timetable table = plan.timetable();
    if (table == null) {
      return Duration.ZERO;
    }
    Duration swap = minutes(table.swap());
    return stint == 0 ? swap : swap.plus(minutes(table.coolDown()));
  }

  private static Duration minutes(BigDecimal minutes) {
    return Duration.ofMillis(
        minutes.multiply(BigDecimal.valueOf(60_000)).setScale(0, RoundingMode.HALF_UP).longValue());
  }

  /** When the handling of a stint starts by the timetable. */
  static Optional<ZonedDateTime> from(Plan plan, int stint) {
    return block(plan, stint).map(Schedule.Block::from);
  }

  /** When a stint is ridden by the timetable. */
  static Optional<ZonedDateTime> ride(Plan plan, int stint) {
    return block(plan, stint).map(Schedule.Block::ride);
  }

  private static Optional<Schedule.Block> block(Plan plan, int stint) {
    return Schedule.of(plan).map(s -> stint == 0 ? s.blocks().get(0) : s.stints().get(stint - 1));
  }

  /**
   * The pace before a stint.
   *
   * @param begun when its handling began; null if it has not
   * @param raised by how much this handling and each after it takes longer than planned
   */
  static Optional<SwapPace> of(
      Plan plan, int stint, @Nullable Instant begun, Instant now, Duration raised) {
    Optional<Schedule> found = Schedule.of(plan);
    if (found.isEmpty()) {
      return Optional.empty();
    }
    Schedule schedule = found.get();
    Instant planned = from(plan, stint).orElseThrow().toInstant();
    Instant ready = begun == null ? now : begun;
    Duration late = Duration.between(planned, ready);
    if (begun != null) {
      // Past the time of every handling each further minute is a minute late.
      Duration over = Duration.between(planned.plus(handling(plan, stint)).plus(raised), now);
      late = over.compareTo(late) > 0 ? over : late;
    }
    late = late.isNegative() ? Duration.ZERO : late;
    int handlings = plan.stints() - Math.max(stint, 1) + (stint == 0 ? 2 : 1);
    ZonedDateTime end = schedule.end().plus(late).plus(raised.multipliedBy(handlings));
    Duration rests = rests(schedule, planned);
    boolean without = end.isAfter(schedule.limit()) && !end.minus(rests).isAfter(schedule.limit());
    return Optional.of(
        new SwapPace(late, end, schedule.limit(), without, most(schedule, stint, late, raised)));
  }

  private static Duration rests(Schedule schedule, Instant after) {
    return schedule.blocks().stream()
        .filter(b -> b.kind() == Schedule.Kind.REST && b.from().toInstant().isAfter(after))
        .map(b -> Duration.between(b.from(), b.to()))
        .reduce(Duration.ZERO, Duration::plus);
  }

  private static int most(Schedule schedule, int from, Duration late, Duration raised) {
    List<Schedule.Block> stints = schedule.stints();
    int most = 0;
    for (Schedule.Block block : stints) {
      Duration longer = raised.multipliedBy(Math.max(0, block.stint() - from + 1));
      if (!block.to().plus(late).plus(longer).isAfter(schedule.limit())) {
        most = block.stint();
      }
    }
    return most;
  }

  /** True if the day ends before its limit at this pace. */
  boolean fits() {
    return !end.isAfter(limit);
  }
}
