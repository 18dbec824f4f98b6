package blindlap.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import blindlap.plan.Plan;
import blindlap.stats.LeastSquares;
import blindlap.stats.compare.OrderSet;
import blindlap.stats.compare.Trend;
import blindlap.stats.compare.Verdict;
import blindlap.stats.order.Drift;
import blindlap.stats.order.Nuisance;
import blindlap.stats.order.Orders;
import blindlap.stats.order.Sampling;
import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/**
 * The finding of a steps day is its trend, and a level fitted wrongly enters as it was measured.
 */
class StepsFindingTest {
  private static final Plan PLAN =
      StepsDays.plan("unit: clicks, levels: [4, 7, 11], least: 2", 3, 12, "lower");

  private static DayRecord day(long seed) {
    return StepsDays.day(PLAN, new double[] {0, 0.5, 2}, 0.4, new Random(seed));
  }

  private static double[] values(DayRecord day) {
    return day.laps().stream()
        .mapToDouble(lap -> lap.values().get("lap time").doubleValue())
        .toArray();
  }

  private static DayRecord with(DayRecord day, HelperFit... fits) {
    SortedMap<Integer, HelperFit> all = new TreeMap<>();
    Arrays.stream(fits).forEach(fit -> all.put(fit.stint(), fit));
    return new DayRecord(
        day.session(),
        day.plan(),
        day.key(),
        day.laps(),
        day.guesses(),
        day.blindBroken(),
        day.lastStint(),
        all,
        List.of());
  }

  @Test
  void theFindingCarriesTheTrendOfItsLaps() {
    DayRecord day = day(3);
    boolean[] all = new boolean[12];
    Arrays.fill(all, true);
    Trend alone =
        Trend.of(
            PLAN.rule().assignments(),
            new double[] {4, 7, 11},
            Orders.parse(day.order()),
            values(day),
            all,
            Nuisance.of(Drift.LINE),
            Sampling.PREFERRED);

    Finding finding = Analysis.of(day);

    Trend found = finding.trend().orElseThrow();
    assertThat(found.estimate()).isEqualTo(alone.estimate());
    assertThat(found.curve().interval(0.95)).isEqualTo(alone.curve().interval(0.95));
    assertThat(found.bend()).isEqualTo(alone.bend());
    assertThat(finding.primary().orElseThrow().verdict()).contains(alone.verdict(-0.8, 0.8));
    assertThat(finding.many()).isEmpty();
    assertThat(finding.orders()).isEqualTo(OrderSet.ofTrend(PLAN.rule().assignments()));
    assertThat(finding.orders().smallestP()).isCloseTo(2.0 / 1296, within(1e-15));
  }

  @Test
  void namesOfTheEndsFollowTheLevelsWhateverTheOrderOfSetups() {
    assertThat(PLAN.ends()).containsExactly("4 clicks", "11 clicks");
    Plan turned =
        PLAN.with(List.of(PLAN.setups().get(2), PLAN.setups().get(0), PLAN.setups().get(1)));
    assertThat(turned.ends()).containsExactly("4 clicks", "11 clicks");
    assertThat(turned.place(true)).isZero();
    assertThat(turned.levelNumbers()).containsExactly(11, 4, 7);
  }

  @Test
  void aWrongLevelEntersBesideTheFindingAtTheValueThatWasMeasured() {
    DayRecord right = day(4);
    int planned = right.setup(5);
    int other = (planned + 1) % 3;
    for (BigDecimal measured : new BigDecimal[] {null, new BigDecimal("8.5")}) {
      Map<String, BigDecimal> said =
          measured == null ? Map.of() : Map.of("rebound", measured, "sag", BigDecimal.ONE);
      Finding finding = Analysis.of(with(right, new HelperFit(5, other, said, "")));
      double[] levels = {4, 7, 11};
      double[] at = new double[12];
      double[] position = new double[12];
      double[] one = new double[12];
      for (int i = 0; i < 12; i++) {
        at[i] = levels[right.setup(i + 1)];
        position[i] = i;
        one[i] = 1;
      }
      at[4] = measured == null ? levels[other] : 8.5;
      double slope = LeastSquares.of(List.of(at, one, position), values(right)).beta()[0];

      Sensitivity fitted =
          finding.sensitivities().stream()
              .filter(each -> each.kind() == Sensitivity.Kind.AS_FITTED)
              .findFirst()
              .orElseThrow();

      assertThat(fitted.estimateOnly()).isTrue();
      assertThat(fitted.stints()).containsExactly(5);
      assertThat(fitted.result().orElseThrow().estimate()).isCloseTo(slope * 7, within(1e-9));
      assertThat(finding.trend().orElseThrow().estimate())
          .isEqualTo(Analysis.of(right).trend().orElseThrow().estimate());
    }
  }

  /** The helper says that the planned level was on, and the number measured says another. */
  private static Finding measured(Plan plan, String number) {
    DayRecord day = StepsDays.day(plan, new double[] {0, 0.5, 2}, 0.4, new Random(5));
    Map<String, BigDecimal> said = Map.of("rebound", new BigDecimal(number));
    return Analysis.of(with(day, new HelperFit(5, day.setup(5), said, "")));
  }

  private static Set<Integer> stints(Finding finding, Sensitivity.Kind kind) {
    return finding.sensitivities().stream()
        .filter(each -> each.kind() == kind)
        .findFirst()
        .map(Sensitivity::stints)
        .orElse(Set.of());
  }

  @Test
  void aLevelThatIsNoneOfThePlansIsAWrongOneWhateverItIsCalled() {
    Finding clicks = measured(PLAN, "9");
    assertThat(clicks.day().wrongFits()).containsExactly(5);
    assertThat(stints(clicks, Sensitivity.Kind.WRONG_FITS_MASKED)).containsExactly(5);
    assertThat(stints(clicks, Sensitivity.Kind.AS_FITTED)).containsExactly(5);

    Plan gauge =
        StepsDays.plan(
            "unit: psi, way: pressure, low: 1, high: 20, levels: [4, 7, 11]", 3, 12, "lower");
    DayRecord day = StepsDays.day(gauge, new double[] {0, 0.5, 2}, 0.4, new Random(5));
    double planned = gauge.levelNumbers()[day.setup(5)];
    Finding near = measured(gauge, String.valueOf(planned + 0.1));
    assertThat(near.day().wrongFits()).isEmpty();
    assertThat(stints(near, Sensitivity.Kind.WRONG_FITS_MASKED)).isEmpty();
    assertThat(stints(near, Sensitivity.Kind.AS_FITTED)).containsExactly(5);

    Finding far = measured(gauge, planned < 7 ? "6.9" : "4.1");
    assertThat(far.day().wrongFits()).containsExactly(5);

    Finding right = measured(PLAN, String.valueOf((int) planned));
    assertThat(right.day().wrongFits()).isEmpty();
    assertThat(stints(right, Sensitivity.Kind.AS_FITTED)).isEmpty();
  }

  @Test
  void withoutAnOrderThatCouldReachTheLevelTheVerdictSaysSo() {
    // 36 orders, counted in twos: 2/36 is above .05.
    Plan two = StepsDays.plan("unit: clicks, levels: [4, 7, 11]", 3, 6, "lower");
    DayRecord day = StepsDays.day(two, new double[] {0, 3, 6}, 0.2, new Random(1));
    assertThat(Analysis.of(day).primary().flatMap(Comparison::verdict))
        .contains(Verdict.COULD_NOT_SHOW);
    Plan three = StepsDays.plan("unit: clicks, levels: [4, 7, 11]", 3, 9, "lower");
    DayRecord longer = StepsDays.day(three, new double[] {0, 3, 6}, 0.2, new Random(1));
    assertThat(Analysis.of(longer).primary().flatMap(Comparison::verdict))
        .contains(Verdict.REAL_AND_WORTHWHILE);
  }
}
