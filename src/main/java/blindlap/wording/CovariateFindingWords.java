package blindlap.wording;

import blindlap.plan.Covariate;
import blindlap.plan.Measure;
import blindlap.plan.Setup;
import blindlap.review.CovariateFinding;
import blindlap.review.Finding;
import blindlap.review.Sensitivity;
import blindlap.review.StintValues;
import blindlap.review.TakenOut;
import blindlap.stats.compare.OneDifference;
import blindlap.stats.distribution.Interval;
import blindlap.wording.day.Figures;
import blindlap.wording.day.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Stream;

/** What became of the covariates of a day, and what their checks say. They change no verdict. */
final class CovariateFindingWords {
  private static final Words WORDS = Words.of("covariate");

  private final Finding finding;
  private final Measure primary;
  private final List<String> setups;

  CovariateFindingWords(Finding finding) {
    this.finding = finding;
    this.primary = finding.day().plan().primary().orElseThrow();
    this.setups = finding.day().plan().setups().stream().map(Setup::name).toList();
  }

  /** Sentences, in the order of the plan; none where no covariate is declared. */
  List<String> lines() {
    List<String> lines = new ArrayList<>();
    List<Covariate> used =
        finding.covariates().stream()
            .filter(each -> each.leftOut().isEmpty())
            .map(CovariateFinding::covariate)
            .toList();
    if (!used.isEmpty()) {
      lines.add(WORDS.say("out", CovariateWords.names(used)));
    }
    finding.covariates().forEach(each -> lines.addAll(lines(each)));
    lines.addAll(elsewhere());
    return lines;
  }

  /** The sentences, and those of sensitivities after them. */
  List<String> before(List<Sensitivity> others, Function<Sensitivity, String> said) {
    return Stream.concat(lines().stream(), others.stream().map(said)).toList();
  }

  private List<String> lines(CovariateFinding each) {
    List<String> lines = new ArrayList<>();
    String name = each.covariate().name();
    each.leftOut().ifPresent(why -> lines.add(leftOut(name, why)));
    if (each.leftOut().isEmpty()) {
      if (!each.without().isEmpty()) {
        lines.add(WORDS.say("masked", name, StintList.words(each.without())));
      }
      if (Double.isFinite(each.correlation())) {
        lines.add(WORDS.say("goes", name, primary.name(), Figures.number(each.correlation(), 2)));
      }
      lines.addAll(check(each));
    }
    CovariateWords.touch(each.covariate()).ifPresent(lines::add);
    return lines;
  }

  private static String leftOut(String name, TakenOut.Why why) {
    return WORDS.say("left." + why.name(), name);
  }

  private List<String> check(CovariateFinding each) {
    if (Double.isNaN(each.p())) {
      return List.of();
    }
    String name = each.covariate().name();
    String p = Figures.p(each.p());
    String said = each.check().map(two -> check(each.covariate(), two)).orElse("");
    return List.of(
        (said.isEmpty() ? WORDS.say("check.many", name, p) : said)
            + " "
            + WORDS.say(each.touched() ? "check.touched" : "check.no.proof", name));
  }

  private String check(Covariate covariate, OneDifference two) {
    if (two.noVariation()) {
      return WORDS.say("check.variation", covariate.name());
    }
    int decimals = Figures.decimals(two.noiseSd() / Math.sqrt(two.c()));
    boolean larger = two.estimate() >= 0;
    Interval shifts =
        two.curve()
            .interval(0.90)
            .orElse(new Interval(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY));
    Interval way = larger ? shifts : new Interval(-shifts.high(), -shifts.low());
    String p = Figures.p(two.curve().p(0));
    String size = Figures.number(Math.abs(two.estimate()), decimals);
    return Double.isInfinite(way.low()) || Double.isInfinite(way.high())
        ? WORDS.say(
            "check.unbounded",
            covariate.name(),
            size,
            setups.get(larger ? 1 : 0),
            setups.get(larger ? 0 : 1),
            p)
        : WORDS.say(
            "check",
            covariate.name(),
            size,
            setups.get(larger ? 1 : 0),
            setups.get(larger ? 0 : 1),
            p,
            limit(way.low(), decimals, false),
            limit(way.high(), decimals, true));
  }

  private static String limit(double limit, int decimals, boolean upper) {
    return Figures.outward(limit, decimals, upper, 0).replace('-', '−');
  }

  /** Covariates that are used in the primary measure and not in another. */
  private List<String> elsewhere() {
    Stream<StintsOf> others =
        Stream.concat(
            finding.others().stream().map(c -> new StintsOf(c.measure(), c.stints())),
            finding.many().stream()
                .filter(m -> m.measure() != primary)
                .map(m -> new StintsOf(m.measure(), m.stints())));
    List<String> lines = new ArrayList<>();
    others.forEach(
        other ->
            TakenOut.of(finding.day(), other.measure(), other.stints())
                .leftOut()
                .forEach(
                    (covariate, why) -> {
                      if (usedInPrimary(covariate)) {
                        lines.add(
                            WORDS.say(
                                "elsewhere",
                                other.measure().name(),
                                leftOut(covariate.name(), why)));
                      }
                    }));
    return lines;
  }

  /** A measure with its stints, of two setups or more. */
  private record StintsOf(Measure measure, StintValues stints) {}

  private boolean usedInPrimary(Covariate covariate) {
    return finding.covariates().stream()
        .anyMatch(each -> each.covariate().equals(covariate) && each.leftOut().isEmpty());
  }
}
