package blindlap.store;

import blindlap.session.SessionSummary;
import blindlap.session.day.Step;

/** Changes of a summary over the life of a session. */
final class Summaries {
  private Summaries() {}

  /** The same at a step with a verdict; sealed sessions have none. */
  static SessionSummary with(SessionSummary summary, Step step, String verdict) {
    return new SessionSummary(
        summary.id(),
        summary.kind(),
        summary.unblinded(),
        summary.question(),
        summary.rider(),
        summary.trail(),
        summary.day(),
        summary.setups(),
        summary.series(),
        summary.committedAt(),
        step,
        step.sealed() ? "" : verdict,
        summary.reason());
  }
}
