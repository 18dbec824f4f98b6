package blindlap.wording;

import blindlap.plan.BlindLevel;
import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.review.Caveat;
import blindlap.review.Comparison;
import blindlap.review.DayRecord;
import blindlap.review.LooksFound;
import blindlap.stats.compare.OneDifference;
import blindlap.stats.compare.Verdict;
import blindlap.stats.distribution.Interval;
import blindlap.wording.day.Figures;
import blindlap.wording.day.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** One measure of a two-setup finding in sentences. */
public final class FindingWords {
  static final Words WORDS = Words.of("finding");

  /** A difference this small a share of the noise is rounding of the arithmetic: none. */
  private static final double ROUNDING = 1e-9;

  private final List<String> setups;
  private final EndNames names;
  private final Comparison comparison;
  private final Measure measure;
  private final Way way;
  private final DifferenceWords words;
  private final Sizes sizes;
  private final boolean byName;
  private final List<String> takenOut;
  private final BlindLevel level;

  /** Words for a measure of a committed plan with two setups. */
  public FindingWords(Plan plan, Comparison comparison) {
    this(plan, comparison, false, List.of());
  }

  /** The same of a day; of a null run, where one setup was on, the names alone differ. */
  static FindingWords of(DayRecord day, Comparison comparison) {
    List<String> out = CovariateWords.takenOut(day, comparison.measure(), comparison.stints());
    return new FindingWords(day.plan(), comparison, day.nullRun(), out);
  }

  private FindingWords(Plan plan, Comparison comparison, boolean byName, List<String> takenOut) {
    this.byName = byName;
    this.takenOut = takenOut;
    this.level = plan.level();
    this.names = EndNames.of(plan);
    this.setups = names.names();
    this.comparison = comparison;
    this.measure = comparison.measure();
    this.way = Way.of(measure);
    this.words =
        new DifferenceWords(
            names,
            measure,
            snapped(comparison.result().estimate()),
            List.of(shifts(0.95), shifts(0.90)),
            comparison.result().noiseSd(),
            byName);
    this.sizes = words.sizes();
  }

  /** An interval with limits that are "no difference" but for rounding set to it. */
  private Optional<Interval> shifts(double level) {
    return comparison.shifts(level).map(this::snapped);
  }

  private Interval snapped(Interval interval) {
    return new Interval(snapped(interval.low()), snapped(interval.high()));
  }

  private double snapped(double limit) {
    return Math.abs(limit) <= ROUNDING * comparison.result().noiseSd() ? 0 : limit;
  }

  /** The phrase of a verdict. */
  public static String phrase(Verdict verdict) {
    return VerdictWords.phrase(verdict);
  }

  /** The phrase of this measure's verdict as people read it. */
  public String phrase() {
    Verdict verdict = comparison.verdict().orElseThrow();
    return names.trend() && verdict == Verdict.NO_WORTHWHILE_DIFFERENCE
        ? VerdictWords.ofTrend(verdict)
        : VerdictWords.phrase(level, measure, verdict);
  }

  /** True if the setup named first got worse by as much as matters; a capped phrase names none. */
  private boolean worseByMuch() {
    return !VerdictWords.capped(level)
        && comparison.verdict().filter(Verdict.REAL_AND_WORTHWHILE::equals).isPresent()
        && measure.better() != Measure.Better.NEITHER
        && !way.firstIsBetter(measure);
  }

  private String firstNamed() {
    return setups.get(way.first(comparison.result().estimate()));
  }

  /** "Shock L was 2.3 s a lap faster than Shock K"; "no difference" where there is exactly none. */
  public String difference() {
    return words.difference();
  }

  /** The difference; one that is not shown is called a best estimate and no more. */
  public String careful() {
    return comparison.shown() ? difference() : WORDS.say("best.alone", difference());
  }

  /** "2.3 s faster", for a plot; "best estimate 2.3 s faster" where that is not shown. */
  public String shortDifference() {
    String said = WORDS.say("bare." + word(), estimate());
    return comparison.shown() ? said : WORDS.say("bare.open", said);
  }

  /** "2.3 s faster", of the better setup; "with Shock K taking 2 % longer" on the ratio scale. */
  String gain() {
    if (!way.firstIsBetter(measure)) {
      return WORDS.say("gain.percent", firstNamed(), estimate());
    }
    return measure.kind().counted()
        ? WORDS.say("gain." + word(), estimate(), measure.name(), measure.unit())
        : WORDS.say("bare." + word(), estimate());
  }

  /** "2.3 s", the size of the estimate. */
  public String estimate() {
    return sizes.with(sizes.estimate(comparison.result().estimate()));
  }

  private String word() {
    return way.name().toLowerCase(Locale.ROOT).replace('_', '.');
  }

  /** "Shock K faster", for the two sides of an axis; side −1 is below zero (B − A). */
  public String side(int side) {
    return words.side(side);
  }

  /** An interval in words: "1.7 to 3.0 s", or from one setup's side to the other's. */
  public String interval(double level) {
    return words.interval(shifts(level));
  }

  /** The key of a sentence, or of what is said in its place of a trend. */
  String key(String key) {
    return names.key(key);
  }

  /** The headline in three parts: before, the verdict phrase, after. */
  public Headline headline() {
    Verdict verdict = comparison.verdict().orElseThrow();
    String key =
        switch (verdict) {
          case REAL_AND_WORTHWHILE, REAL_BUT_SMALL, DIRECTION_KNOWN ->
              worseByMuch() ? "headline.worse" : "headline.difference";
          case NO_WORTHWHILE_DIFFERENCE, NOT_SETTLED, NO_VARIATION, COULD_NOT_SHOW ->
              "headline.setups";
        };
    return Headline.of(
        WORDS.say(
            names.key(key),
            difference(),
            setups.get(0),
            setups.get(1),
            Headline.PLACE,
            firstNamed(),
            names.range()),
        phrase());
  }

  /** The verdict sentence with its numbers. */
  public String sentence() {
    Verdict verdict = comparison.verdict().orElseThrow();
    return WORDS.say(
        names.key("sentence." + told(verdict)),
        difference(),
        interval(0.95),
        interval(0.90),
        Sizes.worthwhile(measure),
        ending(verdict),
        setups.get(0),
        setups.get(1));
  }

  /** A sentence that says "more than this rider's noise explains" says it once. */
  private String ending(Verdict verdict) {
    if (VerdictWords.capped(level) && comparison.shown() && verdict.settled()
        || VerdictWords.capped(level) && verdict == Verdict.DIRECTION_KNOWN) {
      return verdict == Verdict.NO_WORTHWHILE_DIFFERENCE ? phrase() : VerdictWords.tail(level);
    }
    return worseByMuch() ? WORDS.say("phrase.worse", phrase(), firstNamed()) : phrase();
  }

  /** Of a day that was stopped early nothing is said of the size. */
  private String told(Verdict verdict) {
    boolean stopped = comparison.looks().filter(LooksFound::stopped).isPresent();
    return stopped && verdict == Verdict.DIRECTION_KNOWN ? "STOPPED" : verdict.name();
  }

  /** What the verdict means, for under the headline: limits first, p last and in brackets. */
  public String lead() {
    Verdict verdict = comparison.verdict().orElseThrow();
    return WORDS.say(
        names.key("lead." + told(verdict)),
        interval(0.95),
        interval(0.90),
        Sizes.worthwhile(measure),
        p(),
        setups.get(0),
        setups.get(1));
  }

  /** The sentence of a measure without verdict: difference, interval, adjusted p. */
  public String plain() {
    List<String> parts = new ArrayList<>();
    if (comparison.result().noVariation()) {
      return WORDS.say("plain.variation", measure.name());
    }
    if (!comparison.tested()) {
      return WORDS.say("plain." + untested(), measure.name(), difference(), interval(0.95));
    }
    parts.add(
        WORDS.say(
            plainKey(),
            measure.name(),
            difference(),
            interval(0.95),
            p(),
            adjusted(),
            setups.get(0),
            setups.get(1)));
    if (comparison.measure().worthwhile() != null && measure.role() != Measure.Role.PRIMARY) {
      parts.add(size());
    }
    return String.join(" ", parts);
  }

  private String untested() {
    return comparison.caveats().contains(Caveat.MISSING)
        ? "untested"
        : comparison.caveats().contains(Caveat.ENDED_FREELY) ? "ended" : "stopped";
  }

  private String plainKey() {
    String key = comparison.shown() ? "plain.shown" : "plain.open";
    return comparison.adjusted().isPresent() ? key + ".adjusted" : key;
  }

  /** Where the 90 % limits lie against the worthwhile difference; says nothing more than that. */
  private String size() {
    Optional<Interval> ninety = shifts(0.90);
    Interval band = comparison.worthwhileBand().orElseThrow();
    String key = "size.open";
    if (comparison.curve().fallsShortOf(band.high(), 0.05)
        && comparison.curve().exceeds(band.low(), 0.05)) {
      key = "size.within";
    } else if (comparison.curve().exceeds(band.high(), 0.05)
        || comparison.curve().fallsShortOf(band.low(), 0.05)) {
      key = "size.beyond";
    }
    return ninety.isEmpty()
        ? WORDS.say("size.unbounded")
        : WORDS.say(key, interval(0.90), Sizes.worthwhile(measure), alone());
  }

  /** Stands behind an unadjusted interval wherever the p beside it is adjusted. */
  private String alone() {
    return comparison.adjusted().isPresent() ? WORDS.say("alone") : "";
  }

  /** "p = .0015". */
  public String p() {
    return p(comparison.p());
  }

  /** "p = .004" or "p below .0001". */
  static String p(double p) {
    return DifferenceWords.p(p);
  }

  private String adjusted() {
    return p(comparison.adjusted().orElse(comparison.p()));
  }

  /** What a watched harm comes to, for both setups. */
  public List<String> harm() {
    return new HarmWords(setups, comparison, byName).lines();
  }

  /** The harm in the same sentence as the verdict. */
  String harmInHeadline(int setup) {
    return new HarmWords(setups, comparison, byName).inHeadline(setup);
  }

  /** Interval, p, orders; noise; stints used: one sentence each. */
  public List<String> evidence(String orders) {
    List<String> lines = new ArrayList<>();
    OneDifference result = comparison.result();
    if (!result.noVariation() && !comparison.tested()) {
      lines.add(WORDS.say("evidence." + untested(), interval(0.95)));
    } else if (!result.noVariation() && comparison.looks().isPresent()) {
      LooksFound looks = comparison.looks().get();
      lines.add(LooksFoundWords.evidence(interval(0.95), looks, comparison.ordinaryP(), orders));
    } else if (!result.noVariation()) {
      lines.add(
          WORDS.say(
              result.sampled() ? "evidence.sampled" : "evidence.interval",
              interval(0.95),
              p(),
              orders,
              Figures.p(result.pError(comparison.p())),
              Figures.count(result.sampling().draws())));
    }
    lines.add(noise());
    lines.add(used());
    ratio().ifPresent(lines::add);
    lines.addAll(caveats());
    return lines;
  }

  /** "Rider noise 0.64 s from stint to stint". */
  public String noise() {
    return noise(names, noiseSize(), comparison.riderNoise().df(), takenOut);
  }

  static String noise(EndNames names, String size, int df, List<String> out) {
    String key = names.key(out.isEmpty() ? "evidence.noise" : "evidence.noise.covariates");
    return WORDS.say(key, size, df, out.isEmpty() ? "" : StintList.and(out));
  }

  /** "0.64 s". */
  public String noiseSize() {
    double size = Sizes.size(measure, comparison.riderNoise().sd());
    return Figures.number(size, Figures.decimals(size) + 1)
        + (measure.kind().counted() ? " " + measure.unit() : sizes.unit());
  }

  /** "15 of 16 stints used; 1 void, 0 not ridden or without a value." */
  public String used() {
    return StintsUsed.say(comparison.stints());
  }

  /** The ratio of counts, for counts. */
  public Optional<String> ratio() {
    return comparison
        .ratio()
        .filter(r -> r.ratio() > 0 && !Double.isInfinite(r.ratio()))
        .map(r -> RatioWords.said(setups, r, byName));
  }

  /** Caveats of this measure. */
  public List<String> caveats() {
    return comparison.caveats().stream().map(this::caveat).toList();
  }

  private String caveat(Caveat caveat) {
    return WORDS.say("caveat." + caveat.name(), measure.name());
  }

  /** Another result of this measure, such as that without some stints, with its interval. */
  String beside(OneDifference other, boolean estimateOnly) {
    return new BesideWords(names, comparison, byName).said(other, estimateOnly);
  }

  /** The worthwhile difference as declared, with its unit; empty if none was. */
  public static String worthwhile(Measure measure) {
    return Sizes.worthwhile(measure);
  }

  /** "secondary, higher is better". */
  public static String role(Measure measure) {
    Words words = Words.of("report");
    return words.say("role." + measure.role().name())
        + ", "
        + words.say("better." + measure.better().name());
  }

  /** Signed B − A for a table: "−2.3 s", or "× 0.977" on the ratio scale. */
  public String signed() {
    return Cells.estimate(comparison, sizes.decimals());
  }

  /** Signed interval for a table. */
  public String signedInterval(double level) {
    return shifts(level)
        .map(i -> Cells.interval(comparison, i, sizes))
        .orElse(WORDS.say("unbounded"));
  }
}
