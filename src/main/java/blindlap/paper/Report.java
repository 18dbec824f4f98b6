package blindlap.paper;

import blindlap.wording.Words;

/**
 * The report of a session: one source, as a self-contained HTML page and as PDF. Two pages for the
 * reader in a hurry, then the full record (docs/report-items.md).
 */
public final class Report {
  private final ReportDocument document;

  private Report(ReportInput input) {
    ReportPage page = new ReportPage(input.ink());
    new ReportFront(input, page).write();
    new ReportPlan(input, page).write();
    new ReportDay(input, page).write();
    new ReportAnalysis(input, page).write();
    new ReportSeal(input, page).write();
    this.document =
        new ReportDocument(
            page,
            ReportPage.WORDS.say("title", input.state().plan().title(), input.state().plan().day()),
            input.ink(),
            input.engine());
  }

  /** The report, written once, to be taken out in both forms. */
  public static Report of(ReportInput input) {
    return new Report(input);
  }

  /** One HTML page that needs nothing else; its fonts are in it. */
  public String html() {
    return document.html();
  }

  /** The page in text only: what the golden files hold. */
  public String body() {
    return document.body();
  }

  /** The PDF, with bookmarks, language and alternative texts. */
  public byte[] pdf() {
    return document.pdf();
  }

  static String caution(String key) {
    return Words.of("cautions").say(key);
  }
}
