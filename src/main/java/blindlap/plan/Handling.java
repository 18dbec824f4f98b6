package blindlap.plan;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * How a level of one setting is set, on a steps day or in a telling run, from whatever level is on,
 * so that an ear that hears the handling learns nothing
 * (docs/method.md#handling-that-tells-nothing). The same for real and dummy swaps: a level is taken
 * off and set again.
 */
public sealed interface Handling {

  /**
   * Clicks of a dial, counted from one of its ends: to that end, out by the detour and back, out to
   * the level. All of them together are the same at every handling of the day.
   *
   * @param first true where nobody knows what is on: the way to the end is not counted then
   * @param in clicks to the end
   * @param detour clicks out from the end, and back again
   * @param out clicks out to the level
   * @param beside 1 where an odd number is left, which no detour can take: a click that is made
   *     beside the bike; else 0
   */
  record Clicks(boolean first, int in, int detour, int out, int beside) implements Handling {
    /** What an ear counts. */
    public int heard() {
      return in + 2 * detour + out + beside;
    }

    /** What wears the dial. */
    public int onTheDial() {
      return heard() - beside;
    }
  }

  /**
   * A pressure: let down, pumped up, let down to the level, whatever was in.
   *
   * @param low as typed in
   * @param high as typed in
   * @param to the level
   */
  record Pressure(BigDecimal low, BigDecimal high, BigDecimal to) implements Handling {}

  /** Taken off whole and fitted again, even where it comes back as it was. */
  record Refit() implements Handling {}

  /** Most clicks that anyone counts out at one handling. */
  int MOST_CLICKS = 400;

  /** True for a level that can be counted out: whole clicks from an end. */
  static boolean countable(BigDecimal level) {
    return level.signum() >= 0
        && level.stripTrailingZeros().scale() <= 0
        && level.compareTo(BigDecimal.valueOf(MOST_CLICKS / 2)) <= 0;
  }

  /**
   * The handling from one level of a plan to another; empty where its setups are no levels, or
   * these are not such as {@link PlanCheck} lets through.
   *
   * @param from index of the setup that is really on; null where nobody knows
   * @param to index of the setup to fit
   */
  static Optional<Handling> of(Plan plan, @Nullable Integer from, int to) {
    StepsDay steps = plan.oneSetting();
    Optional<List<BigDecimal>> levels = plan.levels();
    if (steps == null || levels.isEmpty()) {
      return Optional.empty();
    }
    List<BigDecimal> values = levels.get();
    BigDecimal on = from == null ? null : values.get(from);
    return Optional.ofNullable(
        switch (steps.way()) {
          case CLICKS -> clicks(values, on, values.get(to));
          case PRESSURE -> pressure(steps, values.get(to));
          case REFIT -> new Refit();
        });
  }

  private static @Nullable Handling pressure(StepsDay steps, BigDecimal to) {
    BigDecimal low = steps.low();
    BigDecimal high = steps.high();
    return low == null || high == null ? null : new Pressure(low, high, to);
  }

  private static @Nullable Handling clicks(
      List<BigDecimal> levels, @Nullable BigDecimal from, BigDecimal to) {
    if (!levels.stream().allMatch(Handling::countable)) {
      return null;
    }
    int all = clicks(levels);
    int in = from == null ? 0 : from.intValueExact();
    int out = to.intValueExact();
    // Never beyond the largest level ridden, since in + out is at least nought.
    int detour = (all - in - out) / 2;
    return new Clicks(from == null, in, detour, out, all - in - out - 2 * detour);
  }

  /** Clicks of every handling: twice the largest level, the least that goes for all of them. */
  private static int clicks(List<BigDecimal> levels) {
    return 2 * levels.stream().mapToInt(BigDecimal::intValueExact).max().orElse(0);
  }

  /** Clicks that an ear counts at every handling of a plan; empty where nothing is counted. */
  static Optional<Integer> clicks(Plan plan) {
    return of(plan, null, 0)
        .flatMap(each -> each instanceof Clicks c ? Optional.of(c.heard()) : Optional.empty());
  }
}
