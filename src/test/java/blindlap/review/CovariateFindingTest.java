package blindlap.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import blindlap.plan.Covariate;
import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plan.Rule;
import blindlap.session.day.CovariateAt;
import blindlap.session.day.LapId;
import blindlap.stats.compare.Scale;
import blindlap.stats.compare.TwoSetups;
import blindlap.stats.order.Drift;
import blindlap.stats.order.Nuisance;
import blindlap.stats.order.Orders;
import blindlap.stats.order.Sampling;
import blindlap.wording.FindingText;
import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;

class CovariateFindingTest {
  private static final Rule RULE = Rule.blocks(2, 16, 4);
  private static final String ORDER = "ABBABAABABABBABA";
  private static final Covariate WIND = covariate("wind", Covariate.Kind.WIND);
  private static final Covariate LEGS = covariate("legs", Covariate.Kind.FATIGUE);

  private static final Measure GRIP =
      Days.measure(
          "grip",
          Measure.Kind.LINE_SCALE,
          Measure.Role.SECONDARY,
          Measure.Better.HIGHER,
          null,
          Scale.RAW);

  private static Covariate covariate(String name, Covariate.Kind kind) {
    return new Covariate(
        name, kind, "m/s", Covariate.By.STARTER, Covariate.Per.STINT, "read at the start", null);
  }

  private static double[] stints(IntToDoubleFunction value) {
    double[] values = new double[16];
    Arrays.setAll(values, value);
    return values;
  }

  private static DayRecord day(Map<Covariate, double[]> said, Map<String, double[]> values) {
    Plan plan =
        Days.with(
            Days.plan(RULE, List.of(Days.lapTime(), GRIP)),
            said.keySet().stream().sorted((a, b) -> b.name().compareTo(a.name())).toList());
    SortedMap<CovariateAt, BigDecimal> all = new TreeMap<>();
    said.forEach(
        (covariate, each) -> {
          for (int i = 0; i < each.length; i++) {
            if (!Double.isNaN(each[i])) {
              all.put(new CovariateAt(covariate.name(), i + 1, 0), BigDecimal.valueOf(each[i]));
            }
          }
        });
    return Days.day(plan, ORDER, values).withCovariates(all);
  }

  /** Wind that makes laps slower, and a difference of one second between the setups. */
  private static final class Windy {
    final Random random = new Random(5);
    final double[] wind = stints(i -> Math.round(40 + 15 * random.nextGaussian()) / 10.0);
    final double[] times =
        stints(
            i ->
                Math.round(
                        100
                            * (100
                                + 0.9 * wind[i]
                                + (ORDER.charAt(i) == 'B' ? -1 : 0)
                                + 0.3 * random.nextGaussian()))
                    / 100.0);
    final double[] grip = stints(i -> Math.round(50 + 8 * random.nextGaussian()));

    Finding finding(double[] said) {
      return Analysis.of(day(Map.of(WIND, said), Map.of("lap time", times, "grip", grip)));
    }
  }

  private static TwoSetups engine(double[] y, double[] x) {
    boolean[] all = new boolean[16];
    Arrays.fill(all, true);
    return TwoSetups.compare(
        RULE.assignments(),
        Orders.parse(ORDER),
        y,
        all,
        Nuisance.of(Drift.LINE, x.length == 0 ? List.of() : List.of(x)),
        Sampling.PREFERRED);
  }

  @Test
  void aCovariateIsTakenOutOfEveryMeasureAndTheResultWithoutStandsBesideIt() {
    Windy day = new Windy();
    Finding finding = day.finding(day.wind);
    TwoSetups with = engine(day.times, day.wind);
    TwoSetups without = engine(day.times, new double[0]);

    Comparison primary = finding.primary().orElseThrow();
    assertThat(primary.result().estimate()).isEqualTo(with.estimate());
    assertThat(primary.result().df()).isEqualTo(with.df()).isEqualTo(without.df() - 1);
    assertThat(primary.p()).isEqualTo(with.curve().p(0));
    assertThat(primary.verdict().orElseThrow())
        .isEqualTo(with.verdict(-0.5, 0.5))
        .isNotEqualTo(without.verdict(-0.5, 0.5));
    assertThat(finding.others().get(0).result().estimate())
        .isEqualTo(engine(day.grip, day.wind).estimate());
    Sensitivity beside = finding.sensitivities().get(0);
    assertThat(beside.kind()).isEqualTo(Sensitivity.Kind.WITHOUT_COVARIATES);
    assertThat(beside.result().orElseThrow().curve().p(0)).isEqualTo(without.curve().p(0));
  }

  @Test
  void shiftingOrScalingACovariateChangesNothing() {
    Windy day = new Windy();
    Comparison plain = day.finding(day.wind).primary().orElseThrow();
    Comparison other = day.finding(stints(i -> -3600 * day.wind[i] + 1e5)).primary().orElseThrow();
    assertThat(other.p()).isEqualTo(plain.p());
    assertThat(other.estimate()).isCloseTo(plain.estimate(), within(1e-9));
    assertThat(other.interval(0.95).orElseThrow().low())
        .isCloseTo(plain.interval(0.95).orElseThrow().low(), within(1e-9));
  }

  @Test
  void theCheckComparesTheCovariateByTheSameOrdersAndChangesNoVerdict() {
    Windy day = new Windy();
    double[] touched = stints(i -> day.wind[i] / 10 + (ORDER.charAt(i) == 'B' ? 3 : 0));
    Finding finding = day.finding(touched);
    CovariateFinding check = finding.covariates().get(0);
    assertThat(check.p()).isEqualTo(engine(touched, new double[0]).curve().p(0));
    assertThat(check.touched()).isTrue();
    assertThat(finding.primary().orElseThrow().result().estimate())
        .isEqualTo(engine(day.times, touched).estimate());
    assertThat(new FindingText(finding).sensitivities())
        .anyMatch(
            line ->
                line.startsWith("Check of wind, compared by the same orders: ")
                    && line.endsWith(
                        "The setup may have touched it; then the adjusted p is not exact."));
    assertThat(new FindingText(day.finding(day.wind)).sensitivities())
        .anyMatch(line -> line.endsWith("This is no proof that the setup left it alone."));
  }

  @Test
  void aCovariateThatHoldsNothingIsLeftOutAndTheFindingSaysSo() {
    Windy day = new Windy();
    double alone = engine(day.times, new double[0]).estimate();
    Finding same = day.finding(stints(i -> 4.2));
    Finding drift = day.finding(stints(i -> 3 + 0.5 * i));
    Finding never = day.finding(stints(i -> Double.NaN));
    for (Finding finding : List.of(same, drift, never)) {
      assertThat(finding.primary().orElseThrow().result().estimate()).isEqualTo(alone);
      assertThat(finding.sensitivities()).isEmpty();
    }
    assertThat(new FindingText(same).sensitivities())
        .containsExactly("wind was the same on every stint that counts, so it is not taken out.");
    assertThat(new FindingText(drift).sensitivities())
        .containsExactly(
            "wind is not taken out: drift, or the covariate before it, explains it on the stints"
                + " that count.");
    assertThat(new FindingText(never).sensitivities())
        .containsExactly("wind was never said on a stint that counts, so it is not taken out.");
  }

  @Test
  void aStintWithoutItsCovariateIsMaskedAndSaidButNotMissing() {
    Windy day = new Windy();
    double[] gaps = stints(i -> i == 2 || i == 6 ? Double.NaN : day.wind[i]);
    Finding finding = day.finding(gaps);
    Comparison primary = finding.primary().orElseThrow();
    assertThat(primary.stints().used()).isEqualTo(14);
    assertThat(primary.stints().missingShare()).isZero();
    assertThat(primary.result().estimate()).isEqualTo(engine(day.times, gaps).estimate());
    assertThat(finding.sensitivities().get(0).result().orElseThrow().used()).isEqualTo(16);
    assertThat(new FindingText(finding).sensitivities())
        .contains("Left out of the comparison for want of wind: stints 3 and 7.");
  }

  @Test
  void twoCovariatesAreTakenOutAndTheOneTheSetupMightTouchIsMarked() {
    Windy day = new Windy();
    double[] legs = stints(i -> (i * 7) % 5);
    Finding finding =
        Analysis.of(
            day(
                Map.of(WIND, day.wind, LEGS, legs),
                Map.of("lap time", day.times, "grip", day.grip)));
    assertThat(finding.primary().orElseThrow().result().df()).isEqualTo(16 - 2 - 2 - 1);
    List<String> lines = new FindingText(finding).sensitivities();
    assertThat(lines.get(0))
        .isEqualTo(
            "Taken out of every measure like drift, as declared before riding: wind and legs.");
    assertThat(lines)
        .contains(
            "The setup might touch legs: if it does, the p with it taken out is not exact. What no"
                + " setup can touch is the better covariate.");
  }

  @Test
  void aCovariateOfLapsIsTheMeanOfTheScoredLapsVoidOnesIncluded() {
    Covariate sector =
        new Covariate(
            "sector",
            Covariate.Kind.CONTROL_SECTOR,
            "s",
            Covariate.By.STARTER,
            Covariate.Per.LAP,
            "before the test section",
            null);
    Plan plan = Days.with(Days.plan(RULE, List.of(Days.lapTime()), 2), List.of(sector));
    double[][] times = new double[16][2];
    boolean[][] voids = new boolean[16][2];
    for (double[] stint : times) {
      Arrays.fill(stint, 100);
    }
    voids[3][1] = true;
    SortedMap<CovariateAt, BigDecimal> said = new TreeMap<>();
    for (int stint = 1; stint <= 16; stint++) {
      said.put(new CovariateAt("sector", stint, 1), BigDecimal.valueOf(20 + stint));
      said.put(new CovariateAt("sector", stint, 2), BigDecimal.valueOf(22 + stint));
    }
    said.remove(new CovariateAt("sector", 5, 2));
    DayRecord day = Days.laps(plan, ORDER, Map.of("lap time", times), voids).withCovariates(said);
    assertThat(day.lap(new LapId(4, 2)).orElseThrow().voided()).isPresent();
    assertThat(TakenOut.values(day, sector)[3]).isEqualTo(25);
    assertThat(TakenOut.values(day, sector)[4]).isEqualTo(25);
  }

  @Test
  void threeSetupsAreComparedWithTheCovariateTakenOutToo() {
    Rule rule = Rule.blocks(3, 12, 3);
    String order = "ABCCBABACCAB";
    Random random = new Random(11);
    double[] wind = new double[12];
    double[] times = new double[12];
    for (int i = 0; i < 12; i++) {
      wind[i] = Math.round(40 + 15 * random.nextGaussian()) / 10.0;
      times[i] = 100 + wind[i] + (order.charAt(i) == 'C' ? 2 : 0) + 0.3 * random.nextGaussian();
    }
    Plan plan = Days.with(Days.plan(rule, List.of(Days.lapTime())), List.of(WIND));
    SortedMap<CovariateAt, BigDecimal> said = new TreeMap<>();
    for (int i = 0; i < 12; i++) {
      said.put(new CovariateAt("wind", i + 1, 0), BigDecimal.valueOf(wind[i]));
    }
    DayRecord plain = Days.day(plan, order, Map.of("lap time", times));
    Finding with = Analysis.of(plain.withCovariates(said));
    assertThat(with.many().get(0).result().df()).isEqualTo(12 - 2 - 1 - 2);
    assertThat(with.many().get(0).result().noiseSd())
        .isLessThan(Analysis.of(plain).many().get(0).result().noiseSd());
    assertThat(with.covariates().get(0).many()).isPresent();
    assertThat(new FindingText(with).sensitivities())
        .anyMatch(line -> line.startsWith("Check of wind, compared by the same orders: p = "));
  }
}
