package blindlap.paper;

import blindlap.wording.ProfilesFoundWords;
import java.util.List;
import java.util.stream.Collectors;

/** Who should look at what: the profiles beside the finding, each with the finding's sentences. */
final class ReportProfiles {
  private final ReportInput input;
  private final ReportPage page;

  ReportProfiles(ReportInput input, ReportPage page) {
    this.input = input;
    this.page = page;
  }

  /** Nothing where no profile stands beside the finding. */
  void write() {
    ProfilesFoundWords.of(input.finding(), input.beside().profiles())
        .ifPresent(words -> write(page, words.rows(), ProfilesFoundWords.note()));
  }

  /** The same beside anything. */
  static void write(ReportPage page, List<ProfilesFoundWords.Row> rows, String note) {
    page.h2("profiles")
        .table(
            "wide profiles",
            ProfilesFoundWords.heads(),
            rows.stream().map(ReportProfiles::cells).toList())
        .note(note);
  }

  private static List<String> cells(ProfilesFoundWords.Row row) {
    String mark = row.mark().isEmpty() ? "" : "<br />" + Html.text(row.mark());
    return List.of(
        "<strong>" + Html.text(row.name()) + "</strong>" + mark,
        Html.text(row.measures()),
        row.sentences().stream().map(Html::text).collect(Collectors.joining("<br />")));
  }
}
