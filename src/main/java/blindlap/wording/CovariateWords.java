package blindlap.wording;

import blindlap.plan.Covariate;
import blindlap.plan.Plan;
import blindlap.session.CovariateSaid;
import blindlap.session.day.CovariateAt;
import blindlap.session.day.LapId;
import blindlap.stats.power.CovariateGain;
import blindlap.wording.day.Words;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What is said of the covariates of a plan (docs/method.md#covariates). */
public final class CovariateWords {
  private static final Words WORDS = Words.of("covariate");

  private CovariateWords() {}

  /** Heading of the part of a plan that names them. */
  public static String title() {
    return WORDS.say("title");
  }

  /** What a plan declares, a line each, with the mark where the setup might touch it. */
  public static List<String> declared(Plan plan) {
    List<String> lines = new ArrayList<>();
    for (Covariate covariate : plan.covariates()) {
      lines.add(
          WORDS.say(
              "plan",
              covariate.name(),
              covariate.unit(),
              WORDS.say("by." + covariate.by().name()),
              per(covariate),
              covariate.reason().replaceAll("[.\\s]+$", "")));
      touch(covariate).ifPresent(lines::add);
    }
    return lines;
  }

  /** That the setup might touch a covariate; empty for what it is not known to. */
  public static Optional<String> touch(Covariate covariate) {
    return covariate.kind().touchable()
        ? Optional.of(WORDS.say("touch", covariate.name()))
        : Optional.empty();
  }

  private static String per(Covariate covariate) {
    return WORDS.say(
        covariate.perLap()
            ? "per.LAP"
            : covariate.by() == Covariate.By.RIDER ? "per.RIDER" : "per.STINT");
  }

  /** What a plan and the gain of what it declares come to; nothing without covariates. */
  public static List<String> planned(Plan plan) {
    List<String> lines = new ArrayList<>(declared(plan));
    gain(plan).ifPresent(lines::add);
    return lines;
  }

  /** Notes on what a day can show, and what is planned of covariates after them. */
  public static List<String> with(List<String> notes, Plan plan) {
    return Stream.concat(notes.stream(), planned(plan).stream()).toList();
  }

  /** What taking them out does to what the day can show; empty without covariates. */
  public static Optional<String> gain(Plan plan) {
    if (plan.covariates().isEmpty() || plan.primary().isEmpty()) {
      return Optional.empty();
    }
    String names = names(plan.covariates());
    List<BigDecimal> stated =
        plan.covariates().stream()
            .map(Covariate::correlation)
            .filter(java.util.Objects::nonNull)
            .toList();
    if (Double.isNaN(factor(plan, Collections.nCopies(plan.covariates().size(), 0.0)))) {
      return Optional.of(WORDS.say("gain.never", names));
    }
    return Optional.of(
        stated.size() == plan.covariates().size()
            ? stated(plan, names, stated)
            : WORDS.say(
                "gain.unknown", names, at(plan, .85), at(plan, .7), at(plan, .5), at(plan, 0)));
  }

  private static String stated(Plan plan, String names, List<BigDecimal> stated) {
    List<Double> correlations = stated.stream().map(BigDecimal::doubleValue).toList();
    long percent = Math.round(100 * (factor(plan, correlations) - 1));
    String said = joined(stated.stream().map(BigDecimal::toPlainString).toList());
    String key = percent < 0 ? "gain.less" : percent > 0 ? "gain.more" : "gain.same";
    return WORDS.say(key, names, said, String.valueOf(Math.abs(percent)));
  }

  /** All covariates together go with the noise by r. */
  private static String at(Plan plan, double r) {
    List<Double> correlations = new ArrayList<>(Collections.nCopies(plan.covariates().size(), 0.0));
    correlations.set(0, r);
    long percent = Math.round(100 * (factor(plan, correlations) - 1));
    return (percent > 0 ? "+" : percent < 0 ? "−" : "") + Math.abs(percent);
  }

  private static double factor(Plan plan, List<Double> correlations) {
    return CovariateGain.factor(
        plan.stints(),
        plan.primary().orElseThrow().drift().columns(),
        plan.setups().size(),
        correlations);
  }

  /** The covariates by name: "wind and wetness". */
  public static String names(List<Covariate> covariates) {
    return joined(covariates.stream().map(Covariate::name).toList());
  }

  private static String joined(List<String> each) {
    return each.stream().reduce((first, next) -> WORDS.say("two", first, next)).orElse("");
  }

  /** What was corrected, of a lap or a stint, and why. */
  public static String corrected(Plan.Laps laps, CovariateSaid said) {
    CovariateAt at = said.at();
    BigDecimal value = said.value();
    String shown = value == null ? "–" : value.toPlainString();
    return at.lap() == 0
        ? WORDS.say("corrected.stint", at.stint(), at.covariate(), shown, said.reason())
        : WORDS.say(
            "corrected.lap",
            new LapId(at.stint(), at.lap()).ofDay(laps.perStint()),
            at.covariate(),
            shown,
            said.reason());
  }

  /** What every plan of a series has in common. */
  static String common(Plan plan) {
    return plan.covariates().isEmpty()
        ? WORDS.say("declared.none")
        : plan.covariates().stream()
            .map(
                c ->
                    WORDS.say(
                        "declared", c.name(), c.unit(), WORDS.say("by." + c.by().name()), per(c)))
            .collect(Collectors.joining("; "));
  }
}
