package blindlap.review;

import blindlap.plan.Plan;
import blindlap.plan.Timetable;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.Sampling;
import blindlap.stats.tell.WaitTest;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Whether the waits between stints told the rider what was done in them.
 *
 * @param handlings what is known of handlings, in order; empty where nothing is, or the day was not
 *     blind
 * @param test both questions; empty where they were not asked
 * @param untested why they were not; empty if they were, and where nothing is known
 */
public record Waits(
    List<Timed> handlings, Optional<WaitTest> test, Optional<WaitTest.Untested> untested) {
  private static final Waits NONE = new Waits(List.of(), Optional.empty(), Optional.empty());

  /** Why a wait is left out, whatever the order. */
  public enum Left {
    /** The first stint: nothing was changed before it. */
    FIRST,
    /** A planned rest lies in it. */
    REST,
    /** The helper declared a mishap. */
    MISHAP
  }

  /**
   * A handling.
   *
   * @param real true if what was on the bike changed, by the helper's record where there is one;
   *     the first handling of a day is a full one
   * @param left why its wait does not count; empty if it does
   */
  public record Timed(Handling handling, boolean real, Optional<Left> left) {
    /** The wait, if it is known and counts. */
    public Optional<Double> counts() {
      return Optional.ofNullable(handling.waited())
          .filter(wait -> left.isEmpty())
          .map(Number::doubleValue);
    }
  }

  public Waits {
    handlings = List.copyOf(handlings);
  }

  static Waits of(DayRecord day, Assignments set) {
    if (!day.plan().blinding().blinded() || day.handlings().isEmpty()) {
      return NONE;
    }
    List<Timed> timed = timed(day);
    double[] seconds = seconds(timed, day.plan().stints());
    int[] order = day.key().setups();
    Optional<WaitTest.Untested> why = WaitTest.untested(order, seconds);
    if (why.isEmpty() && day.nullRun()) {
      why = Optional.of(WaitTest.Untested.ONE_KIND); // one setup throughout: nothing but dummies
    }
    return new Waits(
        timed,
        why.isPresent()
            ? Optional.empty()
            : Optional.of(WaitTest.of(set, order, seconds, Sampling.PREFERRED)),
        why);
  }

  /** What is known of a day's handlings, untested. */
  public static List<Timed> timed(DayRecord day) {
    List<Timed> timed = new ArrayList<>();
    for (Handling handling : day.handlings().values()) {
      if (handling.stint() <= day.lastStint()) {
        timed.add(new Timed(handling, real(day, handling.stint()), left(day.plan(), handling)));
      }
    }
    return timed;
  }

  private static boolean real(DayRecord day, int stint) {
    int[] fitted = day.asFitted();
    if (stint == 0) {
      return true;
    }
    if (stint == 1) {
      return day.plan().laps().warmUp() == 0 || day.key().warmUp() != fitted[0];
    }
    return !day.nullRun() && fitted[stint - 1] != fitted[stint - 2];
  }

  private static Optional<Left> left(Plan plan, Handling handling) {
    int stint = handling.stint();
    if (stint <= 1) {
      return Optional.of(Left.FIRST);
    }
    Timetable table = plan.timetable();
    if (table != null && table.restEvery() > 0 && (stint - 1) % table.restEvery() == 0) {
      return Optional.of(Left.REST);
    }
    @Nullable String mishap = handling.mishap();
    return mishap == null ? Optional.empty() : Optional.of(Left.MISHAP);
  }

  private static double[] seconds(List<Timed> timed, int stints) {
    double[] seconds = new double[stints];
    Arrays.fill(seconds, Double.NaN);
    for (Timed each : timed) {
      if (each.handling().stint() > 0) {
        seconds[each.handling().stint() - 1] = each.counts().orElse(Double.NaN);
      }
    }
    return seconds;
  }

  /** The waits that count, one per stint of the plan, in seconds; NaN where there is none. */
  public double[] seconds(int stints) {
    return seconds(handlings, stints);
  }

  /** Number of waits that count. */
  public int counted() {
    return (int) handlings.stream().filter(each -> each.counts().isPresent()).count();
  }

  /** Handlings that took longer than planned. */
  public List<Timed> overruns() {
    return handlings.stream().filter(each -> !each.handling().overrun().isZero()).toList();
  }

  /** Known waits that were left out for a reason. */
  public List<Timed> leftOut() {
    return handlings.stream()
        .filter(each -> each.handling().waited() != null && each.left().isPresent())
        .toList();
  }
}
