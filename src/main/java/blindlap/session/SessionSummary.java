package blindlap.session;

import blindlap.plan.BlindLevel;
import blindlap.plan.Plan;
import blindlap.session.day.SessionId;
import blindlap.session.day.Step;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A session as a list shows it. Derived from entries, kept for speed, never the truth; nothing of
 * it depends on a key.
 *
 * @param id which session
 * @param kind comparison, open noise run or steps day
 * @param level how blind a comparison is; the usual one, with a helper, for a noise run
 * @param question what the tester wants to know
 * @param rider who rides
 * @param trail where
 * @param day the day of riding
 * @param setups names of the setups in the plan's order; of a steps day, whose levels are none by
 *     themselves, the plan's title alone
 * @param series id of the series; null for a session of its own
 * @param looks last stints of the looks before the end that the plan declares; mostly empty
 * @param committedAt when the plan was committed
 * @param step where it stands
 * @param verdict the verdict in words; empty until it is unsealed and someone has put it here
 * @param reason why it was abandoned; empty if it was not
 */
public record SessionSummary(
    SessionId id,
    Plan.Kind kind,
    BlindLevel level,
    String question,
    String rider,
    String trail,
    LocalDate day,
    List<String> setups,
    @Nullable String series,
    List<Integer> looks,
    Instant committedAt,
    Step step,
    String verdict,
    String reason) {
  public SessionSummary {
    setups = List.copyOf(setups);
    looks = List.copyOf(looks);
  }

  /** The summary of a folded session, without a verdict. */
  public static SessionSummary of(SessionState state) {
    return of(
        state.id(),
        state.plan(),
        state.committedAt(),
        state.step(),
        state.abandonedBecause().orElse(""));
  }

  /** The summary of a plan at a step, without a verdict. */
  public static SessionSummary of(SessionId id, Plan plan, Instant committedAt, Step step) {
    return of(id, plan, committedAt, step, "");
  }

  private static SessionSummary of(
      SessionId id, Plan plan, Instant committedAt, Step step, String reason) {
    return new SessionSummary(
        id,
        plan.kind(),
        plan.level(),
        plan.question(),
        plan.rider(),
        plan.trail(),
        plan.day(),
        plan.steps() == null && plan.telling() == null
            ? plan.setups().stream().map(setup -> setup.name()).toList()
            : List.of(plan.title()),
        plan.series(),
        plan.looks(),
        committedAt,
        step,
        "",
        reason);
  }

  /** "Shock K against Shock L", as {@link Plan#title}. */
  public String title() {
    return Plan.title(setups, level);
  }
}
