package blindlap.paper;

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
    new ReportPlan(input, page).write();
    new ReportDay(input, page).write();
    new ReportAnalysis(input, page).write();
    new ReportSeal(input, page).write();
    return new ReportDocument(
        page,
        ReportPage.WORDS.say("title", input.state().plan().title(), input.state().plan().day()),
        input.ink(),
        input.engine());
  }
}
