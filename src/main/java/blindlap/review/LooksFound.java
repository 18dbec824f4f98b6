package blindlap.review;

import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.stats.compare.OneDifference;
import blindlap.stats.compare.Verdict;
import blindlap.stats.distribution.Interval;
import blindlap.stats.look.PrefixRule;
import blindlap.stats.order.Assignments;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * What the looks before the end of a day come to (docs/method.md#looks).
 *
 * @param seen the looks that were taken, in order
 * @param untaken last stints of declared looks that the day went past without taking
 * @param p the smallest level at which a look, or the end, shows that the setups differ
 * @param left share of the level that the end had left; empty where the day was stopped early
 * @param settledAt the first look that said "you may stop"
 * @param stopped true if the day was ended early after a look had said so
 * @param lastStint the last stint of the day
 */
public record LooksFound(
    List<Seen> seen,
    List<Integer> untaken,
    double p,
    OptionalDouble left,
    OptionalInt settledAt,
    boolean stopped,
    int lastStint) {
  /**
   * A look.
   *
   * @param look as it was taken
   * @param agrees false if its values and the opened order say otherwise than people read
   * @param changed stints whose value is another now than the look used; not applied to it
   */
  public record Seen(TakenLook look, boolean agrees, List<Integer> changed) {
    public Seen {
      changed = List.copyOf(changed);
    }
  }

  public LooksFound {
    seen = List.copyOf(seen);
    untaken = List.copyOf(untaken);
  }

  /**
   * Of a day on which a look was taken.
   *
   * @param now one value per stint as they are now
   */
  static LooksFound of(DayRecord day, Assignments set, int[] order, Measure primary, double[] now) {
    Plan plan = day.plan();
    List<TakenLook> looks = day.looks();
    OptionalInt settledAt =
        looks.stream().filter(TakenLook::settled).mapToInt(TakenLook::stint).findFirst();
    boolean stopped = day.cutShort() && settledAt.isPresent();
    PrefixRule taken = LooksOfDay.taken(plan, set, order, primary, looks);
    PrefixRule rule = stopped ? taken : LooksOfDay.ended(plan, set, order, primary, looks, now);
    OptionalDouble left =
        stopped
            ? OptionalDouble.empty()
            : OptionalDouble.of(rule.left(LooksOfDay.LEVEL, looks.size() + 1));
    List<Integer> untaken =
        plan.looks().stream()
            .filter(l -> l <= day.lastStint() && looks.stream().noneMatch(t -> t.stint() == l))
            .toList();
    return new LooksFound(
        seen(plan, primary, looks, taken.crossedAt(LooksOfDay.LEVEL), now),
        untaken,
        rule.p(),
        left,
        settledAt,
        stopped,
        day.lastStint());
  }

  private static List<Seen> seen(
      Plan plan, Measure primary, List<TakenLook> looks, int crossed, double[] now) {
    List<Seen> seen = new ArrayList<>();
    for (int i = 0; i < looks.size(); i++) {
      TakenLook look = looks.get(i);
      double[] then = LooksOfDay.stints(look, plan, primary);
      List<Integer> changed = new ArrayList<>();
      for (int stint = 1; stint <= look.stint(); stint++) {
        if (Double.compare(then[stint - 1], now[stint - 1]) != 0) {
          changed.add(stint);
        }
      }
      boolean settled = crossed > 0 && crossed <= i + 1;
      seen.add(new Seen(look, settled == look.settled(), changed));
    }
    return seen;
  }

  /** True if it is shown at level .05 that the setups differ. */
  public boolean real() {
    return p <= LooksOfDay.LEVEL + 1e-12;
  }

  /** True if stints were ridden after people had read that the setups differ. */
  public boolean knewTheyDiffer() {
    return settledAt.isPresent() && lastStint > settledAt.getAsInt();
  }

  /** True if stints were ridden after people had read "ride on". */
  public boolean knewNothingLarge() {
    return seen.stream().anyMatch(s -> !s.look().settled() && s.look().stint() < lastStint);
  }

  /** Stints whose values changed after a look had used them. */
  public List<Integer> changed() {
    return seen.isEmpty() ? List.of() : seen.get(seen.size() - 1).changed();
  }

  /** The verdict: real by the looks, its size by the curve; no size after an early stop. */
  Verdict verdict(OneDifference result, Interval band) {
    if (result.noVariation()) {
      return Verdict.NO_VARIATION;
    }
    if (stopped) {
      return real() ? Verdict.DIRECTION_KNOWN : Verdict.NOT_SETTLED;
    }
    return Verdict.of(result.curve(), band.low(), band.high(), real());
  }
}
