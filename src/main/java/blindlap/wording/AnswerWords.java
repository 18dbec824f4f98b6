package blindlap.wording;

import blindlap.plan.DayAnswer;
import blindlap.plan.DayDetail;
import blindlap.plan.DayLeft;
import blindlap.plan.Measure;
import blindlap.plan.NoiseKnown;
import blindlap.plan.Plan;
import blindlap.stats.compare.Scale;
import blindlap.stats.compare.Verdict;
import blindlap.stats.distribution.Interval;
import blindlap.stats.noise.RiderNoise;
import blindlap.stats.order.Drift;
import blindlap.wording.day.DayWords;
import blindlap.wording.day.Figures;
import blindlap.wording.day.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What a day can show, in sentences. */
public final class AnswerWords {
  private static final Words WORDS = Words.of("answer");

  private final Plan plan;
  private final Optional<Measure> primary;
  private final Optional<DayAnswer> answer;
  private final Optional<TrialsWords> trials;

  /**
   * @param plan the plan
   * @param answer what it can show; empty if it is no comparison or has no orders
   */
  public AnswerWords(Plan plan, Optional<DayAnswer> answer) {
    this.plan = plan;
    this.trials = TrialsWords.of(plan);
    this.primary = plan.primary();
    this.answer = answer;
  }

  /**
   * A sentence with the words that carry the answer in its middle.
   *
   * @param before words before them
   * @param marked the words themselves
   * @param after words after them
   */
  public record Sentence(String before, String marked, String after) {
    /** The whole sentence. */
    public String text() {
      return before + marked + after;
    }
  }

  /** A fixed sentence or label of the bundle. */
  public static String say(String key, Object... arguments) {
    return WORDS.say(key, arguments);
  }

  /** The same; of a steps day in its own words, where it has some. */
  public static String of(Plan plan, String key, Object... arguments) {
    return StepsAnswer.say(plan, key, arguments);
  }

  /** The answer. */
  public Sentence sentence() {
    if (plan.kind() == Plan.Kind.NOISE_RUN) {
      return noiseRun();
    }
    if (plan.kind() == Plan.Kind.TELLING_RUN) {
      String otherwise = trials.isPresent() ? "never" : "unplanned";
      return trials
          .flatMap(TrialsWords::answer)
          .map(right -> new Sentence("", right.marked(), right.after()))
          .orElseGet(() -> sentence(otherwise, otherwise));
    }
    if (answer.isEmpty()) {
      return sentence("unplanned", "unplanned");
    }
    DayAnswer day = answer.get();
    if (day.never()) {
      return sentence("never", "never");
    }
    String measure = primary.map(Measure::name).orElse("–");
    boolean seldom = Double.isNaN(day.chosen().difference());
    String key = seldom ? "seldom" : "shows";
    return sentence(
        key,
        ofPairs() ? key + ".pairs" : key,
        day.chosen().stints(),
        shown(day.chosen().difference()),
        measure,
        plan.setups().size());
  }

  private Sentence noiseRun() {
    int df = plan.stints() - drift().columns();
    if (df < 1) {
      return sentence("unplanned", "unplanned");
    }
    Interval factor = new RiderNoise(1, df).interval95IfNormal();
    return sentence(
        "noise.run",
        "noise.run",
        plan.stints(),
        Figures.number(factor.low(), 2),
        Figures.number(factor.high(), 2));
  }

  private Drift drift() {
    return primary.map(Measure::drift).orElse(Drift.LINE);
  }

  private Sentence sentence(String key, String ending, Object... arguments) {
    return new Sentence(
        WORDS.say(key + ".before", arguments),
        WORDS.say(key + ".marked", arguments),
        StepsAnswer.say(plan, ending + ".after", arguments));
  }

  /** What the answer means, a sentence each. */
  public List<String> lead() {
    return answer.map(this::lead).or(() -> trials.map(TrialsWords::lead)).orElseGet(ArrayList::new);
  }

  private List<String> lead(DayAnswer day) {
    List<String> lines = new ArrayList<>();
    if (day.never()) {
      lines.add(WORDS.say("never", count(day), Figures.p(day.orders().smallestP())));
      request(day).least().ifPresent(lines::add);
      return lines;
    }
    if (Double.isNaN(day.chosen().difference())) {
      lines.add(WORDS.say(ofPairs() ? "seldom.pairs" : "seldom"));
      request(day).least().ifPresent(lines::add);
      return lines;
    }
    StepsAnswer.step(plan, day, this::shown).ifPresent(lines::add);
    Interval range = day.chosen().range();
    if (range != null) {
      lines.add(
          WORDS.say("range", number(range.low()), amount(range.high()), day.noise().df() + 1));
    }
    SplitWords.why(plan, day).ifPresent(lines::add);
    lines.addAll(request(day).lines());
    if (day.chosen().source() == DayAnswer.Source.ROUGH) {
      lines.add(WORDS.say("rough", count(day)));
    } else if (day.chosen().source() == DayAnswer.Source.PAIRS) {
      lines.add(WORDS.say("pairs"));
    }
    StepsAnswer.bend(day, this::shown).ifPresent(lines::add);
    switch (day.noise().kind()) {
      case GUESSED -> lines.add(WORDS.say("guessed"));
      case UNKNOWN -> lines.add(WORDS.say("unknown"));
      case ESTIMATED -> {}
    }
    day.series()
        .map(series -> SeriesShowsWords.say(series, this::shown, this::amount, declared()))
        .ifPresent(lines::add);
    return lines;
  }

  private RequestWords request(DayAnswer day) {
    return new RequestWords(plan, day, declared(), this::amount);
  }

  static String count(DayAnswer day) {
    return String.format(Locale.ROOT, "%,d", day.orders().count());
  }

  /** The worthwhile difference as declared, with its unit. */
  public String declared() {
    return primary
        .map(Measure::worthwhile)
        .map(w -> unit(w.stripTrailingZeros().toPlainString()))
        .orElse("–");
  }

  /** A difference with its unit, rounded so that it stays on its side of the worthwhile one. */
  public String amount(double difference) {
    return unit(number(difference));
  }

  /**
   * A difference that hangs on the noise: a range where it is not known how much of the noise the
   * laps of a stint share.
   *
   * @param difference at the most that the noise may be
   */
  public String shown(double difference) {
    double best = best(difference);
    String most = number(difference);
    String least = Double.isFinite(difference) ? alike(best, most) : most;
    return least.equals(most) ? unit(most) : WORDS.say("between", least, unit(most));
  }

  private double best(double difference) {
    boolean ratio = primary.map(m -> m.scale() == Scale.RATIO).orElse(false);
    return answer.map(day -> day.noise().best(difference, ratio)).orElse(difference);
  }

  private String alike(double value, String other) {
    double deciding = answer.map(DayAnswer::worthwhile).orElse(Double.NaN);
    return Double.isNaN(deciding)
        ? Figures.alike(value, other)
        : Figures.alike(value, other, deciding);
  }

  private String unit(String number) {
    if (answer.map(a -> a.noise().kind() == NoiseKnown.Kind.UNKNOWN).orElse(false)) {
      return WORDS.say("times.noise", number);
    }
    return primary
        .map(
            m ->
                m.scale() == Scale.RATIO
                    ? WORDS.say("per.cent", number)
                    : WORDS.say("with.unit", number, m.unit()))
        .orElse(number);
  }

  private String number(double difference) {
    if (!Double.isFinite(difference)) {
      return "–";
    }
    double deciding = answer.map(DayAnswer::worthwhile).orElse(Double.NaN);
    return Double.isNaN(deciding) ? Figures.near(difference) : Figures.near(difference, deciding);
  }

  /** The unit in which the curve is drawn, for its title. */
  public String unitOfCurve() {
    return unit("").strip();
  }

  /** Orders and swaps, a sentence each. */
  public List<String> orders() {
    return answer.map(this::orders).orElse(List.of());
  }

  private List<String> orders(DayAnswer day) {
    List<String> lines = new ArrayList<>();
    lines.add(WORDS.say("orders", count(day), Figures.p(day.orders().smallestP())));
    lines.add(
        WORDS.say("swaps", Figures.number(day.orders().meanSwaps(), 1), day.orders().maxSwaps()));
    if (plan.steps() != null) {
      lines.addAll(HandlingWords.planned(plan)); // all of them wear one part
    } else {
      lines.add(DayWords.handlings(day.handlings()));
    }
    return lines;
  }

  /** How such a day would end, a sentence a row; empty if that cannot be said. */
  public List<String> odds(List<DayAnswer.Ending> endings) {
    List<String> lines = new ArrayList<>();
    for (DayAnswer.Ending ending : endings) {
      lines.add(StepsAnswer.say(plan, "odds.row", cells(ending).toArray()));
    }
    return lines;
  }

  /** How a day of three or four setups would end, a sentence a row. */
  public List<String> pairOdds(List<DayDetail.PairEnding> endings) {
    return endings.stream()
        .map(ending -> WORDS.say("odds.pairs.row", pairCells(ending).toArray()))
        .toList();
  }

  /** One row: the true difference of one setup from all others, then days in 100. */
  public List<String> pairCells(DayDetail.PairEnding ending) {
    return List.of(
        truth(ending.difference()),
        SplitWords.inHundred(ending.odds().differ(), ending.best().differ()),
        SplitWords.inHundred(ending.odds().pair(), ending.best().pair()),
        SplitWords.inHundred(ending.odds().any(), ending.best().any()),
        SplitWords.inHundred(ending.odds().all(), ending.best().all()),
        SplitWords.inHundred(ending.odds().wrong(), ending.best().wrong()));
  }

  private String truth(double difference) {
    double worthwhile = answer.map(DayAnswer::worthwhile).orElse(Double.NaN);
    return difference == 0
        ? WORDS.say("odds.nothing")
        : Math.abs(difference - worthwhile) < 1e-9 * worthwhile
            ? WORDS.say("odds.just", declared())
            : amount(difference);
  }

  /** One row: the true difference, then days in 100 in the order of the verdicts. */
  public List<String> cells(DayAnswer.Ending ending) {
    List<String> cells = new ArrayList<>();
    cells.add(truth(ending.difference()));
    for (Verdict verdict :
        List.of(
            Verdict.REAL_AND_WORTHWHILE,
            Verdict.REAL_BUT_SMALL,
            Verdict.NO_WORTHWHILE_DIFFERENCE,
            Verdict.DIRECTION_KNOWN,
            Verdict.NOT_SETTLED)) {
      cells.add(SplitWords.inHundred(ending.odds().of(verdict), ending.best().of(verdict)));
    }
    return cells;
  }

  /** How the odds of pairs were found. */
  public String pairOddsSource(DayDetail detail) {
    double error = detail.pairs().stream().mapToDouble(e -> e.odds().error()).max().orElse(0);
    return WORDS.say("odds.error", days(detail.days()), Figures.number(200 * error, 1));
  }

  private static String days(int days) {
    return String.format(Locale.ROOT, "%,d", days);
  }

  /** How the odds were found. */
  public String oddsSource(List<DayAnswer.Ending> endings, int days) {
    double error = endings.stream().mapToDouble(e -> e.odds().error()).max().orElse(0);
    return error == 0
        ? WORDS.say("odds.formula")
        : WORDS.say("odds.error", days(days), Figures.number(200 * error, 1));
  }

  /** The simulated difference with its error, if there is one. */
  public Optional<String> simulated(DayDetail detail) {
    DayAnswer.Point chosen = detail.chosen();
    Interval error = detail.error95();
    if (Double.isNaN(chosen.difference())) {
      return Optional.of(WORDS.say("simulated.never", days(detail.days())));
    }
    if (Double.isNaN(error.low()) || Double.isNaN(error.high())) {
      return Optional.of(
          WORDS.say("simulated.rough", days(detail.days()), amount(chosen.difference())));
    }
    // The figure has the decimals of its error, or it could seem to lie outside.
    int decimals = Figures.decimals(error.halfWidth());
    boolean split = best(chosen.difference()) < chosen.difference();
    return Optional.of(
        WORDS.say(
            split ? "simulated.split" : "simulated",
            days(detail.days()),
            unit(Figures.number(chosen.difference(), decimals)),
            Figures.number(error.low(), decimals),
            unit(Figures.number(error.high(), decimals)),
            unit(Figures.number(best(chosen.difference()), decimals))));
  }

  /** What is left of a day cut short, a sentence each. */
  public List<String> cuts(DayLeft left) {
    return new CutWords(plan, this::shown).lines(left);
  }

  private boolean ofPairs() {
    return !plan.oneDifference();
  }
}
