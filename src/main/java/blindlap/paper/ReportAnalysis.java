package blindlap.paper;

import static blindlap.paper.ReportPage.WORDS;

import blindlap.exchange.FindingRequests;
import blindlap.review.Comparison;
import blindlap.review.Finding;
import blindlap.review.ManyComparison;
import blindlap.session.SessionState;
import blindlap.stats.ManySetups;
import blindlap.wording.AmendmentWords;
import blindlap.wording.FindingText;
import blindlap.wording.Words;
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
    page.h3("others.words").list(text.others());
    page.h3("exact");
    exact();
    page.h3("method").list(formulas());
    page.h3("requests").p(WORDS.say("requests.text"));
    for (FindingRequests.Named named : FindingRequests.of(finding)) {
      page.p(COMPUTED.say(named.about(), named.measure()));
      page.pre(named.json());
    }
    page.h3("interpretation").p(WORDS.say("interpretation.text"));
    amendments();
  }

  private void exact() {
    List<List<String>> rows = new ArrayList<>();
    finding.comparisons().forEach(c -> rows.add(row(c)));
    finding.many().forEach(m -> m.result().pairs().forEach(p -> rows.add(row(m, p))));
    page.table(
        List.of(
            WORDS.say("th.measure"),
            WORDS.say("th.estimate"),
            "95 %",
            "90 %",
            WORDS.say("th.noise"),
            WORDS.say("th.df"),
            "p",
            WORDS.say("th.p.adjusted"),
            WORDS.say("th.verdict")),
        rows);
    page.note(WORDS.say("exact.note"));
  }

  private static List<String> row(Comparison c) {
    return List.of(
        ReportPage.cell(c.measure().name()),
        cell(c.estimate()),
        interval(c, 0.95),
        interval(c, 0.90),
        cell(c.result().noiseSd()),
        ReportPage.cell(String.valueOf(c.result().df())),
        c.tested() ? cell(c.p()) : "–",
        c.adjusted().isPresent() ? cell(c.adjusted().getAsDouble()) : "–",
        ReportPage.cell(c.verdict().map(blindlap.stats.Verdict::text).orElse("–")));
  }

  private static List<String> row(ManyComparison many, ManySetups.Pair pair) {
    return List.of(
        ReportPage.cell(many.measure().name() + " " + pair.name()),
        cell(many.measure().scale().back(pair.estimate())),
        "–",
        "–",
        cell(many.result().noiseSd()),
        ReportPage.cell(String.valueOf(many.result().df())),
        cell(pair.p()),
        cell(pair.pAdjusted()),
        "–");
  }

  private static String cell(double number) {
    return ReportPage.cell(blindlap.wording.Figures.exact(number));
  }

  private static String interval(Comparison c, double level) {
    return c.interval(level).map(i -> cell(i.low()) + " to " + cell(i.high())).orElse("–");
  }

  private static List<String> formulas() {
    return COMPUTED.keys().stream()
        .filter(key -> key.startsWith("formula."))
        .sorted()
        .map(key -> COMPUTED.say(key))
        .toList();
  }

  private void amendments() {
    if (state.amendments().isEmpty()) {
      return;
    }
    page.h2("amendments").p(WORDS.say("amendments.text")).list(AmendmentWords.lines(state));
  }
}
