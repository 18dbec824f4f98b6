package blindlap.wording;

import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plan.Setup;
import blindlap.review.Caveat;
import blindlap.review.ManyComparison;
import blindlap.stats.compare.ManySetups;
import blindlap.stats.compare.Scale;
import blindlap.stats.distribution.Interval;
import blindlap.wording.day.Figures;
import blindlap.wording.day.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** One measure of three or more setups in sentences: which differ from which, no false order. */
public final class ManyWords {
  private static final Words WORDS = FindingWords.WORDS;

  private final List<String> setups;
  private final ManyComparison comparison;
  private final Measure measure;
  private final Way way;

  /** Words for a measure of a committed plan with three or more setups. */
  public ManyWords(Plan plan, ManyComparison comparison) {
    this.setups = plan.setups().stream().map(Setup::name).toList();
    this.comparison = comparison;
    this.measure = comparison.measure();
    this.way = Way.of(measure);
  }

  /** "Shock L was 2.3 s a lap faster than Shock K". */
  public String difference(ManySetups.Pair pair) {
    if (pair.estimate() == 0) {
      return WORDS.say(
          "equal", setups.get(pair.first()), setups.get(pair.second()), measure.name());
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
    Sizes sizes =
        Sizes.of(
            measure,
            pair.estimate(),
            List.of(Optional.<Interval>empty()),
            comparison.result().noiseSd());
    return sizes.estimate(pair.estimate()) + sizes.unit();
  }

  /** "p = .004". */
  public static String p(double p) {
    return FindingWords.p(p);
  }

  /** One sentence: which differ from which. */
  public String headline() {
    List<ManySetups.Pair> shown = comparison.separatedPairs();
    if (shown.isEmpty()) {
      return WORDS.say("many.headline.none", measure.name());
    }
    if (comparison.ordered()) {
      return WORDS.say("many.headline.order", measure.name(), order());
    }
    return WORDS.say(
        "many.headline.some", joined(shown.stream().map(this::difference).toList()), untold());
  }

  private String order() {
    List<Integer> ranked = new ArrayList<>(comparison.ranked());
    if (measure.better() == Measure.Better.HIGHER) {
      java.util.Collections.reverse(ranked);
    }
    return ranked.stream().map(setups::get).collect(Collectors.joining(", "));
  }

  private String untold() {
    List<String> pairs =
        comparison.result().pairs().stream()
            .filter(p -> !comparison.separated(p))
            .map(p -> setups.get(p.first()) + WORDS.say("and") + setups.get(p.second()))
            .toList();
    return pairs.isEmpty() ? "" : WORDS.say("many.untold", joined(pairs));
  }

  static String joined(List<String> parts) {
    return String.join("; ", parts);
  }

  /** Do they differ at all. */
  public String omnibus() {
    if (comparison.caveats().contains(Caveat.MISSING)) {
      return WORDS.say("many.untested", measure.name());
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
        setups.get(pair.second()));
  }

  /** "17 of 18 stints used; 1 void, 0 not ridden or without a value." */
  public String used() {
    return StintsUsed.say(comparison.stints());
  }

  /** "Rider noise 0.64 s from stint to stint". */
  public String noise() {
    return WORDS.say("evidence.noise", noiseSize(), comparison.result().df());
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

  /** What is said of a watched harm beside {@link #worse}: there is no test against its size. */
  public List<String> harm() {
    if (measure.role() != Measure.Role.WATCH_FOR_HARM) {
      return List.of();
    }
    List<String> lines = new ArrayList<>();
    if (comparison.tested() && comparison.worse().isEmpty()) {
      lines.add(WORDS.say("many.harm.none", measure.name()));
    }
    lines.add(
        measure.worthwhile() == null
            ? WORDS.say("many.harm.no.size", measure.name())
            : WORDS.say("many.harm.untested", measure.name(), declared()));
    return lines;
  }

  /** "Tyre S did worse than Tyre T in braking, which is watched for harm." */
  List<String> worse() {
    return comparison.worse().stream()
        .map(
            pair -> {
              int worse = comparison.worse(pair);
              int other = worse == pair.first() ? pair.second() : pair.first();
              return WORDS.say(
                  "many.harm.worse",
                  setups.get(worse),
                  setups.get(other),
                  measure.name(),
                  withUnit(pair),
                  p(pair.pAdjusted()),
                  comparison.result().pairs().size());
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
                        estimateOnly || !comparison.tested()
                            ? difference(p)
                            : WORDS.say("many.beside.pair", difference(p), p(p.pAdjusted())))
                .toList());
    if (!estimateOnly && !comparison.tested()) {
      return WORDS.say("many.beside.untested", pairs);
    }
    return estimateOnly
        ? WORDS.say("many.beside.estimate", pairs)
        : WORDS.say("many.beside", p(comparison.result().p()), pairs);
  }

  private String signed(ManySetups.Pair pair) {
    String sign = pair.estimate() < 0 ? "−" : pair.estimate() > 0 ? "+" : "";
    return sign + withUnit(pair);
  }

  private String withUnit(ManySetups.Pair pair) {
    return size(pair) + (measure.kind().counted() ? " " + measure.unit() : "");
  }

  /** The pairs as short lines for a cell of a table: "S–T 1.9 s, p = .003". */
  public List<String> cells() {
    return comparison.result().pairs().stream()
        .map(
            pair ->
                WORDS.say(
                    comparison.tested() ? "many.cell" : "many.cell.untested",
                    setups.get(pair.second()),
                    setups.get(pair.first()),
                    signed(pair),
                    p(pair.pAdjusted())))
        .toList();
  }
}
