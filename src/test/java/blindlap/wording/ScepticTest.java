package blindlap.wording;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plan.Setup;
import blindlap.review.Analysis;
import blindlap.review.Comparison;
import blindlap.review.DayRecord;
import blindlap.review.Days;
import blindlap.review.Finding;
import blindlap.review.ManyComparison;
import blindlap.review.Sensitivity;
import blindlap.review.StepsDays;
import blindlap.stats.compare.ManySetups;
import blindlap.stats.compare.OneDifference;
import blindlap.stats.distribution.Interval;
import blindlap.stats.tell.GuessTest;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** No sentence of any finding says more than its numbers, read by one who believes none of them. */
class ScepticTest {
  private static final int DAYS = 140;

  private static Sceptic.Truth truth(Plan plan, Comparison c) {
    boolean tested = c.tested() && !c.result().noVariation();
    return new Sceptic.Truth(
        c.measure(),
        plan.ends().get(0),
        plan.ends().get(1),
        c.result().estimate(),
        tested ? c.adjusted().orElse(c.curve().p(0)) : Double.NaN,
        tested ? c.curve().p(0) : Double.NaN,
        c.result().noVariation() ? Optional.empty() : c.curve().interval(0.95));
  }

  private static Sceptic.Truth truth(
      Plan plan, Measure measure, OneDifference other, boolean interval, boolean tested) {
    double p = tested && !other.noVariation() ? other.curve().p(0) : Double.NaN;
    Optional<Interval> wide =
        interval && !other.noVariation() ? other.curve().interval(0.95) : Optional.empty();
    return new Sceptic.Truth(
        measure, plan.ends().get(0), plan.ends().get(1), other.estimate(), p, p, wide);
  }

  private static List<Sceptic.Truth> truths(
      Plan plan, ManyComparison many, ManySetups result, boolean tested) {
    return result.pairs().stream()
        .map(
            pair ->
                new Sceptic.Truth(
                    many.measure(),
                    plan.setups().get(pair.first()).name(),
                    plan.setups().get(pair.second()).name(),
                    pair.estimate(),
                    tested && many.tested() ? pair.pAdjusted() : Double.NaN,
                    tested && many.tested() ? pair.p() : Double.NaN,
                    Optional.empty()))
        .toList();
  }

  private static void believed(String text, List<Sceptic.Truth> truths) {
    assertThat(Sceptic.complaints(text, truths)).isEmpty();
  }

  @Test
  void noSentenceOfTwoSetupsSaysMoreThanItsNumbers() {
    int shown = 0;
    int open = 0;
    for (int seed = 0; seed < DAYS; seed++) {
      Finding finding = Analysis.of(DoubtfulDays.day(new Random(7919L * seed), 2));
      if (finding.primary().isEmpty()) {
        continue;
      }
      Comparison primary = finding.primary().get();
      shown += primary.shown() ? 1 : 0;
      open += primary.shown() ? 0 : 1;
      two(finding, primary);
      next(finding, primary);
      harm(finding);
    }
    assertThat(shown).isGreaterThan(30);
    assertThat(open).isGreaterThan(30);
  }

  @Test
  void noSentenceOfAStepsDaySaysMoreThanItsNumbers() {
    Plan plan = StepsDays.plan("unit: clicks, levels: [4, 7, 11]", 3, 12, "lower");
    int shown = 0;
    for (int seed = 0; seed < DAYS; seed++) {
      Random random = new Random(4243L * seed);
      double trend = seed % 3 * random.nextGaussian();
      double[] effects = {0, random.nextGaussian() / 2, trend};
      Finding finding = Analysis.of(StepsDays.day(plan, effects, 0.5, random));
      Comparison primary = finding.primary().orElseThrow();
      shown += primary.shown() ? 1 : 0;
      two(finding, primary);
      TrendWords.of(finding)
          .orElseThrow()
          .lines()
          .forEach(
              line ->
                  believed(
                      line.replaceAll("95 % interval [^)]*", ""), List.of(truth(plan, primary))));
    }
    assertThat(shown).isBetween(30, 110);
  }

  private static void two(Finding finding, Comparison primary) {
    Plan plan = finding.day().plan();
    FindingText text = new FindingText(finding);
    List<Sceptic.Truth> first = List.of(truth(plan, primary));
    believed(text.headline().text(), first);
    believed(text.sentence(), first);
    believed(text.lead(), first);
    text.evidence().forEach(line -> believed(line, first));
    primary
        .verdict()
        .ifPresent(
            v -> {
              believed(NotebookWords.verdict(plan, false, primary, false), first);
              assertThat(text.headline().text()).startsWith(LevelWords.label(plan.level()));
              assertThat(text.headline().text().startsWith("Unblinded"))
                  .isEqualTo(!plan.blinding().blinded());
              bounds(text.lead(), primary);
              bounds(text.sentence(), primary);
            });
    for (int i = 0; i < finding.sensitivities().size(); i++) {
      Sensitivity each = finding.sensitivities().get(i);
      String line = text.sensitivities().get(i);
      each.result()
          .ifPresent(
              r ->
                  believed(
                      line,
                      List.of(
                          truth(
                              plan,
                              primary.measure(),
                              r,
                              !each.estimateOnly(),
                              !each.estimateOnly() && primary.tested()))));
    }
    for (Comparison other : finding.others()) {
      believed(text.words(other).plain(), List.of(truth(plan, other)));
    }
  }

  /** Words about the worthwhile difference and about "no difference" follow from the limits. */
  private static void bounds(String text, Comparison c) {
    Interval band = c.worthwhileBand().orElseThrow();
    Optional<Interval> ninety = c.shifts(0.90);
    Optional<Interval> wide = c.shifts(0.95);
    if (text.contains("wholly beyond") || text.contains("larger than the")) {
      assertThat(ninety).as(text).matches(i -> beyond(i.orElseThrow(), band));
    }
    if (text.contains("wholly within") || text.contains("smaller than the")) {
      assertThat(ninety).as(text).matches(i -> within(i.orElseThrow(), band));
    }
    if (text.contains("noise explains")) {
      assertThat(c.curve().p(0)).as(text).isLessThanOrEqualTo(0.05);
    }
    if (text.contains("leaves room for no difference")
        || text.contains("leaves room for no trend")) {
      assertThat(wide.filter(i -> i.low() > 1e-9 || i.high() < -1e-9)).as(text).isEmpty();
    }
    assertThat(text).doesNotContain("larger than the rider's noise");
    if (text.contains("real and worthwhile")) {
      assertThat(text).containsPattern("faster than|longer .*than").doesNotContain("is slower");
      assertThat(c.measure().better()).isNotEqualTo(Measure.Better.NEITHER);
      assertThat(text).startsWith(better(c));
    }
  }

  private static String better(Comparison c) {
    String shock = "Shock " + (char) ('K' + c.better());
    return c.trend().isEmpty() ? shock : c.better() == 0 ? "4 clicks" : "11 clicks";
  }

  private static boolean beyond(Interval i, Interval band) {
    return i.low() > band.high() || i.high() < band.low();
  }

  private static boolean within(Interval i, Interval band) {
    return i.low() > band.low() && i.high() < band.high();
  }

  private static void next(Finding finding, Comparison primary) {
    DayRecord day = finding.day();
    for (String line : new FindingText(finding).next()) {
      if (line.startsWith("Settled")) {
        assertThat(primary.verdict().orElseThrow().settled()).as(line).isTrue();
        assertThat(day.plan().blinding().blinded()).as(line).isTrue();
        assertThat(day.cutShort()).as(line).isFalse();
        assertThat(new TreeSet<>(day.wrongFits())).as(line).isEmpty();
        assertThat(day.blindBroken()).as(line).isEmpty();
        assertThat(finding.guesses().test().filter(GuessTest::flagged)).as(line).isEmpty();
      }
      if (line.startsWith("The measures disagree")) {
        assertThat(primary.shown()).as(line).isTrue();
      }
      if (line.contains("EUR") || line.contains("weighs")) {
        cost(line, day.plan(), primary);
      }
    }
  }

  private static void cost(String line, Plan plan, Comparison primary) {
    boolean money = line.contains("EUR");
    Setup named = plan.setups().get(line.startsWith("Shock K") ? 0 : 1);
    Setup other = plan.setups().get(line.startsWith("Shock K") ? 1 : 0);
    BigDecimal more = amount(named, money).subtract(amount(other, money));
    String amount = more.abs().toPlainString();
    assertThat(line)
        .containsPattern(money ? "costs EUR " + amount + " " : "weighs " + amount + " g");
    assertThat(line.contains("less than")).as(line).isEqualTo(more.signum() < 0);
    assertThat(line.contains("not shown to be better")).as(line).isEqualTo(!primary.shown());
    boolean ratio = line.contains("for each");
    assertThat(ratio).as(line).isEqualTo(primary.shown() && more.signum() > 0);
    if (primary.shown()) {
      assertThat(line).startsWith(better(primary));
    }
  }

  private static BigDecimal amount(Setup setup, boolean money) {
    return money
        ? java.util.Objects.requireNonNull(setup.price()).amount()
        : java.util.Objects.requireNonNull(setup.massGrams());
  }

  /** A harm is shown, or ruled out, only where the one-sided tests of its curve say so. */
  private static void harm(Finding finding) {
    for (Comparison c : finding.others()) {
      for (String line : new FindingText(finding).words(c).harm()) {
        int looked = line.startsWith("Shock L") ? 1 : -1;
        boolean lessIsHarm = c.measure().better() == Measure.Better.HIGHER;
        double bound = (lessIsHarm ? -1 : 1) * looked * c.measure().worthwhile().doubleValue();
        boolean beyond =
            bound > 0 ? c.curve().exceeds(bound, 0.05) : c.curve().fallsShortOf(bound, 0.05);
        boolean below =
            bound > 0 ? c.curve().fallsShortOf(bound, 0.05) : c.curve().exceeds(bound, 0.05);
        if (line.endsWith("or more shown.")) {
          assertThat(beyond).as(line).isTrue();
        }
        if (line.contains("ruled out")) {
          assertThat(below).as(line).isTrue();
        }
      }
    }
  }

  @Test
  void noSentenceOfThreeSetupsSaysMoreThanItsNumbers() {
    int pairs = 0;
    for (int seed = 0; seed < DAYS / 2; seed++) {
      Finding finding = Analysis.of(DoubtfulDays.day(new Random(104_729L * seed), 3));
      Plan plan = finding.day().plan();
      FindingText text = new FindingText(finding);
      for (ManyComparison many : finding.many()) {
        ManyWords words = text.words(many);
        List<Sceptic.Truth> truths = truths(plan, many, many.result(), true);
        believed(words.headline(), truths);
        words.pairs().forEach(line -> believed(line, truths));
        pairs += words.pairs().size();
        assertThat(words.omnibus().contains("the setups differ")).isEqualTo(many.differs());
      }
      for (int i = 0; i < finding.sensitivities().size() && !finding.many().isEmpty(); i++) {
        Sensitivity each = finding.sensitivities().get(i);
        String line = text.sensitivities().get(i);
        ManyComparison first = finding.many().get(0);
        each.many().ifPresent(m -> believed(line, truths(plan, first, m, !each.estimateOnly())));
      }
    }
    assertThat(pairs).isGreaterThan(300);
  }

  private static final Sceptic.Truth OPEN =
      new Sceptic.Truth(
          Days.lapTime(),
          "Shock K",
          "Shock L",
          -0.42,
          0.31,
          0.31,
          Optional.of(new Interval(-1.2, 0.4)));

  private static final Sceptic.Truth SURE =
      new Sceptic.Truth(
          OPEN.measure(),
          "Shock K",
          "Shock L",
          -2.04,
          0.0015,
          0.0015,
          Optional.of(new Interval(-2.66, -1.41)));

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "true  | Shock L was 0.4 s a lap faster than Shock K. | certainty",
        "true  | With all ridden laps: Shock L was 0.4 s a lap faster than Shock K (p = .31). |"
            + " certainty",
        "true  | best estimate: Shock K was 0.4 s a lap faster than Shock L | direction",
        "true  | best estimate: Shock L was 0.5 s a lap faster than Shock K | size",
        "true  | best estimate: Shock L was 0.4 points a lap faster than Shock K | unit",
        "true  | best estimate: Shock M was 0.4 s a lap faster than Shock K | no such pair",
        "true  | The difference is 0.2 to 1.2 s. 95 % interval 0.2 to 1.2 s; p = .31 | interval",
        "true  | Not settled (p = .031) | p",
        "false | Shock L was 2.0 s a lap faster than Shock K (95 % interval 1.6 to 2.7 s). | limit",
        "false | Shock K and Shock L are not told apart | not told apart, though it is",
        "false | Shock L was 2 s a lap slower and 2.1 s a lap faster than Shock K |",
        "false | Shock L was 2.0 s a lap faster than Shock K (95 % interval 1.4 to 2.7 s; p ="
            + " .0015). |",
        "true  | Shock K and Shock L are not told apart; best estimate: Shock L was 0.4 s a lap"
            + " faster than Shock K |",
      })
  void aPlantedSentenceThatSaysMoreIsFoundAndAnHonestOneIsNot(
      boolean open, String sentence, String complaint) {
    List<String> found = Sceptic.complaints(sentence, List.of(open ? OPEN : SURE));
    if (complaint == null) {
      assertThat(found).isEmpty();
    } else {
      assertThat(found).anyMatch(f -> f.startsWith(complaint + ": "));
    }
  }
}
