package blindlap.paper;

import blindlap.review.DayRecord;
import blindlap.review.Finding;
import blindlap.session.SessionState;
import blindlap.wording.FindingText;

/**
 * The report of a session: two pages for the reader in a hurry, then the full record
 * (docs/report-items.md).
 */
public final class Report {
  private Report() {}

  /** The report, written once, to be taken out in both forms. */
  public static ReportDocument of(ReportInput input) {
    ReportPage page = new ReportPage(input.ink());
    new ReportFront(input, page).write();
    new ReportWhere(input.finding(), page).write();
    new ReportProfiles(input, page).write();
    SessionState state = input.state();
    Finding finding = input.finding();
    DayRecord day = finding.day();
    String result = new FindingText(finding).headline().text();
    new ReportPlan(state, result, FindingText.limits(state.plan()), page).write();
    new ReportDay(state, day, ReportDay.said(finding), page).write();
    new ReportAnalysis(input, page).write();
    new ReportSeal(state, day.key(), input.beside(), input.engine(), page).write();
    return new ReportDocument(
        page,
        ReportPage.WORDS.say("title", input.state().plan().title(), input.state().plan().day()),
        input.ink(),
        input.engine());
  }
}
