package blindlap.session;

import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plan.Sector;
import blindlap.plan.TrailVersion;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * What a recording says of one measure on one lap: the time between two passes.
 *
 * @param seconds from the pass of the first gate to that of the last
 * @param uncertainty standard deviation of it, in seconds, the errors of both passes being taken as
 *     independent (docs/method.md#gates)
 * @param voided true if a sector on its way is void
 */
public record RecordedTime(BigDecimal seconds, BigDecimal uncertainty, boolean voided) {
  /** Digits after the point of an uncertainty: far below what any recorder can tell. */
  private static final int DECIMALS = 4;

  /**
   * The time of a measure on a lap; empty if a pass is missing, and for what no recording can give.
   *
   * @param voidSectors sectors of the lap that are void, from 0
   */
  static Optional<RecordedTime> of(
      RecordedLap lap, Set<Integer> voidSectors, Plan plan, Measure measure) {
    boolean whole = measure.kind() == Measure.Kind.LAP_TIME;
    if (!whole && measure.timing().sector() == null) {
      return Optional.empty();
    }
    int first = first(plan, measure);
    int last = whole ? lap.passes().size() - 1 : last(plan, measure);
    if (first < 0 || last <= first || last >= lap.passes().size()) {
      return Optional.empty();
    }
    RecordedPass from = lap.passes().get(first);
    RecordedPass to = lap.passes().get(last);
    BigDecimal before = from.seconds();
    BigDecimal after = to.seconds();
    if (before == null || after == null || after.compareTo(before) <= 0) {
      return Optional.empty();
    }
    return Optional.of(
        new RecordedTime(
            after.subtract(before),
            both(from.uncertainty(), to.uncertainty()),
            voidSectors.stream().anyMatch(sector -> sector >= first && sector < last)));
  }

  private static int first(Plan plan, Measure measure) {
    Sector sector = measure.timing().sector();
    TrailVersion trail = plan.trailVersion();
    return sector == null ? 0 : trail == null ? -1 : trail.gate(sector.from());
  }

  private static int last(Plan plan, Measure measure) {
    Sector sector = measure.timing().sector();
    TrailVersion trail = plan.trailVersion();
    return sector == null || trail == null ? -1 : trail.gate(sector.to());
  }

  private static BigDecimal both(@Nullable BigDecimal one, @Nullable BigDecimal other) {
    double first = one == null ? 0 : one.doubleValue();
    double second = other == null ? 0 : other.doubleValue();
    return BigDecimal.valueOf(Math.hypot(first, second)).setScale(DECIMALS, RoundingMode.HALF_EVEN);
  }
}
