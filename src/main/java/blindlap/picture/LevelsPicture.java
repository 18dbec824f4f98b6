package blindlap.picture;

import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plan.StepsDay;
import blindlap.plot.Band;
import blindlap.plot.LevelsAndTrend;
import blindlap.plot.Limits;
import blindlap.plot.SmallLevels;
import blindlap.plot.TrendContent;
import blindlap.plot.surface.Drawing;
import blindlap.plot.surface.Spoken;
import blindlap.review.Comparison;
import blindlap.review.DayRecord;
import blindlap.review.Finding;
import blindlap.review.StintValues;
import blindlap.review.TakenOut;
import blindlap.stats.compare.LevelMeans;
import blindlap.stats.compare.Scale;
import blindlap.stats.compare.Trend;
import blindlap.stats.distribution.Interval;
import blindlap.wording.EndNames;
import blindlap.wording.FindingText;
import blindlap.wording.FindingWords;
import blindlap.wording.TrendWords;
import blindlap.wording.day.Figures;
import blindlap.wording.day.Shown;
import blindlap.wording.day.Words;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** The stints of a steps day over the axis of its levels: the levels have no marks and no rows. */
final class LevelsPicture {
  private static final Words WORDS = Words.of("pictures");

  private final Finding finding;
  private final DayRecord day;
  private final Plan plan;
  private final StepsDay steps;
  private final FindingText text;

  /** The levels' indices, the lowest first. */
  private final List<Integer> rising;

  private LevelsPicture(Finding finding, StepsDay steps) {
    this.finding = finding;
    this.day = finding.day();
    this.plan = day.plan();
    this.steps = steps;
    this.text = new FindingText(finding);
    double[] numbers = plan.levelNumbers();
    this.rising =
        IntStream.range(0, numbers.length)
            .boxed()
            .sorted((a, b) -> Double.compare(numbers[a], numbers[b]))
            .toList();
  }

  /** Of a finding; empty unless it is of a steps day. */
  static Optional<LevelsPicture> of(Finding finding) {
    return Optional.ofNullable(finding.day().plan().steps())
        .map(steps -> new LevelsPicture(finding, steps));
  }

  /** What each level's share of the trend is, about the middle of the levels. */
  static double[] shares(Plan plan, double trend) {
    double[] numbers = plan.levelNumbers();
    double mean = Arrays.stream(numbers).average().orElseThrow();
    double range = numbers[plan.place(true)] - numbers[plan.place(false)];
    return Arrays.stream(numbers).map(level -> trend * (level - mean) / range).toArray();
  }

  /** Every stint over its level, and the trend. */
  Drawing trend(Comparison comparison) {
    Measure measure = comparison.measure();
    double[] share = shares(plan, comparison.result().estimate());
    double[] removed = removed(comparison, share);
    double middle = middle(removed, share);
    PictureAxes axes = PictureAxes.of(measure, middle);
    FindingWords words = text.words(comparison);
    List<TrendContent.Level> levels = levels(removed, axes);
    Optional<Interval> band = comparison.worthwhileBand();
    return LevelsAndTrend.of(
        new TrendContent(
            levels,
            stints(removed, axes),
            axes.at(middle),
            axes.length(comparison.result().estimate()),
            limits(comparison, axes, 0.95),
            limits(comparison, axes, 0.90),
            band.map(b -> band(measure, axes.length(b.high()))),
            axes.values(),
            axisWords(comparison),
            WORDS.say(up(measure)),
            WORDS.say("level.mean"),
            said(comparison, words),
            comparison.result().noVariation() ? 1 : 2,
            new Spoken(sentence(comparison, words), spoken(measure, removed) + bend())));
  }

  /**
   * The drift is fitted beside the level means, so that the dots of a level lie about its mean;
   * beside the trend where no means can be had.
   */
  private double[] removed(Comparison comparison, double[] share) {
    double[] above = share.clone();
    comparison
        .trend()
        .flatMap(Trend::means)
        .ifPresent(
            means -> {
              for (LevelMeans.Mean each : means.means()) {
                above[each.setup()] = each.mean();
              }
            });
    return new FittedDrift(day, comparison.measure(), comparison.stints(), above).removed();
  }

  /** Where the trend passes the middle of the levels. */
  private double middle(double[] removed, double[] share) {
    return IntStream.range(0, removed.length)
        .filter(i -> !Double.isNaN(removed[i]))
        .mapToDouble(i -> removed[i] - share[day.setup(i + 1)])
        .average()
        .orElse(0);
  }

  private List<TrendContent.Level> levels(double[] removed, PictureAxes axes) {
    double[] numbers = plan.levelNumbers();
    return rising.stream()
        .map(setup -> new TrendContent.Level(numbers[setup], bare(setup), mean(setup, removed)))
        .map(level -> new TrendContent.Level(level.value(), level.words(), axes.at(level.mean())))
        .toList();
  }

  private double mean(int setup, double[] removed) {
    return IntStream.range(0, removed.length)
        .filter(i -> day.setup(i + 1) == setup && !Double.isNaN(removed[i]))
        .mapToDouble(i -> removed[i])
        .average()
        .orElse(Double.NaN);
  }

  private String bare(int setup) {
    return Shown.text(EndNames.bare(steps, plan.setups().get(setup).name()));
  }

  private List<TrendContent.Stint> stints(double[] removed, PictureAxes axes) {
    List<TrendContent.Stint> stints = new ArrayList<>();
    for (int i = 0; i < removed.length; i++) {
      if (!Double.isNaN(removed[i])) {
        stints.add(new TrendContent.Stint(rising.indexOf(day.setup(i + 1)), axes.at(removed[i])));
      }
    }
    return stints;
  }

  private static Limits limits(Comparison comparison, PictureAxes axes, double level) {
    double estimate = axes.length(comparison.result().estimate());
    if (comparison.result().noVariation()) {
      return new Limits(estimate, estimate); // no test and no interval: the line alone
    }
    return comparison
        .shifts(level)
        .map(i -> new Limits(axes.length(i.low()), axes.length(i.high())))
        .orElse(new Limits(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY));
  }

  private static Band band(Measure measure, double halfWidth) {
    String unit = measure.scale() == Scale.RATIO ? "%" : measure.unit();
    return new Band(
        halfWidth,
        List.of(
            WORDS.say("flatter.1", String.valueOf(measure.worthwhile()), unit),
            WORDS.say("flatter.2"),
            WORDS.say("flatter.3")));
  }

  private String axisWords(Comparison comparison) {
    int all = plan.stints();
    int used = comparison.stints().used();
    boolean drift = comparison.measure().drift().columns() > 1;
    boolean covariates =
        !TakenOut.of(day, comparison.measure(), comparison.stints()).used().isEmpty();
    String out = covariates ? drift ? "out.both" : "out.covariates" : drift ? "out.drift" : "";
    return WORDS.say(
        steps.unit().isBlank() ? "levels.number" : "levels.unit",
        steps.setting(),
        steps.unit(),
        used == all ? WORDS.say("levels.all", all) : WORDS.say("levels.some", used, all),
        out.isEmpty() ? "" : WORDS.say(out));
  }

  private List<String> said(Comparison comparison, FindingWords words) {
    if (comparison.result().noVariation()) {
      return List.of(WORDS.say("trend.still"));
    }
    Measure measure = comparison.measure();
    String size =
        measure.kind().counted() ? words.estimate() + " " + measure.unit() : words.estimate();
    String lowest = bare(rising.get(0));
    String highest = plan.setups().get(rising.get(rising.size() - 1)).name();
    return List.of(
        WORDS.say(comparison.shown() ? "trend.shown" : "trend.open", size),
        WORDS.say("trend.range", lowest, Shown.text(highest)),
        WORDS.say("trend.95", limitWords(comparison, words, 0.95)),
        WORDS.say("trend.90", limitWords(comparison, words, 0.90)));
  }

  /** Limits on both sides of level carry signs: up the axis or down. */
  private static String limitWords(Comparison comparison, FindingWords words, double level) {
    boolean oneSide = comparison.shifts(level).filter(i -> i.low() * i.high() > 0).isPresent();
    return oneSide ? words.interval(level) : words.signedInterval(level);
  }

  private static String sentence(Comparison comparison, FindingWords words) {
    return comparison.result().noVariation()
        ? WORDS.say("spoken.still", words.used())
        : WORDS.say("spoken.difference", words.used(), words.careful(), words.interval(0.95));
  }

  private static String up(Measure measure) {
    return switch (measure.kind()) {
      case LAP_TIME, SECTOR_TIME -> "up.timed";
      case LINE_SCALE, CATEGORY_SCALE -> "up.rating";
      case COUNT -> "up.count";
    };
  }

  private String bend() {
    return TrendWords.of(finding).map(w -> " " + w.bendTitle() + " " + w.bend()).orElse("");
  }

  private String spoken(Measure measure, double[] removed) {
    return String.join(
        " ",
        rising.stream()
            .filter(setup -> !Double.isNaN(mean(setup, removed)))
            .map(
                setup ->
                    WORDS.say(
                        "spoken.row",
                        plan.setups().get(setup).name(),
                        WORDS.say(
                            "mean",
                            Figures.value(measure, measure.scale().back(mean(setup, removed))))))
            .toList());
  }

  /** Raw stints over their levels, for a cell of a table; empty without values. */
  Optional<Drawing> small(Measure measure, StintValues stints) {
    double[] numbers = plan.levelNumbers();
    List<SmallLevels.Stint> all = new ArrayList<>();
    for (int stint = 1; stint <= plan.stints(); stint++) {
      double value = stints.said(stint, measure);
      if (!Double.isNaN(value)) {
        all.add(new SmallLevels.Stint(numbers[day.setup(stint)], value));
      }
    }
    return all.isEmpty()
        ? Optional.empty()
        : Optional.of(
            SmallLevels.of(
                Arrays.stream(numbers).boxed().sorted().toList(),
                all,
                new Spoken(Shown.text(measure.name()), "")));
  }
}
