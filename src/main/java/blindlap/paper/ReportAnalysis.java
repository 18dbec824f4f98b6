package blindlap.paper;

import static blindlap.paper.ReportPage.WORDS;

import blindlap.compute.FindingRequests;
import blindlap.review.Comparison;
import blindlap.review.Finding;
import blindlap.review.ManyComparison;
import blindlap.session.SessionState;
import blindlap.stats.compare.ManySetups;
import blindlap.wording.AmendmentWords;
import blindlap.wording.FindingText;
import blindlap.wording.FormulaWords;
import blindlap.wording.day.Figures;
import blindlap.wording.day.Words;
import java.util.ArrayList;
import java.util.List;

/** The full record, third part: how the numbers came about. */
final class ReportAnalysis {
  private static final Words COMPUTED = Words.of("computed");

  private final ReportPage page;
  private final SessionState state;
  private final Finding finding;
  private final FindingText text;

  ReportAnalysis(ReportInput input, ReportPage page) {
    this.page = page;
    this.state = input.state();
    this.finding = input.finding();
    this.text = new FindingText(finding);
  }

  void write() {
    page.h2("analysis").p(text.sentence()).list(text.evidence());
    new ReportLevels(finding, page).analysis();
    page.h3("others.words").list(text.others());
    if (!finding.day().plan().oneDifference() && text.next().size() > 1) {
      // The front has room for its first line only.
      page.h3("next.whole").list(text.next());
    }
    page.h3("exact");
    exact();
    page.h3("method").list(FormulaWords.of(finding));
    page.h3("requests").p(WORDS.say("requests.text"));
    for (FindingRequests.Named named : FindingRequests.of(finding)) {
      page.p(COMPUTED.say(named.about(), named.measure()));
      page.pre(named.json());
    }
    page.h3("interpretation").p(WORDS.say("interpretation.text"));
    amendments();
  }

  /** Two tables, since one would be wider than the page. */
  private void exact() {
    List<List<String>> sizes = new ArrayList<>();
    List<List<String>> tests = new ArrayList<>();
    for (Comparison c : (Iterable<Comparison>) finding.comparisons()::iterator) {
      String name = ReportPage.cell(c.measure().name());
      sizes.add(List.of(name, cell(c.estimate()), interval(c, 0.95), interval(c, 0.90)));
      tests.add(
          List.of(
              name,
              cell(c.result().noiseSd()),
              ReportPage.cell(String.valueOf(c.result().df())),
              c.tested() ? cell(c.p()) : "–",
              c.adjusted().isPresent() ? cell(c.adjusted().getAsDouble()) : "–",
              ReportPage.cell(c.verdictText().orElse("–"))));
    }
    if (!sizes.isEmpty()) {
      page.table(heads("th.measure", "th.estimate", "th.95", "th.90"), sizes);
      page.table(
          heads("th.measure", "th.noise", "th.df", "th.p.alone", "th.p.adjusted", "th.verdict"),
          tests);
    }
    finding.many().forEach(this::exact);
    page.note(WORDS.say(finding.trend().isPresent() ? "exact.note.levels" : "exact.note"));
    new ReportLevels(finding, page).exact();
  }

  private void exact(ManyComparison many) {
    List<List<String>> rows = new ArrayList<>();
    for (ManySetups.Pair pair : many.result().pairs()) {
      rows.add(
          List.of(
              ReportPage.cell(many.measure().name() + " " + pair.name()),
              cell(many.measure().scale().back(pair.estimate())),
              many.interval(pair).map(i -> cell(i.low()) + " to " + cell(i.high())).orElse("–"),
              cell(many.said(pair.p())),
              cell(many.said(pair.pAdjusted()))));
    }
    page.table(heads("th.measure", "th.estimate", "th.95.pairs", "th.p.alone", "th.p.pairs"), rows);
    page.note(
        WORDS.say(
            "exact.many",
            many.measure().name(),
            exact(many.result().f()),
            exact(many.said(many.result().p())),
            many.adjusted().isPresent() ? Figures.exact(many.adjusted().getAsDouble()) : "–",
            Figures.exact(many.result().noiseSd()),
            many.result().df()));
  }

  private static List<String> heads(String... keys) {
    return java.util.Arrays.stream(keys).map(WORDS::say).toList();
  }

  private static String cell(double number) {
    return ReportPage.cell(exact(number));
  }

  private static String exact(double number) {
    return Double.isFinite(number) ? Figures.exact(number) : "–";
  }

  private static String interval(Comparison c, double level) {
    return c.interval(level).map(i -> cell(i.low()) + " to " + cell(i.high())).orElse("–");
  }

  private void amendments() {
    if (state.amendments().isEmpty()) {
      return;
    }
    page.h2("amendments").p(WORDS.say("amendments.text")).list(AmendmentWords.lines(state));
  }
}
