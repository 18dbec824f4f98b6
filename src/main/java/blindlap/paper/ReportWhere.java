package blindlap.paper;

import blindlap.picture.WherePicture;
import blindlap.review.Finding;
import blindlap.wording.WhereSectorWords;
import blindlap.wording.WhereWords;
import java.util.List;

/** Where on the trail the difference arises, after the pages for the reader in a hurry. */
final class ReportWhere {
  private static final double INTERVAL = 130;

  private final ReportPage page;
  private final Finding finding;

  ReportWhere(Finding finding, ReportPage page) {
    this.page = page;
    this.finding = finding;
  }

  /** Nothing where nothing was recorded. */
  void write() {
    WhereWords.of(finding).ifPresent(this::write);
  }

  private void write(WhereWords words) {
    WherePicture picture = WherePicture.of(finding).orElseThrow();
    page.h2("where").p(words.headline());
    picture
        .line()
        .ifPresent(
            line -> {
              page.note(words.pictured());
              page.figure(line);
            });
    List<List<String>> rows = words.rows().stream().map(row -> cells(row, picture)).toList();
    if (!rows.isEmpty()) {
      page.table("wide", words.columns(), rows);
    }
    words.how().forEach(page::note);
    page.list(words.worth());
    words.recorder().ifPresent(page::p);
  }

  private List<String> cells(WhereSectorWords.Row row, WherePicture picture) {
    return List.of(
        both(row.name(), row.under()),
        picture.interval(row).map(drawing -> page.svg(drawing, INTERVAL)).orElse(""),
        both(row.difference(), row.limits()),
        "<strong>" + Html.text(row.answer()) + "</strong> " + Html.text(row.evidence()));
  }

  private static String both(String strong, String under) {
    return strong.isEmpty()
        ? ""
        : "<strong>" + Html.text(strong) + "</strong><br />" + Html.text(under);
  }
}
