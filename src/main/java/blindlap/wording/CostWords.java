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
    Optional<Comparison> primary =
        finding.primary().filter(Comparison::shown).filter(p -> !finding.day().nullRun());
    primary.ifPresent(p -> cost(p, lines));
    for (Comparison other : finding.disagreeing()) {
      lines.add(
          WORDS.say(
              "disagree",
              new FindingWords(plan, finding.primary().orElseThrow()).difference(),
              new FindingWords(plan, other).difference()));
    }
    return lines;
  }

  private void cost(Comparison primary, List<String> lines) {
    if (primary.measure().better() == Measure.Better.NEITHER) {
      return;
    }
    Setup better = plan.setups().get(primary.better());
    Setup other = plan.setups().get(1 - primary.better());
    FindingWords words = new FindingWords(plan, primary);
    List<String> amounts = new ArrayList<>();
    List<String> each = new ArrayList<>();
    BigDecimal gain =
        BigDecimal.valueOf(Sizes.size(primary.measure(), primary.result().estimate()));
    money(better, other)
        .ifPresent(
            m -> {
              String currency = java.util.Objects.requireNonNull(better.price()).currency();
              add(amounts, m, "cost.money", currency + " ");
              each.add(signed(currency + " " + per(m.abs(), gain), m));
            });
    difference(better.massGrams(), other.massGrams())
        .ifPresent(
            m -> {
              add(amounts, m, "cost.mass", "");
              each.add(signed(per(m.abs(), gain) + " g", m));
            });
    if (!amounts.isEmpty()) {
      String all = String.join(WORDS.say("and"), amounts);
      lines.add(WORDS.say("cost", better.name(), all, words.shortDifference(), other.name()));
      lines.add(
          WORDS.say("cost.per", String.join(WORDS.say("and"), each), unit(primary.measure())));
    }
  }

  private static String signed(String amount, BigDecimal difference) {
    return difference.signum() < 0 ? WORDS.say("cost.less", amount) : amount;
  }

  private static String unit(Measure measure) {
    return measure.scale() == blindlap.stats.compare.Scale.RATIO
        ? "%"
        : measure.kind().counted() ? measure.name() : measure.unit();
  }

  private static void add(List<String> amounts, BigDecimal amount, String key, String before) {
    amounts.add(
        WORDS.say(
            amount.signum() < 0 ? key + ".less" : key,
            before + amount.abs().stripTrailingZeros().toPlainString()));
  }

  /** Two digits are plenty: the gain itself is uncertain. */
  private static String per(BigDecimal amount, BigDecimal gain) {
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
