package blindlap.wording;

import blindlap.plan.DayAnswer;
import blindlap.plan.DayDetail;
import blindlap.plan.DayLeft;
import blindlap.plan.Plan;
import blindlap.stats.distribution.Interval;
import blindlap.wording.day.DayWords;
import blindlap.wording.day.Figures;
import blindlap.wording.day.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What a day can show, in sentences that need no statistics, as the Plan page says it; what they
 * leave out stands apart, for whoever wants it.
 */
public final class PlainAnswer {
  private static final Words WORDS = Words.of("answer");

  private final Plan plan;
  private final Optional<DayAnswer> answer;
  private final AnswerWords words;

  /**
   * @param plan the plan
   * @param answer what it can show; empty if it is no comparison or has no orders
   */
  public PlainAnswer(Plan plan, Optional<DayAnswer> answer) {
    this.plan = plan;
    this.answer = answer;
    this.words = new AnswerWords(plan, answer);
  }

  /** What the answer means, a sentence each. */
  public List<String> lead() {
    return answer.map(this::lead).orElseGet(words::lead); // trials, or nothing yet
  }

  private String seldom() {
    return plan.oneDifference() ? StepsAnswer.key(plan, "plain.seldom") : "plain.seldom.pairs";
  }

  private List<String> lead(DayAnswer day) {
    List<String> lines = new ArrayList<>();
    boolean seldom = !day.never() && Double.isNaN(day.chosen().difference());
    if (day.never() || seldom) {
      lines.add(WORDS.say(seldom ? seldom() : "plain.never"));
      request(day, true).least().ifPresent(least -> lines.addAll(List.of(said(), least)));
      return lines;
    }
    StepsAnswer.step(plan, day, words::shown).ifPresent(lines::add);
    RequestWords request = request(day, true);
    List<String> asked = request.lines();
    if (!asked.isEmpty() && !Double.isNaN(day.worthwhile()) && request.chances().isEmpty()) {
      lines.add(said());
    }
    lines.addAll(asked);
    if (day.chosen().source() == DayAnswer.Source.ROUGH) {
      lines.add(WORDS.say("plain.rough"));
    } else if (day.chosen().source() == DayAnswer.Source.PAIRS) {
      lines.add(WORDS.say("plain.pairs"));
    }
    StepsAnswer.bend(day, words::shown).ifPresent(lines::add);
    Interval range = day.chosen().range();
    if (range != null) {
      lines.add(
          WORDS.say(
              "plain.range",
              words.amount(range.low()),
              words.amount(range.high()),
              day.noise().df() + 1));
    }
    lines.addAll(noise(day));
    day.series()
        .map(series -> SeriesShowsWords.say(series, words::shown, words::amount, words.declared()))
        .ifPresent(lines::add);
    return lines;
  }

  /** What the answer hangs on, where the noise is not known well. */
  private List<String> noise(DayAnswer day) {
    List<String> lines = new ArrayList<>();
    SplitWords.why(plan, day).ifPresent(lines::add);
    switch (day.noise().kind()) {
      case GUESSED -> lines.add(WORDS.say("guessed"));
      case UNKNOWN -> lines.add(WORDS.say("unknown"));
      case ESTIMATED -> {}
    }
    return lines;
  }

  private String said() {
    return WORDS.say("plain.said", words.declared());
  }

  private RequestWords request(DayAnswer day, boolean plain) {
    return new RequestWords(plan, day, words.declared(), words::amount, plain);
  }

  /** Swaps and handlings, a sentence each. */
  public List<String> swaps() {
    return answer
        .map(
            day -> {
              String swaps =
                  StepsAnswer.say(
                      plan,
                      "plain.swaps",
                      Figures.number(day.orders().meanSwaps(), 1),
                      day.orders().maxSwaps());
              // What the handlings of a steps day come to stands beside its levels.
              return plan.steps() == null
                  ? List.of(swaps, DayWords.handlings(day.handlings()))
                  : List.of(swaps);
            })
        .or(() -> TrialsWords.of(plan).map(TrialsWords::handlings))
        .orElse(List.of());
  }

  /** What is left of a day cut short, a sentence each. */
  public List<String> left(DayLeft left) {
    return new CutWords(plan, words::shown).plain(left);
  }

  /** How the table of endings was found. */
  public static String source(int days) {
    return days == 0 ? WORDS.say("plain.odds.formula") : WORDS.say("plain.odds.days", days);
  }

  /** Orders, p and what they hang on, a sentence each. */
  public List<String> statistician(
      Optional<DayLeft> left, Optional<DayDetail> detail, String oddsSource) {
    List<String> lines = new ArrayList<>();
    answer.ifPresent(
        day -> {
          if (day.never()) {
            lines.addAll(words.lead().subList(0, 1));
          } else {
            lines.add(words.orders().get(0));
            request(day, false).chances().ifPresent(lines::add);
          }
        });
    detail.flatMap(words::simulated).ifPresent(lines::add);
    detail.map(found -> LooksShowWords.lines(plan, found)).ifPresent(lines::addAll);
    if (!oddsSource.isEmpty()) {
      lines.add(WORDS.say("plain.odds.source", oddsSource));
    }
    left.ifPresent(cut -> lines.addAll(new CutWords(plan, words::shown).statistician(cut)));
    return lines;
  }
}
