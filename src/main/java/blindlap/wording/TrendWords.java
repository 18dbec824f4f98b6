package blindlap.wording;

import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plan.StepsDay;
import blindlap.review.Comparison;
import blindlap.review.Finding;
import blindlap.stats.compare.Bend;
import blindlap.stats.compare.LevelMeans;
import blindlap.stats.compare.Scale;
import blindlap.stats.compare.Trend;
import blindlap.stats.distribution.Interval;
import blindlap.wording.day.Figures;
import blindlap.wording.day.Words;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * A steps day in sentences, beside its verdict: the trend along the levels, whether it bends, every
 * level and every pair of them, and what may lie beyond the last level ridden.
 */
public final class TrendWords {
  private static final Words WORDS = Words.of("trend");
  private static final double SAID = 0.95;

  private final Plan plan;
  private final StepsDay steps;
  private final Measure measure;
  private final Trend trend;

  private TrendWords(Plan plan, StepsDay steps, Measure measure, Trend trend) {
    this.plan = plan;
    this.steps = steps;
    this.measure = measure;
    this.trend = trend;
  }

  /** A level: its number, how many stints count, its mean and the interval of that. */
  public record Level(String name, String stints, String mean, String interval) {}

  /** Two levels: which, and what is said of them. */
  public record Pair(String levels, String said, boolean shown) {}

  /** Of a finding; empty unless of a steps day whose primary measure could be compared. */
  public static Optional<TrendWords> of(Finding finding) {
    return finding.primary().flatMap(primary -> of(finding.day().plan(), primary));
  }

  /** Of one measure of a steps day. */
  static Optional<TrendWords> of(Plan plan, Comparison comparison) {
    StepsDay steps = plan.steps();
    return steps == null
        ? Optional.empty()
        : comparison.trend().map(trend -> new TrendWords(plan, steps, comparison.measure(), trend));
  }

  /** "0.26 s for every click from closed (95 % interval 0.18 to 0.35 s)". */
  public String perUnit() {
    double[] levels = plan.levelNumbers();
    double each = trend.perUnit(levels);
    double range = trend.estimate() == 0 ? 1 : trend.estimate() / each;
    Optional<Interval> interval =
        trend.curve().interval(SAID).map(i -> new Interval(i.low() / range, i.high() / range));
    Sizes sizes = sizes(each, interval);
    String size = sizes.with(sizes.estimate(each));
    String said =
        steps.unit().isBlank()
            ? WORDS.say("per.number", size)
            : WORDS.say("per.unit", size, singular(steps.unit()));
    return trend.real() && interval.isPresent()
        ? WORDS.say("per.shown", said, interval(sizes, interval.get()))
        : WORDS.say("per.open", said);
  }

  /** "click from closed" of "clicks from closed"; units such as psi and s stay as they are. */
  private static String singular(String unit) {
    return unit.replaceFirst("^(\\p{L}+[^s\\P{L}])s(?=$|\\P{L})", "$1");
  }

  private Sizes sizes(double shift, Optional<Interval> interval) {
    return Sizes.of(measure, shift, List.of(interval), trend.noiseSd() / 2);
  }

  private boolean directed() {
    return measure.better() != Measure.Better.NEITHER;
  }

  private boolean lower() {
    return measure.better() == Measure.Better.LOWER;
  }

  /** The question of the bend. */
  public String bendTitle() {
    return WORDS.say(directed() ? "bend.title" : "bend.title.neither");
  }

  /** Its answer. */
  public String bend() {
    if (trend.noVariation()) {
      return WORDS.say("bend.variation");
    }
    Optional<LevelMeans.Middle> middle = trend.means().flatMap(LevelMeans::middle);
    if (trend.bend().isEmpty() || middle.isEmpty()) {
      return WORDS.say("bend.few");
    }
    Bend bend = trend.bend().get();
    OptionalInt better = directed() ? trend.middleBetter(lower()) : OptionalInt.empty();
    String key = better.isPresent() ? "bend.better" : bend.real() ? "bend.bent" : "bend.none";
    return WORDS.say(
        key,
        where(
            trend.means().get(),
            middle.get(),
            WORDS.say("bend.p", Figures.p(bend.p())),
            better.isPresent()),
        better.isPresent() ? plan.setups().get(better.getAsInt()).name() : "");
  }

  /** "The 2 levels between the ends lay 0.1 s below the line (0.8 s below to 0.5 s above)". */
  private String where(LevelMeans means, LevelMeans.Middle middle, String p, boolean named) {
    Interval interval = means.interval(middle, SAID);
    Sizes sizes = sizes(middle.estimate(), Optional.of(interval));
    int between = means.means().size() - 2;
    String key = middle.estimate() < 0 ? "middle.below" : "middle.above";
    return WORDS.say(
        key,
        sizes.with(sizes.estimate(middle.estimate())),
        interval(sizes, interval),
        between > 1
            ? WORDS.say("middle.several", between)
            : named ? WORDS.say("middle.it") : level(means.means().get(1).setup()),
        p);
  }

  private static String interval(Sizes sizes, Interval interval) {
    String low = sizes.limits(interval).get(0).toPlainString();
    String high = sizes.limits(interval).get(1).toPlainString();
    if (interval.low() < 0 && interval.high() > 0) {
      return WORDS.say("middle.two.sides", sizes.with(low), sizes.with(high));
    }
    boolean below = interval.high() <= 0;
    return WORDS.say(
        "middle.interval",
        WORDS.say("middle.one.side", below ? high : low, sizes.with(below ? low : high)));
  }

  /**
   * The level at the end that is best, if it may be said that it was still getting better there.
   */
  private OptionalInt end() {
    return directed() ? trend.stillBetter(lower()) : OptionalInt.empty();
  }

  /** The title of {@link #beyond}. */
  public Optional<String> beyondTitle() {
    return end().isPresent() ? Optional.of(WORDS.say("beyond.title")) : Optional.empty();
  }

  /** That the answer may lie beyond the last level, with the maker's limits as typed in. */
  public Optional<String> beyond() {
    OptionalInt end = end();
    return end.isEmpty()
        ? Optional.empty()
        : Optional.of(
            WORDS.say("beyond", plan.setups().get(end.getAsInt()).name(), limits(end.getAsInt())));
  }

  private String limits(int end) {
    boolean highest = end == plan.place(true);
    BigDecimal limit = highest ? steps.most() : steps.least();
    if (limit == null) {
      return WORDS.say("beyond.unknown");
    }
    String source = steps.source().isBlank() ? "" : WORDS.say("limits.source", steps.source());
    boolean reached = steps.value(plan.setups().get(end)).orElseThrow().compareTo(limit) == 0;
    return WORDS.say(reached ? "beyond.reached" : "beyond.limits", typed(), source);
  }

  private String typed() {
    BigDecimal least = steps.least();
    BigDecimal most = steps.most();
    String unit = steps.unit().isBlank() ? "" : " " + steps.unit();
    if (least != null && most != null) {
      return WORDS.say("limits.both", least.toPlainString(), most.toPlainString() + unit);
    }
    return least != null
        ? WORDS.say("limits.least", least.toPlainString() + unit)
        : WORDS.say("limits.most", (most == null ? "" : most.toPlainString()) + unit);
  }

  /** Every level ridden, the lowest first; none where means cannot be had. */
  public List<Level> levels() {
    List<Level> levels = new ArrayList<>();
    trend
        .means()
        .ifPresent(
            means -> {
              int decimals = Figures.decimals(means.noiseSd()) + 1;
              for (LevelMeans.Mean each : means.means()) {
                Interval interval = means.interval(each, SAID);
                levels.add(
                    new Level(
                        bare(each.setup()),
                        WORDS.say("stints", each.stints()),
                        value(each.mean(), decimals),
                        WORDS.say(
                            "middle.one.side",
                            value(interval.low(), decimals),
                            value(interval.high(), decimals))));
              }
            });
    return levels;
  }

  private String value(double mean, int decimals) {
    double said = measure.scale() == Scale.RATIO ? Math.exp(mean) : mean;
    return measure.kind().timed()
        ? Figures.time(said, Math.min(2, decimals))
        : Figures.number(said, decimals);
  }

  private String level(int setup) {
    return plan.setups().get(setup).name();
  }

  private String bare(int setup) {
    return EndNames.bare(steps, plan.setups().get(setup).name());
  }

  /** Every pair of levels, by its interval among all pairs at once. */
  public List<Pair> pairs() {
    List<Pair> pairs = new ArrayList<>();
    trend.means().ifPresent(means -> means.pairs().forEach(each -> pairs.add(pair(means, each))));
    return pairs;
  }

  private Pair pair(LevelMeans means, LevelMeans.Pair each) {
    Interval interval = means.interval(each, SAID);
    DifferenceWords words =
        new DifferenceWords(
            List.of(bare(each.first()), bare(each.second())),
            measure,
            each.estimate(),
            List.of(Optional.of(interval)),
            means.noiseSd());
    boolean shown = interval.low() > 0 || interval.high() < 0;
    return new Pair(
        WORDS.say("pair", bare(each.first()), bare(each.second())),
        shown
            ? WORDS.say(
                "pair.shown",
                words.side(each.estimate() < 0 ? -1 : 1),
                words.interval(Optional.of(interval)))
            : WORDS.say("pair.open"),
        shown);
  }

  /** How the pairs are meant. */
  public String pairsNote() {
    return WORDS.say("pairs.note");
  }

  /** All of it as lines of text. */
  public List<String> lines() {
    List<String> lines = new ArrayList<>();
    if (!trend.noVariation()) {
      lines.add(WORDS.say("line", perUnit()));
    }
    lines.add(bendTitle() + " " + bend());
    if (!levels().isEmpty()) {
      lines.add(
          WORDS.say(
              "levels",
              String.join(
                  "; ",
                  levels().stream()
                      .map(l -> WORDS.say("level", l.name(), l.mean(), l.interval(), l.stints()))
                      .toList())));
      List<String> apart =
          pairs().stream()
              .filter(Pair::shown)
              .map(pair -> WORDS.say("pair.line", pair.levels(), pair.said()))
              .toList();
      lines.add(
          apart.isEmpty()
              ? WORDS.say("pairs.none", pairsNote())
              : WORDS.say("pairs", String.join("; ", apart), pairsNote()));
    }
    beyond().ifPresent(said -> lines.add(beyondTitle().orElseThrow() + ". " + said));
    return lines;
  }
}
