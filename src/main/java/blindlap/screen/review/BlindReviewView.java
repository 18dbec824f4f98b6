package blindlap.screen.review;

import blindlap.picture.BlindPicture;
import blindlap.plan.Covariate;
import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plot.Qr;
import blindlap.plot.surface.Drawing;
import blindlap.plot.surface.Spoken;
import blindlap.review.TypingCheck;
import blindlap.session.Fact;
import blindlap.session.Recorded;
import blindlap.session.SessionState;
import blindlap.session.TwoValues;
import blindlap.session.day.CovariateAt;
import blindlap.session.day.LapId;
import blindlap.session.day.LapState;
import blindlap.session.day.Step;
import blindlap.session.day.Twice;
import blindlap.wording.CovariateWords;
import blindlap.wording.Headline;
import blindlap.wording.LapStarts;
import blindlap.wording.PhoneConflictWords;
import blindlap.wording.TwoValuesWords;
import blindlap.wording.day.Figures;
import blindlap.wording.day.Words;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * What the blind review shows of a session: nothing here can know a setup.
 *
 * @param answer the largest sentence
 * @param lead what it means
 * @param measures names of the measures, then of the covariates
 * @param pictures one picture a measure that has values
 * @param trials the trials of a telling run, which are decided already; empty otherwise
 * @param twiceLead what may be done about values that stand twice; empty where none does
 * @param twice values that machines recorded apart
 * @param mayChoose true if somebody who knows nothing may make another of them count
 * @param corrections what was corrected
 * @param closed true once the review is closed
 * @param fingerprint of the closed review
 * @param code the fingerprint to scan
 */
public record BlindReviewView(
    Headline answer,
    String lead,
    List<String> measures,
    List<Drawing> pictures,
    List<Row> rows,
    List<BlindTrials.Row> trials,
    String twiceLead,
    List<Stands> twice,
    boolean mayChoose,
    List<String> corrections,
    boolean closed,
    String fingerprint,
    Optional<Drawing> code) {
  private static final Words WORDS = Words.of("review");

  /**
   * One lap, without anything that depends on the key.
   *
   * @param number number over the day
   * @param start clock time of the start by the watch; empty if no watch was used
   * @param values as they stand on a sheet, in the order of the measures and covariates
   * @param asked measures whose value should be checked for a typing error
   * @param voided the event in words; empty if the lap counts
   */
  public record Row(
      LapId id,
      int number,
      int code,
      String start,
      List<String> values,
      Set<String> asked,
      String note,
      String voided) {}

  /**
   * A value that stands twice.
   *
   * @param line what counts and what is set aside, in a sentence
   * @param others those that do not count
   */
  public record Stands(LapId lap, String measure, String line, List<Other> others) {}

  /** A value that does not count; null where a machine had taken it out. */
  public record Other(String words, @Nullable BigDecimal value) {}

  static BlindReviewView of(SessionState state) {
    Plan plan = state.plan();
    List<Row> rows = new ArrayList<>();
    int asked = 0;
    for (LapState lap : state.laps()) {
      Row row = row(state, lap);
      asked += row.asked().isEmpty() ? 0 : 1;
      rows.add(row);
    }
    boolean closed = state.step() == Step.REVIEW_CLOSED;
    long voids = rows.stream().filter(r -> !r.voided().isEmpty()).count();
    Headline answer =
        closed
            ? new Headline(WORDS.say("answer.closed"), "", "")
            : state.plan().telling() != null
                ? BlindTrials.answer(state)
                : new Headline(
                    WORDS.say("answer.before", state.lapsRidden(), voids),
                    asked == 0 ? WORDS.say("answer.none") : WORDS.say("answer.ask", asked),
                    WORDS.say("answer.after"));
    String print = state.reviewFingerprint().map(f -> f.grouped()).orElse("");
    List<Stands> twice = twice(state);
    return new BlindReviewView(
        answer,
        lead(state, closed),
        names(plan),
        pictures(state),
        rows,
        BlindTrials.of(state),
        twice.isEmpty() ? "" : TwoValuesWords.lead(state),
        twice,
        TwoValues.choice(state) && !closed,
        corrections(state),
        closed,
        print,
        print.isEmpty()
            ? Optional.empty()
            : Optional.of(Qr.of(print, new Spoken(WORDS.say("fingerprint.spoken"), ""))));
  }

  private static List<String> names(Plan plan) {
    return Stream.concat(
            plan.measures().stream().map(Measure::name),
            plan.covariates().stream().map(Covariate::name))
        .toList();
  }

  /**
   * What was said of a covariate beside a lap; of a stint it stands beside its first scored lap.
   */
  private static String covariate(SessionState state, Covariate covariate, LapId lap) {
    boolean here = covariate.perLap() || lap.lap() == state.plan().laps().settling() + 1;
    BigDecimal value =
        state
            .day()
            .covariates()
            .get(
                new CovariateAt(covariate.name(), lap.stint(), covariate.perLap() ? lap.lap() : 0));
    return !here ? "" : value == null ? "–" : value.toPlainString();
  }

  private static String lead(SessionState state, boolean closed) {
    if (state.plan().telling() != null && !closed) {
      return WORDS.say("lead.trials");
    }
    String of = state.covered() ? "lead.covered" : "lead";
    String lead = WORDS.say(of + (closed ? ".closed" : ".blind"));
    return switch (state.plan().level()) {
      case OPEN, DRAWN -> WORDS.say("lead.unblinded", lead);
      case MASKED -> WORDS.say("lead.masked", lead);
      case PREPARED -> closed ? WORDS.say("lead.closed.friend") : lead;
      case HELPER -> lead;
    };
  }

  private static List<Drawing> pictures(SessionState state) {
    List<Drawing> pictures = new ArrayList<>();
    for (Measure measure : state.plan().measures()) {
      Set<Integer> stints = new TreeSet<>();
      TypingCheck.asked(state, measure).forEach(id -> stints.add(id.stint()));
      BlindPicture.of(state, measure, stints).ifPresent(pictures::add);
    }
    return pictures;
  }

  private static Row row(SessionState state, LapState lap) {
    Plan plan = state.plan();
    Recorded recorded = state.recorded();
    List<String> values = new ArrayList<>();
    Set<String> asked = new TreeSet<>();
    for (Measure measure : plan.measures()) {
      BigDecimal value = recorded.counting(plan, measure, lap).orElse(null);
      Twice twice = lap.twice().get(measure.name());
      values.add(
          twice != null && !measure.recorded()
              ? TwoValuesWords.cell(measure, twice)
              : value == null ? "–" : Figures.value(measure, value.doubleValue()));
      if (TypingCheck.asked(state, measure).contains(lap.id())) {
        asked.add(measure.name());
      }
    }
    plan.covariates().forEach(c -> values.add(covariate(state, c, lap.id())));
    return new Row(
        lap.id(),
        lap.id().ofDay(plan.laps().perStint()),
        state.code(lap.id().stint()),
        LapStarts.clock(state, lap),
        values,
        asked,
        lap.note(),
        lap.voided().map(BlindReviewView::words).orElse(""));
  }

  private static List<Stands> twice(SessionState state) {
    List<Stands> all = new ArrayList<>();
    for (LapState lap : state.laps()) {
      for (Measure measure : state.plan().measures()) {
        Twice twice = lap.twice().get(measure.name());
        if (twice != null) {
          int number = lap.id().ofDay(state.plan().laps().perStint());
          all.add(
              new Stands(
                  lap.id(),
                  measure.name(),
                  TwoValuesWords.line(number, measure, twice),
                  twice.setAside().stream()
                      .map(v -> new Other(TwoValuesWords.number(measure, v), v.value()))
                      .toList()));
        }
      }
    }
    return all;
  }

  private static String words(LapState.Voided voided) {
    String event = WORDS.say("void.as", voided.event().text());
    return voided.afterValuesSeen() ? event + ", " + WORDS.say("void.seen") : event;
  }

  private static List<String> corrections(SessionState state) {
    List<String> lines = new ArrayList<>();
    for (Fact.ScoreCorrected c : state.corrections()) {
      lines.add(
          WORDS.say(
              "correction",
              c.lap().ofDay(state.plan().laps().perStint()),
              c.measure(),
              c.value() == null ? "–" : c.value().toPlainString(),
              c.reason()));
    }
    state
        .covariatesCorrected()
        .forEach(c -> lines.add(CovariateWords.corrected(state.plan().laps(), c)));
    lines.addAll(PhoneConflictWords.lines(state));
    return lines;
  }
}
