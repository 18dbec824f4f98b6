package blindlap.wording;

import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plan.Setup;
import blindlap.review.Caveat;
import blindlap.review.ManyComparison;
import blindlap.stats.compare.HarmTest;
import blindlap.stats.compare.ManySetups;
import blindlap.stats.compare.Scale;
import blindlap.stats.distribution.Interval;
import blindlap.wording.day.Figures;
import blindlap.wording.day.Words;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** One measure of three or more setups in sentences: which differ from which, no false order. */
public final class ManyWords {
  private static final Words WORDS = FindingWords.WORDS;

  /** A difference this small a share of the noise is rounding of the arithmetic: none. */
  private static final double ROUNDING = 1e-9;

  private final List<String> setups;
  private final ManyComparison comparison;
  private final Measure measure;
  private final Way way;
  private final boolean byName;

  /**
   * Words for a measure of a committed plan with three or more setups.
   *
   * @param byName true for a null run, where one setup was on under every name
   */
  public ManyWords(Plan plan, ManyComparison comparison, boolean byName) {
    this.byName = byName;
    this.setups = plan.setups().stream().map(Setup::name).toList();
    this.comparison = comparison;
    this.measure = comparison.measure();
    this.way = Way.of(measure);
  }

  /** "Shock L was 2.3 s a lap faster than Shock K". */
  public String difference(ManySetups.Pair pair) {
    if (Math.abs(pair.estimate()) <= ROUNDING * comparison.result().noiseSd()) {
      return WORDS.say(
          "equal", setups.get(pair.first()), setups.get(pair.second()), measure.name());
    }
    if (byName) {
      return WORDS.say(
          "null.careful", setups.get(pair.second()), setups.get(pair.first()), signed(pair));
    }
    boolean secondFirst = way.first(pair.estimate()) == 1;
    int first = secondFirst ? pair.second() : pair.first();
    int other = secondFirst ? pair.first() : pair.second();
    return WORDS.say(
        way.key(measure),
        setups.get(first),
        setups.get(other),
        size(pair),
        measure.name(),
        measure.unit());
  }

  /** "2.3 s". */
  public String size(ManySetups.Pair pair) {
    Sizes sizes = sizes(pair);
    return sizes.with(sizes.estimate(pair.estimate()));
  }

  private Sizes sizes(ManySetups.Pair pair) {
    return Sizes.of(
        measure, pair.estimate(), List.of(comparison.shifts(pair)), comparison.result().noiseSd());
  }

  /** The approximate interval of a pair in words. */
  public String interval(ManySetups.Pair pair) {
    return comparison
        .shifts(pair)
        .map(i -> interval(pair, i, sizes(pair)))
        .orElse(WORDS.say("unbounded"));
  }

  private String interval(ManySetups.Pair pair, Interval interval, Sizes digits) {
    if (byName) {
      return IntervalWords.signed(interval, digits.limits(interval), digits.unit());
    }
    return new IntervalWords(way, setups.get(pair.first()), setups.get(pair.second()))
        .say(interval, digits);
  }

  /** "p = .004". */
  public static String p(double p) {
    return FindingWords.p(p);
  }

  /** One sentence: which differ from which, and how far the others still may. */
  public String headline() {
    if (!comparison.tested() || byName) {
      return omnibus();
    }
    List<ManySetups.Pair> shown = comparison.separatedPairs();
    if (shown.isEmpty()) {
      return WORDS.say("many.headline.none", measure.name(), farthest());
    }
    if (comparison.ordered()) {
      return WORDS.say("many.headline.order", measure.name(), order());
    }
    ManySetups.Pair largest =
        shown.stream().max(Comparator.comparingDouble(p -> Math.abs(p.estimate()))).orElseThrow();
    return WORDS.say(
        shown.size() == 1 ? "many.headline.one" : "many.headline.several",
        difference(largest),
        farthest(),
        shown.size(),
        comparison.result().pairs().size(),
        measure.name());
  }

  /** The largest limit of the intervals of the pairs that are not told apart. */
  private String farthest() {
    double farthest = 0;
    String words = "";
    for (ManySetups.Pair pair : comparison.result().pairs()) {
      Interval interval = comparison.shifts(pair).orElseThrow();
      double limit = Math.max(Math.abs(interval.low()), Math.abs(interval.high()));
      if (!comparison.separated(pair) && limit > farthest) {
        farthest = limit;
        Sizes digits = sizes(pair);
        boolean low = limit == Math.abs(interval.low());
        words = digits.limits(interval).get(low ? 0 : 1).toPlainString() + unit(digits);
      }
    }
    return words;
  }

  private String unit(Sizes digits) {
    return measure.kind().counted() ? " " + measure.unit() : digits.unit();
  }

  private String order() {
    List<Integer> ranked = new ArrayList<>(comparison.ranked());
    if (measure.better() == Measure.Better.HIGHER) {
      java.util.Collections.reverse(ranked);
    }
    return ranked.stream().map(setups::get).collect(Collectors.joining(", "));
  }

  static String joined(List<String> parts) {
    return String.join("; ", parts);
  }

  /** Do they differ at all. */
  public String omnibus() {
    if (comparison.untested()) {
      boolean missing = comparison.caveats().contains(Caveat.MISSING);
      return WORDS.say(missing ? "many.untested" : "many.ended", measure.name());
    }
    if (comparison.result().noVariation()) {
      return WORDS.say("many.variation", measure.name());
    }
    double p = comparison.adjusted().orElse(comparison.result().p());
    String key = comparison.differs() ? "many.differs" : "many.open";
    return WORDS.say(
        comparison.adjusted().isPresent() ? key + ".adjusted" : key, measure.name(), p(p));
  }

  /** One sentence a pair. */
  public List<String> pairs() {
    if (!comparison.tested()) {
      return List.of();
    }
    return comparison.result().pairs().stream().map(this::pair).toList();
  }

  private String pair(ManySetups.Pair pair) {
    String key = comparison.separated(pair) ? "many.pair.shown" : "many.pair.open";
    return WORDS.say(
            key,
            difference(pair),
            p(pair.pAdjusted()),
            comparison.result().pairs().size(),
            setups.get(pair.first()),
            setups.get(pair.second()),
            interval(pair),
            comparison.adjusted().isPresent() ? WORDS.say("alone") : "")
        + size(comparison.against(pair));
  }

  /** Where the interval lies against what matters; a watched harm has sentences of its own. */
  private String size(Optional<ManyComparison.Size> size) {
    return measure.role() == Measure.Role.WATCH_FOR_HARM
        ? ""
        : size.map(s -> WORDS.say("many.size." + s.name(), Sizes.worthwhile(measure))).orElse("");
  }

  /** "17 of 18 stints used; 1 void, 0 not ridden or without a value." */
  public String used() {
    return StintsUsed.say(comparison.stints());
  }

  /** "Rider noise 0.64 s from stint to stint". */
  public String noise(blindlap.review.DayRecord day) {
    List<String> out = CovariateWords.takenOut(day, measure, comparison.stints());
    return FindingWords.noise(EndNames.of(List.of()), noiseSize(), comparison.result().df(), out);
  }

  /** "0.64 s". */
  public String noiseSize() {
    double size = Sizes.size(measure, comparison.result().noiseSd());
    String unit = measure.scale() == Scale.RATIO ? "%" : measure.unit();
    return Figures.number(size, Figures.decimals(size) + 1) + " " + unit;
  }

  /** Caveats of this measure. */
  public List<String> caveats() {
    List<String> lines = new ArrayList<>();
    comparison.caveats().forEach(c -> lines.add(WORDS.say("caveat." + c.name(), measure.name())));
    return lines;
  }

  /** What is said of a watched harm beside {@link #worse}: ruled out where, not settled where. */
  public List<String> harm() {
    if (measure.role() != Measure.Role.WATCH_FOR_HARM) {
      return List.of();
    }
    if (measure.worthwhile() == null) {
      return List.of(WORDS.say("many.harm.no.size", measure.name()));
    }
    List<String> lines = new ArrayList<>();
    List<String> out = pairs(HarmTest.Finding.RULED_OUT);
    List<String> open = pairs(HarmTest.Finding.NOT_SETTLED);
    if (!out.isEmpty()) {
      boolean all = out.size() == comparison.harms().size();
      String key = all ? "many.harm.out.all" : "many.harm.out";
      lines.add(WORDS.say(key, measure.name(), declared(), joined(out)));
    }
    if (!open.isEmpty()) {
      lines.add(WORDS.say("many.harm.open", measure.name(), declared(), joined(open)));
    }
    return byName ? ByName.lines(lines) : lines;
  }

  private List<String> pairs(HarmTest.Finding found) {
    return comparison.harms().stream()
        .filter(h -> h.found() == found)
        .map(h -> setups.get(h.pair().first()) + WORDS.say("and") + setups.get(h.pair().second()))
        .toList();
  }

  /** "Tyre S against Tyre T, dabs: harm of 2 a lap or more shown (…)." */
  List<String> worse() {
    List<String> lines = shownHarms();
    return byName ? ByName.lines(lines) : lines;
  }

  private List<String> shownHarms() {
    return comparison.shownHarms().stream()
        .map(
            harm -> {
              int worse = comparison.worse(harm.pair());
              int other = worse == harm.pair().first() ? harm.pair().second() : harm.pair().first();
              Sizes digits =
                  Sizes.of(
                      measure,
                      harm.pair().estimate(),
                      List.of(Optional.of(harm.interval())),
                      comparison.result().noiseSd());
              return WORDS.say(
                  "many.harm.shown",
                  setups.get(worse),
                  setups.get(other),
                  measure.name(),
                  declared(),
                  digits.estimate(harm.pair().estimate()) + unit(digits),
                  interval(harm.pair(), harm.interval(), digits));
            })
        .toList();
  }

  private String declared() {
    return Sizes.worthwhile(measure);
  }

  /** What stands beside the result as planned: do they differ, and the pairs. */
  String beside(boolean estimateOnly) {
    String pairs =
        joined(
            comparison.result().pairs().stream()
                .map(
                    p ->
                        estimateOnly
                            ? WORDS.say("best.alone", difference(p))
                            : !comparison.tested()
                                ? WORDS.say("best.alone", difference(p))
                                : WORDS.say(
                                    comparison.separated(p)
                                        ? "many.beside.pair"
                                        : "many.beside.pair.open",
                                    difference(p),
                                    p(p.pAdjusted()),
                                    setups.get(p.first()),
                                    setups.get(p.second()),
                                    interval(p)))
                .toList());
    if (!estimateOnly && !comparison.tested()) {
      return WORDS.say("many.beside.untested", pairs);
    }
    return estimateOnly
        ? WORDS.say("many.beside.estimate", pairs)
        : WORDS.say("many.beside", p(comparison.result().p()), pairs);
  }

  private String signed(ManySetups.Pair pair) {
    return sign(pair.estimate()) + withUnit(pair);
  }

  private String withUnit(ManySetups.Pair pair) {
    return size(pair) + (measure.kind().counted() ? " " + measure.unit() : "");
  }

  /** Signed limits of a pair for a table, on the digits of its estimate. */
  private String signedInterval(ManySetups.Pair pair) {
    return comparison
        .shifts(pair)
        .map(
            i -> {
              List<BigDecimal> limits = sizes(pair).limits(i);
              return WORDS.say(
                  "interval.one.side",
                  sign(i.low()) + limits.get(0).toPlainString(),
                  sign(i.high()) + limits.get(1).toPlainString());
            })
        .orElse(WORDS.say("unbounded"));
  }

  private static String sign(double value) {
    return value < 0 ? "−" : value > 0 ? "+" : "";
  }

  /** The pairs as lines for a cell: "T less S: +1.9 s (+0.8 to +3.0), p = .003". */
  public List<String> cells() {
    return comparison.result().pairs().stream()
        .map(
            pair ->
                WORDS.say(
                    comparison.tested() ? "many.cell" : "many.cell.untested",
                    setups.get(pair.second()),
                    setups.get(pair.first()),
                    signed(pair),
                    p(pair.pAdjusted()),
                    signedInterval(pair)))
        .toList();
  }
}
