package blindlap.wording;

import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.review.Comparison;
import blindlap.review.Finding;
import blindlap.stats.Interval;
import blindlap.stats.Scale;
import blindlap.stats.Verdict;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A two-setup finding in sentences: verdict first, then the evidence. */
public final class FindingWords {
  private static final Words WORDS = Words.of("finding");
  private static final Words VERDICTS = Words.of("verdicts");

  private final Plan plan;
  private final Comparison comparison;
  private final Measure measure;
  private final int decimals;

  /**
   * @param plan the committed plan, two setups
   * @param comparison one of its measures
   */
  public FindingWords(Plan plan, Comparison comparison) {
    this.plan = plan;
    this.comparison = comparison;
    this.measure = comparison.measure();
    this.decimals = digits(comparison);
  }

  private static int digits(Comparison comparison) {
    Optional<Interval> interval = comparison.interval(0.90);
    double[] deciding = deciding(comparison);
    int wide = comparison.interval(0.95).map(i -> Figures.decimals(i, deciding)).orElse(0);
    return Math.max(wide, interval.map(i -> Figures.decimals(i, deciding)).orElse(1));
  }

  private static double[] deciding(Comparison comparison) {
    Scale scale = comparison.measure().scale();
    return comparison
        .worthwhileBand()
        .map(b -> new double[] {scale.back(0), scale.back(b.low()), scale.back(b.high())})
        .orElse(new double[] {scale.back(0)});
  }

  /** The phrase of a verdict. */
  public static String phrase(Verdict verdict) {
    return VERDICTS.say(verdict.name());
  }

  /** "Shock L was 2.3 s a lap faster than Shock K". */
  public String difference() {
    double estimate = comparison.result().estimate();
    boolean bFirst = measure.better() == Measure.Better.LOWER ? estimate < 0 : estimate > 0;
    String first = plan.setups().get(bFirst ? 1 : 0).name();
    String second = plan.setups().get(bFirst ? 0 : 1).name();
    String size = size(Math.abs(estimate));
    return WORDS.say(key(), first, second, size, measure.name());
  }

  private String key() {
    boolean lower = measure.better() == Measure.Better.LOWER;
    if (measure.kind().timed()) {
      return measure.scale() == Scale.RATIO ? "ratio.faster" : "time.faster";
    }
    if (measure.kind().rating()) {
      return lower ? "scale.lower" : "scale.higher";
    }
    return lower ? "count.fewer" : "count.more";
  }

  private String size(double difference) {
    if (measure.scale() == Scale.RATIO) {
      return Figures.number(100 * -Math.expm1(-difference), 1) + " %";
    }
    return Figures.number(difference, decimals) + " " + measure.unit();
  }

  /** The verdict sentence. */
  public String verdict() {
    Verdict verdict = comparison.verdict().orElseThrow();
    String a = plan.setups().get(0).name();
    String b = plan.setups().get(1).name();
    return switch (verdict) {
      case REAL_AND_WORTHWHILE, REAL_BUT_SMALL, DIRECTION_KNOWN ->
          WORDS.say("verdict.real", difference(), phrase(verdict));
      default -> WORDS.say("verdict.open", a, b, phrase(verdict));
    };
  }

  /** What the verdict means, with the 90 % limits. */
  public String lead() {
    Verdict verdict = comparison.verdict().orElseThrow();
    if (verdict == Verdict.COULD_NOT_SHOW) {
      return WORDS.say("lead.could.not");
    }
    if (verdict == Verdict.NO_VARIATION) {
      return WORDS.say("lead.variation");
    }
    Optional<Interval> interval = comparison.interval(0.90);
    if (interval.isEmpty()) {
      return WORDS.say("lead.unbounded");
    }
    String key =
        switch (verdict) {
          case REAL_AND_WORTHWHILE -> "lead.worthwhile";
          case REAL_BUT_SMALL -> "lead.small";
          case NO_WORTHWHILE_DIFFERENCE -> "lead.none";
          case DIRECTION_KNOWN -> "lead.direction";
          default -> "lead.open";
        };
    Interval shown = shown(interval.get());
    return WORDS.say(
        key,
        Figures.number(shown.low(), decimals),
        Figures.number(shown.high(), decimals),
        measure.unit(),
        java.util.Objects.requireNonNull(measure.worthwhile()).toPlainString());
  }

  /** Limits as sizes where both lie on one side, else as signed differences B less A. */
  private Interval shown(Interval interval) {
    if (measure.scale() == Scale.RAW && interval.high() < 0) {
      return interval.mirrored();
    }
    return interval;
  }

  /** Interval, p, noise and stints used, one sentence each. */
  public List<String> evidence(Finding finding) {
    List<String> lines = new ArrayList<>();
    comparison
        .interval(0.95)
        .ifPresent(
            i -> {
              Interval shown = shown(i);
              String key = comparison.result().sampled() ? "evidence.sampled" : "evidence.interval";
              lines.add(
                  WORDS.say(
                      key,
                      Figures.number(shown.low(), decimals),
                      Figures.number(shown.high(), decimals),
                      measure.scale() == Scale.RATIO ? "times" : measure.unit(),
                      Figures.p(comparison.p()),
                      String.format(java.util.Locale.ROOT, "%,d", finding.orders().count()),
                      Figures.p(comparison.result().pError(comparison.p())),
                      comparison.result().sampling().draws()));
            });
    double noise = comparison.result().noiseSd();
    lines.add(
        WORDS.say(
            "evidence.noise",
            Figures.number(noise, Figures.decimals(noise) + 1),
            measure.unit(),
            comparison.result().df()));
    lines.add(used());
    return lines;
  }

  private String used() {
    int voids = 0;
    for (int stint = 1; stint <= plan.stints(); stint++) {
      voids += comparison.stints().voided(stint) ? 1 : 0;
    }
    int used = comparison.stints().used();
    return WORDS.say("evidence.used", used, plan.stints(), voids, plan.stints() - used - voids);
  }
}
