package blindlap.paper;

import static blindlap.paper.ReportPage.WORDS;
import static blindlap.paper.ReportPage.cell;

import blindlap.compute.FindingRequests;
import blindlap.compute.TellingJson;
import blindlap.review.TellingFinding;
import blindlap.review.TellingTrial;
import blindlap.stats.tell.Telling;
import blindlap.wording.AmendmentWords;
import blindlap.wording.TellingText;
import blindlap.wording.TellingWords;
import blindlap.wording.day.Figures;
import blindlap.wording.day.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** The full record of a telling run, third part: every trial, and how the numbers came about. */
final class TellingReportAnalysis {
  private static final Words COMPUTED = Words.of("computed");

  private final TellingReportInput input;
  private final TellingFinding finding;
  private final TellingText text;
  private final ReportPage page;

  TellingReportAnalysis(TellingReportInput input, TellingText text, ReportPage page) {
    this.input = input;
    this.finding = input.analysis().finding();
    this.text = text;
    this.page = page;
  }

  void write() {
    page.h2("analysis").p(text.headline().text()).p(text.lead());
    trials();
    page.h3("exact");
    exact();
    page.h3("method").list(text.method());
    text.measures().ifPresent(page::p);
    page.h3("requests").p(WORDS.say("requests.text"));
    for (FindingRequests.Named named : TellingJson.requests(input.analysis())) {
      page.p(COMPUTED.say(named.about(), named.measure()));
      page.pre(named.json());
    }
    page.h3("interpretation").p(WORDS.say("interpretation.telling"));
    if (!input.state().amendments().isEmpty()) {
      page.h2("amendments")
          .p(WORDS.say("amendments.text"))
          .list(AmendmentWords.lines(input.state()));
    }
  }

  private void trials() {
    List<List<String>> rows = new ArrayList<>();
    for (TellingTrial trial : finding.trials()) {
      rows.add(
          List.of(
              cell(String.valueOf(trial.number())),
              cell(String.valueOf(trial.differed())),
              cell(String.valueOf(trial.named())),
              cell(TellingWords.answer(trial.right())),
              cell(TellingWords.sureness(trial.sureness()))));
    }
    page.h3("trials.all")
        .table(heads("th.trial", "th.was", "th.named", "th.answer", "th.sure"), rows);
  }

  private void exact() {
    Telling telling = finding.telling();
    page.table(
        heads("th.correct", "th.trials", "th.p.alone", "th.told", "th.told.90", "th.verdict"),
        List.of(
            List.of(
                cell(String.valueOf(telling.right())),
                cell(String.valueOf(telling.run().number())),
                cell(Figures.exact(telling.p())),
                cell(Figures.exact(telling.share())),
                cell(
                    Figures.exact(telling.limits().low())
                        + " to "
                        + Figures.exact(telling.limits().high())),
                cell(telling.verdict().text()))));
  }

  private static List<String> heads(String... keys) {
    return Stream.of(keys).map(WORDS::say).toList();
  }
}
