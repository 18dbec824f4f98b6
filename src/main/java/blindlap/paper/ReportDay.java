package blindlap.paper;

import static blindlap.paper.ReportPage.WORDS;
import static blindlap.paper.ReportPage.cell;

import blindlap.plan.Labels;
import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plan.StepsDay;
import blindlap.plan.TellingRun;
import blindlap.review.DayRecord;
import blindlap.review.Finding;
import blindlap.review.HelperFit;
import blindlap.review.TellingAnalysis;
import blindlap.session.Entry;
import blindlap.session.Fact;
import blindlap.session.Recorded;
import blindlap.session.SessionState;
import blindlap.session.StoredEntry;
import blindlap.session.day.Guess;
import blindlap.session.day.LapState;
import blindlap.wording.CircumstanceWords;
import blindlap.wording.CovariateWords;
import blindlap.wording.EntryWords;
import blindlap.wording.FindingText;
import blindlap.wording.LapStarts;
import blindlap.wording.OneStintWords;
import blindlap.wording.PhoneConflictWords;
import blindlap.wording.RecordingsWords;
import blindlap.wording.TellingText;
import blindlap.wording.day.DayWords;
import blindlap.wording.day.Figures;
import blindlap.wording.day.Words;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;

/** The full record, second part: what happened on the day. */
final class ReportDay {
  private static final Words SHEETS = Words.of("sheets");

  private final ReportPage page;
  private final SessionState state;
  private final Plan plan;
  private final DayRecord day;
  private final Said said;
  private final Recorded recorded;

  /**
   * What the finding says of the day.
   *
   * @param orders how many orders could have been drawn
   * @param voids what was void
   * @param deviations departures from the plan, and wrong fits that were noticed later
   * @param parity settings as measured
   * @param rest what else was said and done
   */
  record Said(
      BigInteger orders,
      String voids,
      List<String> deviations,
      List<String> parity,
      List<String> rest) {}

  ReportDay(SessionState state, DayRecord day, Said said, ReportPage page) {
    this.page = page;
    this.state = state;
    this.recorded = state.recorded();
    this.day = day;
    this.said = said;
    this.plan = day.plan();
  }

  /** What a comparison says of its day. */
  static Said said(Finding finding) {
    FindingText text = new FindingText(finding);
    List<String> deviations = new ArrayList<>(text.deviations());
    deviations.addAll(text.correctedFits());
    return new Said(
        finding.orders().count(), text.voids(), deviations, text.parity(), text.record());
  }

  /** What a telling run says of its day. */
  static Said said(TellingAnalysis analysis) {
    TellingText text = new TellingText(analysis);
    List<String> deviations = new ArrayList<>(text.deviations());
    deviations.addAll(text.correctedFits());
    return new Said(
        analysis.day().plan().rule().assignments().count(),
        text.words().voids(),
        deviations,
        text.parity(),
        text.record());
  }

  void write() {
    page.h2("day.record");
    page.p(
        WORDS.say(
            levels() ? "order.levels" : "order",
            order(),
            Figures.count(said.orders()),
            plan.setups().get(0).name()));
    laps();
    ReportCovariates.write(page, day);
    recordings();
    guesses();
    events();
    timeline();
  }

  /** The letters of the order, those of a trial together. */
  private String order() {
    String letters = Labels.order(plan, day.key().order());
    TellingRun run = plan.telling();
    return run == null ? letters : letters.replaceAll("(.{" + run.task().laps() + "})(?=.)", "$1 ");
  }

  private boolean levels() {
    return plan.oneSetting() != null;
  }

  private String setupOrLevel() {
    return levels() ? "th.level" : "th.setup";
  }

  private void laps() {
    List<String> head = new ArrayList<>();
    List.of("th.lap", "th.stint", "th.code", setupOrLevel()).forEach(k -> head.add(WORDS.say(k)));
    if (starts()) {
      head.add(WORDS.say("th.start"));
    }
    plan.measures().forEach(m -> head.add(m.name()));
    head.add(WORDS.say("th.void"));
    head.add(WORDS.say("th.note"));
    List<List<String>> rows = new ArrayList<>();
    for (LapState lap : state.laps()) {
      rows.add(row(lap));
    }
    page.h3("laps.all")
        .table(head, rows)
        .note(WORDS.say(levels() ? "laps.note.levels" : "laps.note"));
  }

  private List<String> row(LapState lap) {
    List<String> row = new ArrayList<>();
    int stint = lap.id().stint();
    boolean settling = lap.id().lap() <= plan.laps().settling();
    row.add(cell(String.valueOf(lap.id().ofDay(plan.laps().perStint()))));
    row.add(cell(stint + (settling ? " " + WORDS.say("settling") : "")));
    row.add(cell(String.valueOf(state.code(stint))));
    row.add(cell(plan.setups().get(day.setup(stint)).name()));
    if (starts()) {
      String start = LapStarts.clock(state, lap);
      row.add(cell(start.isEmpty() ? "–" : start));
    }
    for (Measure measure : plan.measures()) {
      BigDecimal value = recorded.counting(plan, measure, lap).orElse(null);
      row.add(cell(value == null ? "–" : Figures.value(measure, value.doubleValue())));
    }
    row.add(cell(lap.voided().map(ReportDay::voided).orElse("")));
    row.add(cell(lap.note()));
    return row;
  }

  /** Which files gave times, so that anybody who has them can look again. */
  private void recordings() {
    List<String> lines = RecordingsWords.lines(state);
    if (!lines.isEmpty()) {
      page.h3("recordings").list(lines);
    }
  }

  private boolean starts() {
    return state.laps().stream().anyMatch(lap -> lap.startedAt().isPresent());
  }

  private static String voided(LapState.Voided v) {
    String words = v.words().isBlank() ? v.event().text() : v.event().text() + ": " + v.words();
    return v.afterValuesSeen() ? words + " " + WORDS.say("after.seen") : words;
  }

  private void guesses() {
    if (state.guesses().isEmpty() || plan.telling() != null) {
      return; // answers of a telling run stand in a table of their own
    }
    List<List<String>> rows = new ArrayList<>();
    state
        .guesses()
        .forEach(
            (stint, guess) ->
                rows.add(
                    List.of(
                        cell(String.valueOf(stint)),
                        cell(plan.setups().get(day.setup(stint)).name()),
                        cell(guessed(guess)),
                        cell(guess.cue()))));
    page.h3("guesses")
        .table(
            List.of(
                WORDS.say("th.stint"),
                WORDS.say(setupOrLevel()),
                WORDS.say("th.guess"),
                WORDS.say("th.cue")),
            rows);
  }

  private String guessed(Guess guess) {
    Integer setup = guess.setup();
    if (setup == null) {
      return WORDS.say("dont.know");
    }
    return plan.steps() == null
        ? plan.setups().get(setup).name()
        : SHEETS.say("guess.end." + StepsDay.End.values()[setup]); // in the words it was asked in
  }

  private void events() {
    List<String> lines = new ArrayList<>();
    lines.add(said.voids());
    happened(lines);
    corrected(lines);
    state.laps().forEach(lap -> doubtful(lap, lines));
    PhoneConflictWords.summary(state).ifPresent(lines::add);
    lines.addAll(PhoneConflictWords.lines(state));
    for (StoredEntry late : state.notApplied()) {
      Entry entry = late.entry();
      lines.add(
          WORDS.say(
              "not.applied",
              EntryWords.entry(entry.fact().getClass().getSimpleName()),
              entry.when()));
    }
    if (lines.size() == 1) {
      lines.add(WORDS.say("deviations.none"));
    }
    page.h3("events").list(lines);
    helper();
  }

  private void happened(List<String> lines) {
    state
        .cutShort()
        .ifPresent(
            c ->
                lines.add(
                    WORDS.say(
                        "cut",
                        c.lastStint(),
                        c.reason(),
                        c.decidedBy(),
                        WORDS.say(c.knowsKey() ? "knew" : "knew.not"))));
    state
        .blindBroken()
        .forEach(b -> lines.add(CircumstanceWords.broken(state.plan(), b.stint(), b.what())));
    state.oneStint().forEach((stint, shown) -> lines.add(OneStintWords.shown(stint, shown)));
    lines.addAll(said.deviations());
  }

  private void corrected(List<String> lines) {
    for (Fact.ScoreCorrected c : state.corrections()) {
      String value = c.value() == null ? "–" : c.value().toPlainString();
      lines.add(
          WORDS.say(
              "corrected", c.lap().ofDay(plan.laps().perStint()), c.measure(), value, c.reason()));
    }
    state.covariatesCorrected().forEach(c -> lines.add(CovariateWords.corrected(plan.laps(), c)));
  }

  private void helper() {
    if (!said.parity().isEmpty()) {
      page.h3("parity").list(said.parity());
    }
    if (!said.rest().isEmpty()) {
      page.h3("rest").list(said.rest());
    }
    for (HelperFit fit : day.fits().values()) {
      if (!fit.note().isBlank()) {
        page.p(
            fit.stint() == 0
                ? WORDS.say("helper.note.warm.up", fit.note())
                : WORDS.say("helper.note", fit.stint(), fit.note()));
      }
    }
  }

  private void doubtful(LapState lap, List<String> lines) {
    lap.times()
        .forEach(
            (measure, time) -> {
              if (time.doubtful()) {
                lines.add(
                    WORDS.say(
                        time.typed() == null ? "doubtful.missing" : "doubtful.typed",
                        lap.id().ofDay(plan.laps().perStint()),
                        measure));
              }
            });
  }

  private void timeline() {
    List<String> lines = new ArrayList<>();
    for (StoredEntry stored : state.entries()) {
      String key = "entry." + stored.entry().fact().getClass().getSimpleName();
      String covered = key + ".covered";
      if (WORDS.has(key)) {
        lines.add(
            WORDS.say(
                "at",
                DayWords.zoned(stored.entry().at().atZone(stored.entry().zone())),
                WORDS.say(state.covered() && WORDS.has(covered) ? covered : key)));
      }
    }
    page.h3("timeline").list(lines);
    page.caution(Words.of("cautions").say("ride"));
  }
}
