package blindlap.screen.book;

import blindlap.fault.TypedNumber;
import blindlap.plan.Measure;
import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Whether a file's times can be in the unit that is chosen for them. */
final class OldDayUnit {
  private static final Map<String, BigDecimal> SECONDS =
      Map.of("s", BigDecimal.ONE, "ms", new BigDecimal("0.001"), "min", BigDecimal.valueOf(60));

  private static final BigDecimal LEAST_LAP = BigDecimal.TEN;
  private static final BigDecimal MOST_LAP = BigDecimal.valueOf(3 * 3600);
  private static final BigDecimal LEAST_SECTOR = BigDecimal.ONE;
  private static final BigDecimal MOST_SECTOR = BigDecimal.valueOf(3600);

  private OldDayUnit() {}

  /**
   * The first cell that cannot be a time in a unit: no lap takes under 10 seconds or over 3 hours,
   * no sector under a second or over an hour. Cells in m:ss.s have their unit with them.
   */
  static Optional<String> impossible(Measure.Kind kind, String unit, List<String> cells) {
    BigDecimal factor = SECONDS.get(unit);
    if (!kind.timed() || factor == null) {
      return Optional.empty();
    }
    boolean sector = kind == Measure.Kind.SECTOR_TIME;
    return cells.stream()
        .filter(cell -> cell.indexOf(':') < 0)
        .filter(
            cell ->
                TypedNumber.number(cell)
                    .map(number -> number.multiply(factor))
                    .filter(
                        time ->
                            time.compareTo(sector ? LEAST_SECTOR : LEAST_LAP) < 0
                                || time.compareTo(sector ? MOST_SECTOR : MOST_LAP) > 0)
                    .isPresent())
        .findFirst();
  }
}
