package blindlap.desk;

import blindlap.compute.Engine;
import blindlap.fault.Problem;
import blindlap.paper.ReportDocument;
import blindlap.paper.ReportInput;
import blindlap.paper.SeriesReport;
import blindlap.review.SeriesFinding;
import blindlap.session.SessionState;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Reports of series. Before the end of a series there is none. */
public final class SeriesReports {
  private final SeriesBook book;

  SeriesReports(SeriesBook book) {
    this.book = book;
  }

  /** What became of a report. */
  public sealed interface Result {
    /** HTML and PDF by file name. */
    record Made(Map<String, byte[]> files) implements Result {
      public Made {
        files = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(files));
      }
    }

    /** Nothing was made. */
    record Refused(List<Problem> problems) implements Result {
      public Refused {
        problems = List.copyOf(problems);
      }
    }
  }

  /**
   * Makes the report of a series.
   *
   * @param black black on white instead of colour
   */
  public Result of(String series, boolean black) {
    Optional<SeriesFinding> finding = book.finding(series);
    Optional<Problem> refused = refusal(series, finding);
    if (refused.isPresent()) {
      return new Result.Refused(List.of(refused.get()));
    }
    ReportDocument report =
        SeriesReport.of(
            new SeriesReport.Input(
                finding.orElseThrow(),
                fingerprints(series, finding.orElseThrow()),
                book.elsewhere(finding.orElseThrow()),
                Engine.version(),
                black ? ReportInput.Ink.BLACK : ReportInput.Ink.COLOUR));
    String name = "series-" + series.replaceAll("[^A-Za-z0-9_-]", "_");
    Map<String, byte[]> files = new LinkedHashMap<>();
    files.put(name + ".html", report.html().getBytes(StandardCharsets.UTF_8));
    files.put(name + ".pdf", report.pdf());
    return new Result.Made(files);
  }

  /** Why nothing is handed out of a series: there is none by that name, or it is not at its end. */
  static Optional<Problem> refusal(String series, Optional<SeriesFinding> finding) {
    if (finding.isEmpty()) {
      return Optional.of(Problem.of(DeskFault.NO_SUCH_SERIES, "", series));
    }
    SeriesFinding.Progress progress = finding.get().progress();
    return finding.get().open()
        ? Optional.empty()
        : Optional.of(
            Problem.of(
                DeskFault.SERIES_SEALED,
                "",
                series,
                progress.unsealed(),
                progress.declared().orElse(progress.sessions())));
  }

  private List<SeriesReport.Fingerprints> fingerprints(String series, SeriesFinding finding) {
    List<SeriesReport.Fingerprints> found = new ArrayList<>();
    for (SessionState state : book.of(series)) {
      boolean pooled =
          finding.parts().stream()
              .anyMatch(
                  p ->
                      p.session().equals(state.id().text())
                          && p.fate() == SeriesFinding.Fate.POOLED);
      if (pooled) {
        found.add(
            new SeriesReport.Fingerprints(
                state.id().brief(),
                state.planFingerprint().grouped(),
                state.reviewFingerprint().map(f -> f.grouped()).orElse("")));
      }
    }
    return found;
  }
}
