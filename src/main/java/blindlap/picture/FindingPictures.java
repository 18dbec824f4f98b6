package blindlap.picture;

import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plot.Band;
import blindlap.plot.ConfidenceCurvePlot;
import blindlap.plot.CurveContent;
import blindlap.plot.Limits;
import blindlap.plot.PairRows;
import blindlap.plot.SetupMark;
import blindlap.plot.SmallInterval;
import blindlap.plot.SmallStints;
import blindlap.plot.StintRows;
import blindlap.plot.StintsAndDifference;
import blindlap.plot.StintsContent;
import blindlap.plot.surface.Drawing;
import blindlap.plot.surface.Spoken;
import blindlap.review.Comparison;
import blindlap.review.DayRecord;
import blindlap.review.Finding;
import blindlap.review.ManyComparison;
import blindlap.review.StintValues;
import blindlap.stats.compare.ConfidenceCurve;
import blindlap.stats.compare.ManySetups;
import blindlap.stats.compare.Scale;
import blindlap.stats.distribution.Interval;
import blindlap.wording.EndNames;
import blindlap.wording.FindingText;
import blindlap.wording.FindingWords;
import blindlap.wording.ManyWords;
import blindlap.wording.NullRunWords;
import blindlap.wording.day.Figures;
import blindlap.wording.day.Shown;
import blindlap.wording.day.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** The pictures of a finding: the same drawings for screen, PDF and HTML. */
public final class FindingPictures {
  private static final Words WORDS = Words.of("pictures");

  private final Finding finding;
  private final DayRecord day;
  private final Plan plan;
  private final FindingText text;
  private final Optional<LevelsPicture> levels;

  public FindingPictures(Finding finding) {
    this.finding = finding;
    this.day = finding.day();
    this.plan = day.plan();
    this.text = new FindingText(finding);
    this.levels = LevelsPicture.of(finding);
  }

  /**
   * Every stint by setup, and the difference under it; of a steps day every stint over its level,
   * and the trend. Empty where nothing could be compared.
   */
  public Optional<Drawing> difference() {
    if (levels.isPresent()) {
      return finding.primary().map(levels.get()::trend);
    }
    Optional<Drawing> two = finding.primary().map(this::difference);
    return two.isPresent() ? two : finding.many().stream().findFirst().map(this::difference);
  }

  /**
   * The same for a picture that stands alone: of several setups stints and pairs are two drawings,
   * so that they find room beside one another.
   */
  public List<Drawing> alone() {
    return finding.primary().isEmpty() && !finding.many().isEmpty()
        ? of(content(finding.many().get(0), WORDS.say("first.larger")))
        : difference().stream().toList();
  }

  private static List<Drawing> of(StintsContent content) {
    return List.of(StintRows.of(content), PairRows.of(content));
  }

  /** The stints of the primary measure in ridden order, with drift. */
  public Optional<Drawing> riddenOrder() {
    Optional<Drawing> two =
        finding.primary().map(p -> ridden(p.measure(), p.stints(), above(p.result().estimate())));
    return two.isPresent()
        ? two
        : finding.many().stream()
            .findFirst()
            .map(m -> ridden(m.measure(), m.stints(), m.aboveFirst()));
  }

  /** Estimate of each setup less the first; of each level its share of the trend. */
  private double[] above(double estimate) {
    return levels.isPresent() ? LevelsPicture.shares(plan, estimate) : new double[] {0, estimate};
  }

  private Drawing ridden(Measure measure, StintValues stints, double[] above) {
    return new OrderPicture(day, measure, stints, above).open();
  }

  /** The confidence curve of the primary measure; empty without one. */
  public Optional<Drawing> curve() {
    return finding
        .primary()
        .filter(p -> p.tested() && !p.result().noVariation() && p.curve().knots().length > 0)
        .map(this::curve);
  }

  /** Raw stints of a measure, for a cell of a table; empty without values. */
  public Optional<Drawing> small(Measure measure, StintValues stints) {
    if (levels.isPresent()) {
      return levels.get().small(measure, stints);
    }
    List<SmallStints.Row> rows = new ArrayList<>();
    for (int setup = 0; setup < plan.setups().size(); setup++) {
      rows.add(new SmallStints.Row(SetupMark.of(setup), said(measure, stints, setup)));
    }
    return rows.stream().allMatch(r -> r.values().isEmpty())
        ? Optional.empty()
        : Optional.of(SmallStints.of(rows, new Spoken(Shown.text(measure.name()), "")));
  }

  /** The interval of a measure against its worthwhile band, for a cell of a table. */
  public Drawing small(Comparison comparison) {
    double worthwhile =
        comparison.worthwhileBand().map(b -> picture(comparison, b.high())).orElse(0.0);
    return SmallInterval.of(
        new SmallInterval.Content(
            picture(comparison, comparison.result().estimate()),
            limits(comparison, 0.95),
            limits(comparison, 0.90),
            worthwhile),
        new Spoken(
            NullRunWords.plain(day, text.words(comparison), comparison.measure().name()), ""));
  }

  private List<Double> said(Measure measure, StintValues stints, int setup) {
    return IntStream.rangeClosed(1, plan.stints())
        .filter(stint -> day.setup(stint) == setup)
        .mapToDouble(stint -> stints.said(stint, measure))
        .filter(value -> !Double.isNaN(value))
        .boxed()
        .toList();
  }

  /** Shifts are drawn in the unit, or in hundredths of a logarithm on the ratio scale. */
  private static double picture(Comparison comparison, double shift) {
    return comparison.measure().scale() == Scale.RATIO ? 100 * shift : shift;
  }

  private static Limits limits(Comparison comparison, double level) {
    return comparison
        .shifts(level)
        .map(i -> limits(comparison, i))
        .orElse(new Limits(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY));
  }

  private static Limits limits(Comparison comparison, Interval shifts) {
    return new Limits(picture(comparison, shifts.low()), picture(comparison, shifts.high()));
  }

  private Drawing difference(Comparison comparison) {
    FindingWords words = text.words(comparison);
    double[] means =
        PictureAxes.means(
            day, comparison.stints(), new double[] {0, comparison.result().estimate()});
    PictureAxes axes = PictureAxes.of(comparison.measure(), means[0]);
    List<StintsContent.Row> rows = rows(comparison.measure(), comparison.stints(), means, axes);
    StintsContent.Pair pair =
        new StintsContent.Pair(
            SetupMark.B,
            SetupMark.A,
            WORDS.say("difference"),
            WORDS.say("less", plan.setups().get(1).name(), plan.setups().get(0).name()),
            picture(comparison, comparison.result().estimate()),
            limits(comparison, 0.95),
            limits(comparison, 0.90),
            NullRunWords.shortDifference(day, words),
            WORDS.say("interval", words.interval(0.95)));
    return StintsAndDifference.of(
        new StintsContent(
            rows,
            axes.values(),
            List.of(pair),
            axes.difference(),
            noise(comparison, words),
            worthwhile(comparison),
            words.side(-1),
            words.side(1),
            new Spoken(
                WORDS.say(
                    "spoken.difference",
                    words.used(),
                    NullRunWords.careful(day, words),
                    words.interval(0.95)),
                rowWords(rows))));
  }

  private static String rowWords(List<StintsContent.Row> rows) {
    return String.join(
        " ", rows.stream().map(r -> WORDS.say("spoken.row", r.name(), r.meanWords())).toList());
  }

  private Optional<Band> noise(Comparison comparison, FindingWords words) {
    double sd = picture(comparison, comparison.result().noiseSd());
    return sd > 0
        ? Optional.of(
            new Band(sd, List.of(WORDS.say("noise.1"), WORDS.say("noise.2", words.noiseSize()))))
        : Optional.empty();
  }

  private Band worthwhile(Comparison comparison) {
    // Without a declared difference there is nothing to hatch: a band thinner than a hair.
    return comparison
        .worthwhileBand()
        .map(b -> PictureAxes.band(comparison.measure(), picture(comparison, b.high())))
        .orElseGet(() -> new Band(1e-6 * Math.max(1e-6, comparison.result().noiseSd()), List.of()));
  }

  private List<StintsContent.Row> rows(
      Measure measure, StintValues stints, double[] means, PictureAxes axes) {
    List<StintsContent.Row> rows = new ArrayList<>();
    for (int setup = 0; setup < plan.setups().size(); setup++) {
      int each = setup;
      List<Double> values =
          IntStream.rangeClosed(1, plan.stints())
              .filter(stint -> day.setup(stint) == each)
              .mapToDouble(stint -> stints.values()[stint - 1])
              .filter(value -> !Double.isNaN(value))
              .map(axes::at)
              .boxed()
              .toList();
      rows.add(
          new StintsContent.Row(
              SetupMark.of(setup),
              Shown.text(plan.setups().get(setup).name()),
              values,
              axes.at(means[setup]),
              WORDS.say("mean", Figures.value(measure, measure.scale().back(means[setup])))));
    }
    return rows;
  }

  private Drawing difference(ManyComparison many) {
    return StintsAndDifference.of(content(many, WORDS.say("first.more")));
  }

  private StintsContent content(ManyComparison many, String right) {
    ManyWords words = text.words(many);
    double[] means = PictureAxes.means(day, many.stints(), many.aboveFirst());
    PictureAxes axes = PictureAxes.of(many.measure(), means[0]);
    List<StintsContent.Pair> pairs =
        many.result().pairs().stream().map(p -> pair(many, p, words)).toList();
    double sd = axes.length(many.result().noiseSd());
    Optional<Interval> band =
        Optional.ofNullable(many.measure().worthwhile())
            .map(d -> many.measure().scale().margin(d.doubleValue()))
            .map(m -> new Interval(-m, m));
    List<StintsContent.Row> rows = rows(many.measure(), many.stints(), means, axes);
    return new StintsContent(
        rows,
        axes.values(),
        pairs,
        axes.difference(),
        sd > 0
            ? Optional.of(
                new Band(
                    sd, List.of(WORDS.say("noise.1"), WORDS.say("noise.2", words.noiseSize()))))
            : Optional.empty(),
        band.map(b -> PictureAxes.band(many.measure(), axes.length(b.high())))
            .orElse(new Band(1e-6 * Math.max(1e-6, sd), List.of())),
        WORDS.say("first.less"),
        right,
        new Spoken(words.headline(), rowWords(rows)));
  }

  /** Pairs of three and more setups have adjusted p-values and one interval, for all together. */
  private StintsContent.Pair pair(ManyComparison many, ManySetups.Pair pair, ManyWords words) {
    double unit = many.measure().scale() == Scale.RATIO ? 100 : 1;
    double shift = unit * pair.estimate();
    Limits limits =
        many.shifts(pair)
            .map(i -> new Limits(unit * i.low(), unit * i.high()))
            .orElse(new Limits(shift, shift));
    return new StintsContent.Pair(
        SetupMark.of(pair.second()),
        SetupMark.of(pair.first()),
        many.tested() ? ManyWords.p(pair.pAdjusted()) : "",
        WORDS.say(
            "less",
            plan.setups().get(pair.second()).name(),
            plan.setups().get(pair.first()).name()),
        shift,
        limits,
        new Limits(shift, shift),
        words.size(pair),
        many.tested()
            ? WORDS.say(many.separated(pair) ? "pair.differs" : "pair.open", words.interval(pair))
            : words.interval(pair));
  }

  private Drawing curve(Comparison comparison) {
    FindingWords words = text.words(comparison);
    ConfidenceCurve curve = comparison.curve();
    double[] knots = curve.knots();
    double[] heights = new double[knots.length + 1];
    double total = curve.total();
    for (int i = 0; i <= knots.length; i++) {
      long side = curve.always() + Math.min(i, knots.length - i);
      heights[i] = Math.min(1, 2 * side / total);
    }
    for (int i = 0; i < knots.length; i++) {
      knots[i] = picture(comparison, knots[i]);
    }
    PictureAxes axes = PictureAxes.of(comparison.measure(), 0);
    return ConfidenceCurvePlot.of(
        new CurveContent(
            picture(comparison, comparison.result().estimate()),
            WORDS.say("best", words.estimate()),
            new CurveContent.Named(limits(comparison, 0.95), WORDS.say("95", words.interval(0.95))),
            new CurveContent.Named(limits(comparison, 0.90), WORDS.say("90", words.interval(0.90))),
            comparison.p(),
            List.of(WORDS.say("none"), words.p()),
            worthwhile(comparison),
            axes.supposed(plan.ends().get(1), EndNames.of(plan).bare().get(0)),
            PictureAxes.share(Figures.count(finding.orders().count())),
            new Spoken(
                WORDS.say("spoken.curve", words.estimate(), words.interval(0.95), words.p()), "")),
        knots,
        heights);
  }
}
