package blindlap.paper;

import static blindlap.paper.ReportPage.WORDS;

import blindlap.picture.TellingPictures;
import blindlap.plan.Plan;
import blindlap.plan.TellingRun;
import blindlap.review.TellingFinding;
import blindlap.wording.AmendmentWords;
import blindlap.wording.TellingText;
import blindlap.wording.TellingWords;
import java.util.Objects;

/** The pages for a reader in a hurry: can the rider tell, every trial, right answers and chance. */
final class TellingReportFront {
  private final TellingReportInput input;
  private final ReportPage page;
  private final Plan plan;
  private final TellingFinding finding;
  private final TellingText text;
  private final TellingWords words;

  TellingReportFront(TellingReportInput input, TellingText text, ReportPage page) {
    this.input = input;
    this.page = page;
    this.plan = input.state().plan();
    this.finding = input.analysis().finding();
    this.text = text;
    this.words = text.words();
  }

  void write() {
    ReportHead.write(page, plan, text.headline(), text.lead());
    text.underVerdict(input.beside()).forEach(page::p);
    text.circumstances().forEach(page::p);
    AmendmentWords.mark(input.state()).ifPresent(page::p);
    page.h2("every.trial").figure(TellingPictures.strip(finding, words));
    page.h2("against.chance").figure(TellingPictures.axis(finding, words));
    page.raw("<div class=\"turn\"></div>\n");
    page.raw("<div class=\"two\">\n<div class=\"column\">\n");
    fixed();
    page.raw("</div>\n<div class=\"column\">\n");
    page.h2("ridden")
        .facts(
            "answered",
            WORDS.say("answered.of", finding.trials().size(), finding.declared().number()),
            "void.trials",
            words.voids(),
            "days",
            WORDS.say("on", plan.day(), plan.trail(), plan.conditions()));
    page.raw("</div>\n</div>\n");
    page.h2("read.count");
    text.waits().forEach(page::p);
    page.p(words.whyTitle() + ": " + words.why());
    page.p(words.sureTitle() + ": " + String.join(" ", words.sure()));
    words.distance().ifPresent(page::p);
    page.p(words.notSaid());
    page.caution(ReportPage.cautionWords("trust") + " " + ReportPage.cautionWords("short"));
  }

  private void fixed() {
    TellingRun run = Objects.requireNonNull(plan.telling());
    page.h2("fixed")
        .facts(
            "question", plan.question(),
            "expected", plan.expectations().tester(),
            "said.before", plan.expectations().rider(),
            "trials.fixed", WORDS.say("trials.of", run.trials(), run.task().laps()),
            "would.matter",
                WORDS.say(
                    "would.matter.share",
                    run.matters().movePointRight(2).stripTrailingZeros().toPlainString()));
  }
}
