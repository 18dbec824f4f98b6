package blindlap.paper;

import static blindlap.paper.ReportPage.WORDS;

import blindlap.plan.Plan;
import blindlap.wording.TrialsWords;

/** What a report says of the design of a telling run. */
final class TellingReportPlan {
  private TellingReportPlan() {}

  /** Writes it; false for a plan that is no telling run. */
  static boolean write(Plan plan, ReportPage page) {
    if (plan.telling() == null) {
      return false;
    }
    page.p(
        WORDS.say(
            "design.telling",
            plan.telling().trials(),
            plan.telling().task().laps(),
            plan.laps().warmUp()));
    TrialsWords.of(plan).ifPresent(words -> page.list(words.lead()));
    return true;
  }
}
