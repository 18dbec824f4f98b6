package blindlap.screen.swap;

import blindlap.plan.Plan;
import blindlap.session.HelperEntry;
import java.time.Clock;
import java.time.Duration;
import java.util.function.LongSupplier;
import org.jspecify.annotations.Nullable;

/**
 * The time that every handling takes, real or dummy alike, and what of it is over. It hangs on the
 * plan and on how long earlier handlings took, never on what is to be fitted.
 */
final class SwapTime {
  private final SwapCountdown countdown;
  private Duration raised = Duration.ZERO;

  SwapTime(Clock wall, LongSupplier monotonic) {
    this.countdown = new SwapCountdown(wall, monotonic);
  }

  /** Takes up a stint's handling. */
  void follow(HelperEntry entry) {
    countdown.follow(entry);
  }

  /** By how much an overrun of an earlier handling has raised every one from now on. */
  void raise(Duration by) {
    raised = by;
  }

  Duration raise() {
    return raised;
  }

  /** What every handling takes; zero without a timetable. */
  Duration whole(Plan plan, int stint) {
    Duration planned = SwapPace.handling(plan, stint);
    return planned.isZero() ? planned : planned.plus(raised);
  }

  /** What is left of it; all of it before the handling begins. */
  Duration left(Plan plan, int stint) {
    return countdown.left(whole(plan, stint));
  }

  /** True if the handling has taken so much longer that it is asked whether a mishap did it. */
  boolean overrun(Plan plan, int stint) {
    return !HelperEntry.Timing.over(given(plan, stint), countdown.gone()).isZero();
  }

  /** How long the handling has taken now, with the answer whether a mishap made it so. */
  HelperEntry.Timing timing(Plan plan, HelperEntry entry) {
    HelperEntry.Timing before = entry.timing();
    Duration given = given(plan, entry.stint());
    return before == null || !overrun(plan, entry.stint())
        ? new HelperEntry.Timing(given, countdown.gone(), null, "")
        : new HelperEntry.Timing(given, countdown.gone(), before.mishap(), before.words());
  }

  private @Nullable Duration given(Plan plan, int stint) {
    Duration whole = whole(plan, stint);
    return whole.isZero() ? null : whole;
  }
}
