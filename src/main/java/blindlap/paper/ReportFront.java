package blindlap.paper;

import static blindlap.paper.ReportPage.WORDS;

import blindlap.picture.FindingPictures;
import blindlap.picture.GuessPicture;
import blindlap.plan.Measure;
import blindlap.plan.NoiseKnown;
import blindlap.plan.Plan;
import blindlap.plot.surface.Drawing;
import blindlap.review.Comparison;
import blindlap.review.Finding;
import blindlap.review.ManyComparison;
import blindlap.stats.compare.Scale;
import blindlap.stats.order.Assignments;
import blindlap.stats.power.DayPower;
import blindlap.stats.power.Detectable;
import blindlap.stats.power.StepsPower;
import blindlap.wording.AmendmentWords;
import blindlap.wording.CovariateWords;
import blindlap.wording.EndNames;
import blindlap.wording.FindingText;
import blindlap.wording.FindingWords;
import blindlap.wording.ManyWords;
import blindlap.wording.day.Figures;
import java.util.ArrayList;
import java.util.List;

/** The two pages for a reader in a hurry: the answer, its pictures, the other measures. */
final class ReportFront {
  private final ReportInput input;
  private final ReportPage page;
  private final Finding finding;
  private final Plan plan;
  private final FindingText text;
  private final FindingPictures pictures;

  ReportFront(ReportInput input, ReportPage page) {
    this.input = input;
    this.page = page;
    this.finding = input.finding();
    this.plan = input.finding().day().plan();
    this.text = new FindingText(finding);
    this.pictures = new FindingPictures(finding);
  }

  void write() {
    ReportHead.write(page, plan, text.headline(), text.lead());
    text.underVerdict(input.beside()).forEach(page::p);
    text.circumstances().forEach(page::p);
    AmendmentWords.mark(input.state()).ifPresent(page::p);
    pictures.difference().ifPresent(this::picture);
    new ReportLevels(finding, page).front();
    page.list(text.sensitivities());
    CovariateWords.pictured(finding).ifPresent(page::note);
    page.raw("<div class=\"two\">\n<div class=\"column\">\n");
    fixed();
    page.raw("</div>\n<div class=\"column\">\n");
    ridden();
    page.raw("</div>\n</div>\n");
    page.h2("pictures");
    page.beside(pictures.riddenOrder(), pictures.curve());
    page.h2("others");
    others();
    page.h2("blind").p(text.guesses());
    GuessPicture.of(finding).ifPresent(page::small);
    text.waits().forEach(page::p);
    page.p(text.voids());
    next();
    page.caution(ReportPage.cautionWords("trust") + " " + ReportPage.cautionWords("short"));
  }

  /** Of levels and of several setups more stands under the picture. */
  private void picture(Drawing drawing) {
    if (plan.steps() != null) {
      page.small(drawing);
    } else if (plan.setups().size() > 2) {
      page.several(drawing);
    } else {
      page.figure(drawing);
    }
  }

  /** Pairs fill the page: of what next the first line; the whole stands under Analysis. */
  private void next() {
    long most = plan.oneDifference() ? Long.MAX_VALUE : 1;
    List<String> next = text.next().stream().limit(most).toList();
    if (!next.isEmpty()) {
      page.h2("next").list(next);
    }
  }

  private void fixed() {
    Measure primary = plan.primary().orElseThrow();
    String matters =
        primary.worthwhile() == null
            ? ""
            : WORDS.say("matters", primary.name(), FindingWords.worthwhile(primary));
    page.h2("fixed")
        .facts(
            "question", plan.question(),
            "expected", plan.expectations().tester(),
            "primary", matters,
            "stints",
                WORDS.say(
                    "stints.rule",
                    plan.stints(),
                    plan.protocol().title(),
                    Figures.count(finding.orders().count())),
            "could", couldShow());
  }

  /**
   * What the plan could show with the noise that was declared, on 8 of 10 such days: a range where
   * it hangs on how much of it the laps of a stint share.
   */
  private String couldShow() {
    if (plan.noise() == null || !plan.oneDifference()) {
      return "";
    }
    Measure primary = plan.primary().orElseThrow();
    Assignments set = plan.rule().assignments();
    DayPower power =
        plan.steps() == null
            ? DayPower.of(set, primary.drift())
            : StepsPower.of(set, plan.levelNumbers(), primary.drift()).trend();
    Detectable day = power.formula();
    NoiseKnown noise = NoiseKnown.of(plan);
    boolean ratio = primary.scale() == Scale.RATIO;
    double most = said(day.difference(noise.sd(), 0.8), ratio);
    double least = said(day.difference(noise.least(), 0.8), ratio);
    if (Double.isNaN(most) || !power.formulaHolds() || noise.kind() == NoiseKnown.Kind.UNKNOWN) {
      return "";
    }
    String unit = ratio ? "%" : primary.unit();
    if (noise.split()) {
      String upper = Figures.near(most);
      return WORDS.say("could.show.split", Figures.alike(least, upper), upper, unit);
    }
    return WORDS.say("could.show", Figures.number(most, Figures.decimals(most)), unit);
  }

  private static double said(double difference, boolean ratio) {
    return ratio ? 100 * Math.expm1(difference) : difference;
  }

  private void ridden() {
    List<String> facts = new ArrayList<>();
    finding
        .primary()
        .ifPresent(
            p -> {
              FindingWords words = text.words(p);
              facts.addAll(List.of("used", words.used(), "noise", words.noise()));
            });
    finding.many().stream()
        .filter(m -> m.measure().role() == Measure.Role.PRIMARY)
        .map(text::words)
        .forEach(w -> facts.addAll(List.of("used", w.used(), "noise", w.noise(finding.day()))));
    facts.addAll(List.of("days", WORDS.say("on", plan.day(), plan.trail(), plan.conditions())));
    page.h2("ridden").facts(facts.toArray(new String[0]));
  }

  private void others() {
    List<List<String>> rows = new ArrayList<>();
    finding.others().forEach(other -> rows.add(row(other)));
    finding.many().stream()
        .filter(m -> m.measure().role() != Measure.Role.PRIMARY)
        .forEach(other -> rows.add(row(other)));
    if (rows.isEmpty()) {
      page.list(text.others());
      return;
    }
    page.table(plan.oneDifference() ? "wide" : "wide pairs", heads(), rows);
    // With more setups both stand under Analysis, where every pair has its sentence.
    if (plan.oneDifference()) {
      page.list(text.watchedHarms());
      page.note(WORDS.say("others.note"));
    }
  }

  private List<String> heads() {
    return plan.oneDifference()
        ? List.of(
            WORDS.say("th.measure"),
            WORDS.say("th.stints"),
            WORDS.say("th.difference"),
            WORDS.say("th.less", plan.ends().get(1), EndNames.of(plan).bare().get(0)),
            WORDS.say("th.p"))
        : List.of(
            WORDS.say("th.measure"),
            WORDS.say("th.stints"),
            WORDS.say("th.pairs"),
            WORDS.say("th.p.any"));
  }

  private static String name(Measure measure) {
    return "<strong>"
        + Html.text(measure.name())
        + "</strong><br />"
        + Html.text(FindingWords.role(measure));
  }

  private List<String> row(Comparison other) {
    FindingWords words = text.words(other);
    return List.of(
        name(other.measure()),
        pictures.small(other.measure(), other.stints()).map(d -> page.svg(d, 150)).orElse(""),
        page.svg(pictures.small(other), 130),
        "<strong>"
            + Html.text(words.signed())
            + "</strong><br />"
            + Html.text(words.signedInterval(0.95)),
        Html.text(p(other)));
  }

  private List<String> row(ManyComparison other) {
    ManyWords words = text.words(other);
    return List.of(
        name(other.measure()),
        pictures.small(other.measure(), other.stints()).map(d -> page.svg(d, 120)).orElse(""),
        String.join("<br />", words.cells().stream().map(Html::text).toList()),
        other.tested() ? Html.text(Figures.p(other.adjusted().orElse(other.result().p()))) : "–");
  }

  private static String p(Comparison other) {
    if (!other.tested()) {
      return "–";
    }
    return Figures.p(other.adjusted().orElse(other.p()));
  }
}
