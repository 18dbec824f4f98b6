package blindlap.wording;

import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plan.Setup;
import blindlap.review.Comparison;
import blindlap.review.Finding;
import blindlap.wording.day.Figures;
import blindlap.wording.day.Words;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** What the better setup costs in money and mass, and measures that disagree. */
final class CostWords {
  private static final Words WORDS = FindingWords.WORDS;

  private final Finding finding;
  private final Plan plan;

  CostWords(Finding finding) {
    this.finding = finding;
    this.plan = finding.day().plan();
  }

  List<String> lines() {
    List<String> lines = new ArrayList<>();
    finding
        .primary()
        .filter(p -> !finding.day().nullRun())
        .filter(p -> p.measure().better() != Measure.Better.NEITHER)
        .ifPresent(p -> cost(p, lines));
    List<Comparison> disagreeing = finding.day().nullRun() ? List.of() : finding.disagreeing();
    for (Comparison other : disagreeing) {
      lines.add(
          WORDS.say(
              "disagree",
              new FindingWords(plan, finding.primary().orElseThrow()).difference(),
              new FindingWords(plan, other).difference()));
    }
    return lines;
  }

  /** Price and mass, each in a line of its own: a ratio only where the better one costs more. */
  private void cost(Comparison primary, List<String> lines) {
    int better = primary.better();
    money(plan.setups().get(better), plan.setups().get(1 - better))
        .ifPresent(
            m -> {
              String currency =
                  java.util.Objects.requireNonNull(plan.setups().get(0).price()).currency() + " ";
              lines.add(line(primary, "cost.money", m, currency, ""));
            });
    difference(plan.setups().get(better).massGrams(), plan.setups().get(1 - better).massGrams())
        .ifPresent(m -> lines.add(line(primary, "cost.mass", m, "", " g")));
  }

  /**
   * @param more what the better setup has more of than the other; below zero if less
   */
  private String line(
      Comparison primary, String key, BigDecimal more, String before, String after) {
    Setup better = plan.setups().get(primary.better());
    Setup other = plan.setups().get(1 - primary.better());
    String amount = before + more.abs().stripTrailingZeros().toPlainString() + after;
    if (!primary.shown()) {
      Setup dearer = more.signum() > 0 ? better : other;
      return WORDS.say(
          key + ".open",
          dearer.name(),
          amount,
          (more.signum() > 0 ? other : better).name(),
          primary.measure().name());
    }
    return WORDS.say(
        key + (more.signum() > 0 ? ".more" : ".less"),
        better.name(),
        new FindingWords(plan, primary).gain(),
        amount,
        each(primary, more, before, after),
        unit(primary.measure()),
        other.name());
  }

  /** The amount for each unit of the gain, by the estimate and by the ends of its interval. */
  private static String each(Comparison primary, BigDecimal amount, String before, String after) {
    String best = before + per(amount.abs(), primary, primary.result().estimate()) + after;
    return primary
        .shifts(0.95)
        .map(
            i -> {
              boolean above = i.low() > 0;
              double near = above ? i.low() : i.high();
              double far = above ? i.high() : i.low();
              return WORDS.say(
                  "cost.each",
                  best,
                  per(amount.abs(), primary, far),
                  per(amount.abs(), primary, near));
            })
        .orElse(best);
  }

  private static String unit(Measure measure) {
    return measure.scale() == blindlap.stats.compare.Scale.RATIO
        ? "%"
        : measure.kind().counted() ? "1 " + measure.unit() : Sizes.unit(measure, "1");
  }

  /** Two digits are plenty: the gain itself is uncertain. */
  private static String per(BigDecimal amount, Comparison primary, double shift) {
    BigDecimal gain = BigDecimal.valueOf(Sizes.size(primary.measure(), shift));
    BigDecimal each = amount.divide(gain, MathContext.DECIMAL64);
    BigDecimal rounded = each.round(new MathContext(2, RoundingMode.HALF_EVEN));
    return Figures.number(rounded.doubleValue(), Math.max(0, rounded.stripTrailingZeros().scale()));
  }

  private static Optional<BigDecimal> money(Setup better, Setup other) {
    Setup.Price a = better.price();
    Setup.Price b = other.price();
    return a == null || b == null || !a.currency().equals(b.currency())
        ? Optional.empty()
        : difference(a.amount(), b.amount());
  }

  private static Optional<BigDecimal> difference(
      @Nullable BigDecimal better, @Nullable BigDecimal other) {
    return better == null || other == null || better.compareTo(other) == 0
        ? Optional.empty()
        : Optional.of(better.subtract(other));
  }
}
