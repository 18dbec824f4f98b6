package blindlap.wording;

import blindlap.plan.Covariate;
import blindlap.plan.EarlierNoise;
import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.review.CovariateFinding;
import blindlap.review.DayRecord;
import blindlap.review.Finding;
import blindlap.review.NoiseRecord;
import blindlap.review.StintValues;
import blindlap.review.TakenOut;
import blindlap.session.CovariateSaid;
import blindlap.session.day.CovariateAt;
import blindlap.session.day.LapId;
import blindlap.stats.noise.PooledCorrelation;
import blindlap.stats.power.CovariateGain;
import blindlap.wording.day.Figures;
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

  /** Below 1: an interval may reach it. */
  private static final double MOST = 0.999;

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

  /**
   * What a plan and the gain of what it declares come to; nothing without covariates.
   *
   * @param earlier what earlier days tell of how a covariate goes with the noise
   */
  public static List<String> planned(Plan plan, EarlierNoise earlier) {
    List<String> lines = new ArrayList<>(declared(plan));
    plan.covariates().forEach(each -> seen(plan, each, earlier).ifPresent(lines::add));
    gain(plan, earlier).ifPresent(lines::add);
    return lines;
  }

  /** Notes on what a day can show, and what is planned of covariates after them. */
  public static List<String> with(List<String> notes, Plan plan, EarlierNoise earlier) {
    return Stream.concat(notes.stream(), planned(plan, earlier).stream()).toList();
  }

  private static Optional<PooledCorrelation> told(
      Plan plan, Covariate covariate, EarlierNoise earlier) {
    return plan.primary()
        .flatMap(primary -> earlier.correlation(primary, plan.laps().scored(), covariate));
  }

  private static Optional<String> seen(Plan plan, Covariate covariate, EarlierNoise earlier) {
    return told(plan, covariate, earlier)
        .map(seen -> went(covariate, plan.primary().orElseThrow(), seen));
  }

  /** How a covariate went with a measure on earlier days. */
  static String went(Covariate covariate, Measure measure, PooledCorrelation seen) {
    return WORDS.say(
        "seen",
        covariate.name(),
        measure.name(),
        Figures.number(seen.r(), 2),
        seen.days(),
        Intervals.interval(seen.interval95(), 2));
  }

  /** What the noise book tells of covariates, a sentence each. */
  static List<String> seen(NoiseRecord record) {
    List<String> lines = new ArrayList<>();
    for (Covariate covariate : record.covariates()) {
      record
          .correlation(covariate)
          .ifPresent(seen -> lines.add(went(covariate, record.measure(), seen)));
    }
    return lines;
  }

  /**
   * What taking them out does to what the day can show, by the correlation that is stated, else by
   * that of earlier days; empty without covariates.
   */
  public static Optional<String> gain(Plan plan, EarlierNoise earlier) {
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
    if (stated.size() == plan.covariates().size()) {
      return Optional.of(stated(plan, names, stated));
    }
    return Optional.of(
        ofEarlierDays(plan, earlier)
            .orElseGet(
                () ->
                    WORDS.say(
                        "gain.unknown",
                        names,
                        at(plan, .85),
                        at(plan, .7),
                        at(plan, .5),
                        at(plan, 0))));
  }

  /** With what earlier days tell where nothing is stated; empty if neither tells of one. */
  private static Optional<String> ofEarlierDays(Plan plan, EarlierNoise earlier) {
    List<Double> likely = new ArrayList<>();
    List<Double> least = new ArrayList<>();
    List<Double> most = new ArrayList<>();
    for (Covariate covariate : plan.covariates()) {
      BigDecimal stated = covariate.correlation();
      Optional<PooledCorrelation> told = told(plan, covariate, earlier);
      if (stated == null && told.isEmpty()) {
        return Optional.empty();
      }
      double given = stated == null ? Double.NaN : stated.doubleValue();
      likely.add(stated == null ? Math.abs(told.get().r()) : given);
      least.add(stated == null ? told.get().size().low() : given);
      most.add(stated == null ? told.get().size().high() : given);
    }
    return Optional.of(
        WORDS.say(
            "gain.earlier",
            names(plan.covariates()),
            percent(plan, likely),
            percent(plan, most),
            percent(plan, least)));
  }

  private static String percent(Plan plan, List<Double> correlations) {
    List<Double> below = correlations.stream().map(r -> Math.min(r, MOST)).toList();
    long percent = Math.round(100 * (factor(plan, below) - 1));
    return (percent > 0 ? "+" : percent < 0 ? "−" : "") + Math.abs(percent);
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
    return percent(plan, correlations);
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

  /**
   * Drift and the covariates that are taken out of a measure of a day; empty without the latter.
   */
  static List<String> takenOut(DayRecord day, Measure measure, StintValues stints) {
    List<Covariate> used =
        day.plan().covariates().isEmpty() ? List.of() : TakenOut.of(day, measure, stints).used();
    return used.isEmpty()
        ? List.of()
        : Stream.concat(Stream.of(WORDS.say("drift")), used.stream().map(Covariate::name)).toList();
  }

  private static Optional<String> used(Finding finding) {
    String names =
        names(
            finding.covariates().stream()
                .filter(each -> each.leftOut().isEmpty())
                .map(CovariateFinding::covariate)
                .toList());
    return Optional.of(names).filter(n -> !n.isEmpty());
  }

  /** That pictures show stints with what is taken out still in them; empty where nothing is. */
  public static Optional<String> pictured(Finding finding) {
    return used(finding).map(names -> WORDS.say("pictured", names));
  }

  /** How the numbers are computed with what is taken out; empty where nothing is. */
  public static Optional<String> formula(Finding finding) {
    return used(finding).map(names -> Words.of("computed").say("covariates.formula", names));
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
