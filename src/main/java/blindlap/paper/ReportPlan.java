package blindlap.paper;

import static blindlap.paper.ReportPage.WORDS;
import static blindlap.paper.ReportPage.cell;

import blindlap.plan.Blinding;
import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plan.PlanJson;
import blindlap.plan.Setting;
import blindlap.plan.Setup;
import blindlap.plan.StepsDay;
import blindlap.session.Fact;
import blindlap.session.SessionState;
import blindlap.stats.compare.StintSummary;
import blindlap.wording.CovariateWords;
import blindlap.wording.HandlingWords;
import blindlap.wording.LevelWords;
import blindlap.wording.LooksShowWords;
import blindlap.wording.TimingWords;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** The full record, first part: what was fixed before riding. */
final class ReportPlan {
  private final ReportPage page;
  private final SessionState state;
  private final Plan plan;
  private final String result;
  private final String limits;

  /**
   * @param result the answer, beside what was expected
   * @param limits what such a finding cannot say
   */
  ReportPlan(SessionState state, String result, String limits, ReportPage page) {
    this.page = page;
    this.state = state;
    this.plan = state.plan();
    this.result = result;
    this.limits = limits;
  }

  void write() {
    page.raw("<div class=\"record\"></div>\n");
    page.h2("plan");
    design();
    page.facts(
        "question", plan.question(),
        "rider", plan.rider(),
        "trail", plan.trail(),
        "day", plan.day().toString(),
        "conditions", plan.conditions(),
        "change", plan.oneSetting() == null ? PlanJson.word(plan.change()) : "",
        "differences", plan.differencesReason(),
        "looks", LooksShowWords.declared(plan).orElse(""),
        "declared.noise", plan.telling() == null ? noise() : "",
        "override", plan.override(),
        "series", plan.series() == null ? "" : WORDS.say("series.outside", plan.series()),
        "signed", String.join(", ", state.signedBy()));
    page.h3("expectations").list(expectations());
    setups();
    if (!plan.bike().isEmpty()) {
      page.h3("bike").list(plan.bike().stream().map(ReportPlan::setting).toList());
    }
    measures();
    blinding();
    page.h3("limits").p(limits());
  }

  private void design() {
    if (TellingReportPlan.write(plan, page)) {
      return;
    }
    page.p(
        WORDS.say(
            plan.steps() == null ? "design." + plan.level().name() : "design.steps",
            plan.setups().size(),
            plan.stints(),
            plan.protocol().title()));
    page.p(
        WORDS.say(
            medians() ? "laps.summary" : "laps",
            plan.laps().warmUp(),
            plan.laps().settling(),
            plan.laps().scored(),
            plan.rule().block(),
            WORDS.say(plan.steps() == null ? "every.setup" : "every.level")));
  }

  private String limits() {
    String kept = WORDS.say(state.covered() ? "limits.covered" : "limits.text");
    return limits + " " + kept;
  }

  private String noise() {
    return plan.noise() == null
        ? WORDS.say("noise.unknown")
        : WORDS.say("noise.declared", plan.noise().sd().toPlainString(), plan.noise().source());
  }

  private List<String> expectations() {
    Plan.Expectations e = plan.expectations();
    List<String> lines = new ArrayList<>();
    add(lines, "who.TESTER", e.tester());
    add(lines, "who.RIDER", e.rider());
    add(lines, "who.HELPER", e.helper());
    for (Fact.ExpectationGiven given : state.expectations()) {
      add(lines, "who." + given.who().name(), given.text());
    }
    lines.add(WORDS.say("result", result));
    return lines;
  }

  private static void add(List<String> lines, String who, String words) {
    if (!words.isBlank()) {
      lines.add(WORDS.say(who, words));
    }
  }

  private static String setting(Setting setting) {
    String tolerance =
        setting.tolerance() == null ? "" : ", ± " + setting.tolerance().toPlainString();
    return setting.name()
        + ": "
        + setting.value()
        + " "
        + setting.unit()
        + tolerance
        + (setting.equal() ? ", " + WORDS.say("equal") : "");
  }

  /** Levels are one setup with one setting that differs: it is described once. */
  private void setups() {
    StepsDay steps = plan.oneSetting();
    if (steps == null) {
      page.h3("setups");
      plan.setups().forEach(this::setup);
      return;
    }
    page.h3("setup.one").list(HandlingWords.signed(plan));
    Setup one = steps.one(plan.setups().get(0));
    about(one.name(), one);
  }

  private void setup(Setup setup) {
    char letter = (char) ('A' + plan.setups().indexOf(setup));
    about(letter + ": " + setup.name(), setup);
  }

  private void about(String heading, Setup setup) {
    page.raw("<h4>" + Html.text(heading) + "</h4>\n");
    List<String> lines = new ArrayList<>();
    if (!setup.component().isBlank()) {
      lines.add(setup.component());
    }
    setup.settings().forEach(s -> lines.add(setting(s)));
    if (setup.massGrams() != null) {
      lines.add(WORDS.say("mass", setup.massGrams().toPlainString()));
    }
    if (setup.price() != null) {
      lines.add(
          WORDS.say("price", setup.price().currency(), setup.price().amount().toPlainString()));
    }
    setup.limits().forEach(l -> lines.add(WORDS.say("limit", l.what(), l.value(), l.source())));
    setup.cautions().forEach(c -> lines.add(WORDS.say("caution.setup", c)));
    page.list(lines);
  }

  private void measures() {
    if (plan.measures().isEmpty()) {
      return;
    }
    List<List<String>> rows = new ArrayList<>();
    for (Measure m : plan.measures()) {
      rows.add(
          List.of(
              cell(m.name()),
              cell(PlanJson.word(m.kind()) + ", " + m.unit()),
              cell(WORDS.say("role." + m.role().name())),
              cell(WORDS.say("better." + m.better().name())),
              cell(m.worthwhile() == null ? "–" : m.worthwhile().toPlainString()),
              cell(m.drift().text() + ", " + m.scale().text())));
    }
    page.h3("measures")
        .table(
            Stream.of("th.measure", "th.kind", "th.role", "th.better", "th.worthwhile", "th.drift")
                .map(WORDS::say)
                .toList(),
            rows)
        .note(plan.telling() == null ? WORDS.say(masking()) : WORDS.say("measures.telling"));
    for (Measure m : plan.measures()) {
      if (m.summary() == StintSummary.MEDIAN) {
        page.note(WORDS.say("median", m.name(), plan.laps().scored()));
      }
    }
    TimingWords.declared(plan).forEach(page::note);
    CovariateWords.declared(plan).forEach(page::note);
  }

  /** What becomes of void laps, which whoever knew what was on cannot take out. */
  private String masking() {
    if (!plan.level().blind()) {
      return "level.known";
    }
    return medians() ? "level.summary" : "level";
  }

  private boolean medians() {
    return plan.measures().stream().anyMatch(m -> m.summary() == StintSummary.MEDIAN);
  }

  private void blinding() {
    Blinding b = plan.blinding();
    LocalDate on = b.preparation().on();
    page.h3("blinding")
        .facts(
            "helper", b.helper(),
            "others.know", b.othersWhoKnow(),
            "cover", b.cover(),
            "ballast", b.ballast(),
            "noise.cover", b.noise(),
            "waits", b.riderWaits(),
            "moved", b.bikeMovedBy(),
            "levers", b.leversTouchedBy(),
            "helper.waits", b.helperWaits(),
            "timed", b.timedBy(),
            "cues", b.remainingCues(),
            "guesses.asked", plan.telling() == null ? WORDS.say(b.guesses() ? "yes" : "no") : "",
            "prepared.by", b.preparation().by(),
            "prepared.on", on == null ? "" : on.toString(),
            "blind.level", LevelWords.name(b.level()));
  }
}
