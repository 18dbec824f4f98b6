package blindlap.paper;

import blindlap.review.DayRecord;
import blindlap.session.SessionState;
import blindlap.wording.TellingText;

/** The report of a telling run: two pages for the reader in a hurry, then the full record. */
public final class TellingReport {
  private TellingReport() {}

  /** The report, written once, to be taken out in both forms. */
  public static ReportDocument of(TellingReportInput input) {
    ReportPage page = new ReportPage(input.ink());
    SessionState state = input.state();
    DayRecord day = input.analysis().day();
    TellingText text = new TellingText(input.analysis());
    new TellingReportFront(input, text, page).write();
    new ReportPlan(state, text.headline().text(), TellingText.limits(), page).write();
    new ReportDay(state, day, ReportDay.said(input.analysis()), page).write();
    new TellingReportAnalysis(input, text, page).write();
    new ReportSeal(state, day.key(), input.beside(), input.engine(), page).write();
    return new ReportDocument(
        page,
        ReportPage.WORDS.say("title", state.plan().title(), state.plan().day()),
        input.ink(),
        input.engine());
  }
}
