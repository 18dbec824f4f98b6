package blindlap.paper;

import static blindlap.paper.ReportPage.WORDS;
import static blindlap.paper.ReportPage.cell;

import blindlap.compute.SeriesRequests;
import blindlap.picture.SeriesPictures;
import blindlap.plan.Measure;
import blindlap.review.SeriesFinding;
import blindlap.stats.distribution.Interval;
import blindlap.wording.Headline;
import blindlap.wording.SeriesWords;
import blindlap.wording.day.Figures;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The report of a series at its end. */
public final class SeriesReport {
  /**
   * Everything it is made of.
   *
   * @param finding of a series at its end
   * @param fingerprints of plan and review of each pooled session, by its short id
   * @param elsewhere other sessions that ask the same, in words
   * @param engine version of the program
   * @param ink colour, or black on white
   */
  public record Input(
      SeriesFinding finding,
      List<Fingerprints> fingerprints,
      List<String> elsewhere,
      String engine,
      ReportInput.Ink ink) {
    public Input {
      fingerprints = List.copyOf(fingerprints);
      elsewhere = List.copyOf(elsewhere);
      if (!finding.open()) {
        throw new IllegalArgumentException("A series has no report before its end");
      }
    }
  }

  /** Fingerprints of a session, in groups of letters. */
  public record Fingerprints(String session, String plan, String review) {}

  private final Input input;
  private final SeriesFinding finding;
  private final SeriesWords words;
  private final ReportPage page;

  private SeriesReport(Input input) {
    this.input = input;
    this.finding = input.finding();
    this.words = new SeriesWords(finding);
    this.page = new ReportPage(input.ink());
  }

  /**
   * The report, written once, to be taken out in both forms.
   *
   * @throws IllegalArgumentException before the end of the series
   */
  public static ReportDocument of(Input input) {
    SeriesReport report = new SeriesReport(input);
    report.write();
    return new ReportDocument(
        report.page, WORDS.say("series.title", report.finding.id()), input.ink(), input.engine());
  }

  private void write() {
    front();
    declared();
    sessions();
    page.h2("series.elsewhere");
    page.list(
        input.elsewhere().isEmpty()
            ? List.of(WORDS.say("series.elsewhere.none"))
            : input.elsewhere());
    method();
    fingerprints();
    page.raw("</main>\n");
  }

  private void front() {
    page.raw("<header class=\"running\">");
    page.raw("<span class=\"brand\">" + Html.text(WORDS.say("brand")) + "</span> ");
    page.raw(Html.text(WORDS.say("series.running", finding.id(), finding.parts().size())));
    page.raw("</header>\n<main>\n");
    page.raw("<p class=\"question\">" + Html.text(finding.question()) + "</p>\n");
    Headline headline = words.headline();
    page.raw("<h1>" + Html.text(headline.before()));
    if (!headline.phrase().isEmpty()) {
      page.raw("<span class=\"phrase\">" + Html.text(headline.phrase()) + "</span>");
    }
    page.raw(Html.text(headline.after()) + "</h1>\n");
    words.circumstances().forEach(page::p);
    if (!words.reason().isEmpty()) {
      page.raw("<p class=\"lead\">" + Html.text(words.reason()) + "</p>\n");
    }
    words.lead().forEach(line -> page.raw("<p class=\"lead\">" + Html.text(line) + "</p>\n"));
    new SeriesPictures(finding).pooled().ifPresent(page::figure);
    page.note(WORDS.say("series.picture"));
    if (!finding.others().isEmpty()) {
      page.h2("series.measures").list(words.measures());
    }
    if (finding.riders().size() > 1) {
      page.h2("series.riders").list(words.riders()).list(words.agreement());
    }
    page.caution(ReportPage.cautionWords("trust.series") + " " + ReportPage.cautionWords("short"));
  }

  private void declared() {
    Measure measure = finding.measure();
    page.h2("fixed")
        .facts(
            "question", finding.question(),
            "series.setups", words.setups(),
            "primary", measure.name(),
            "series.worthwhile", words.worthwhile(),
            "series.declared",
                finding.declared().map(String::valueOf).orElse(WORDS.say("series.declared.none")));
  }

  private void sessions() {
    List<List<String>> rows = new ArrayList<>();
    for (SeriesWords.Row row : words.rows()) {
      rows.add(
          List.of(
              cell(row.day()),
              cell(row.rider()),
              cell(row.session()),
              cell(row.standing()),
              cell(row.result().isEmpty() ? "–" : row.result())));
    }
    page.h2("series.sessions")
        .table(
            List.of(
                WORDS.say("series.th.day"),
                WORDS.say("series.th.rider"),
                WORDS.say("series.th.session"),
                WORDS.say("series.th.standing"),
                WORDS.say("series.th.result")),
            rows);
  }

  private void method() {
    page.h2("method");
    page.list(
        List.of(
            WORDS.say("series.method.these"),
            WORDS.say("series.method.general"),
            WORDS.say("series.method.uneven"),
            WORDS.say("series.method.rider"),
            WORDS.say("series.method.repeats")));
    page.h3("exact");
    exact();
    List<SeriesRequests.Named> requests = SeriesRequests.of(finding);
    if (!requests.isEmpty()) {
      page.h3("requests").p(WORDS.say("requests.text"));
      for (SeriesRequests.Named request : requests) {
        page.p(WORDS.say("series.request." + request.about()));
        page.pre(request.json());
      }
    }
    page.p(WORDS.say("series.recompute", finding.id(), input.engine()));
  }

  private void exact() {
    List<List<String>> rows = new ArrayList<>();
    for (SeriesFinding.Part part : finding.parts()) {
      part.estimate()
          .ifPresent(
              e ->
                  rows.add(
                      row(
                          part.session().substring(0, 8) + ", " + part.rider(),
                          e,
                          part.interval95(),
                          part.interval90())));
    }
    finding.riders().stream()
        .filter(r -> r.sessions() > 1 && !Double.isNaN(r.estimate()))
        .forEach(r -> rows.add(row(r.name(), r.estimate(), r.interval95(), r.interval90())));
    finding
        .these()
        .ifPresent(
            t ->
                rows.add(
                    row(
                        WORDS.say("series.exact.these"),
                        t.estimate(),
                        t.curve().interval(0.95),
                        t.curve().interval(0.90))));
    finding
        .general()
        .ifPresent(
            g ->
                rows.add(
                    row(
                        WORDS.say("series.exact.general"),
                        g.estimate(),
                        Optional.of(g.interval95()),
                        Optional.of(g.interval90()))));
    page.table(List.of("", WORDS.say("th.estimate"), "95 %", "90 %"), rows);
    page.note(WORDS.say("series.exact.note"));
  }

  private static List<String> row(
      String name, double estimate, Optional<Interval> wide, Optional<Interval> ninety) {
    return List.of(cell(name), number(estimate), interval(wide), interval(ninety));
  }

  /** A number stays on one line: broken behind its point it would read as another. */
  private static String number(double number) {
    return "<span style=\"white-space: nowrap\">" + cell(Figures.exact(number)) + "</span>";
  }

  private static String interval(Optional<Interval> interval) {
    return interval.map(i -> number(i.low()) + " to " + number(i.high())).orElse("–");
  }

  private void fingerprints() {
    page.h2("series.fingerprints").p(WORDS.say("series.fingerprints.text"));
    for (Fingerprints each : input.fingerprints()) {
      page.p(WORDS.say("series.fingerprint.plan", each.session()));
      page.code(each.plan());
      if (!each.review().isEmpty()) {
        page.p(WORDS.say("series.fingerprint.review", each.session()));
        page.code(each.review());
      }
    }
  }
}
