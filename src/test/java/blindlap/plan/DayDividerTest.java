package blindlap.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** Every division of a day is what planning it by itself gives, and only what fits is listed. */
class DayDividerTest {
  private static final String DAY =
      """
      timetable: {start: "09:00", daylight_end: "%s", lap: 2, climb: 4, swap: 5, scoring: 1,
        rest_every: 8, rest: 20, lap_budget: %d}
      laps: {warm_up: 2, settling: 0, scored: 2}
      """;

  private static final String SIX_HOURS = DAY.formatted("15:00", 42);
  private static final String TYPED = "noise: {usual_difference: 0.72}\n";

  private final DayAnswers answers = new DayAnswers(() -> List.copyOf(Plans.protocols().all()));
  private final DayDivider divider = answers.divider();

  private DayDivided divided(Plan plan) {
    return divider.divide(plan, DayDivider.typed(plan), (done, of) -> true);
  }

  private static Plan plan(String yaml) {
    return Plans.with(SIX_HOURS + yaml);
  }

  @Test
  void everyDivisionAgreesWithPlanningItByItself() {
    for (String noise :
        List.of(
            TYPED, "noise: {sd: 0.6, laps: 3, df: 20, stint_share: 10 to 60}\n", "noise: null\n")) {
      List<Division> all = divided(plan(noise)).divisions();
      assertThat(all).hasSizeGreaterThan(20);
      for (Division each : all) {
        DayAnswer planned = answers.quick(each.plan()).orElseThrow();
        if (each.source() == DayAnswer.Source.SIMULATION) {
          continue; // by the test below
        }
        assertThat(each.most()).isEqualTo(planned.chosen().difference());
        assertThat(each.least())
            .isCloseTo(planned.noise().best(planned.chosen().difference(), false), within(1e-12));
        assertThat(each.source()).isEqualTo(planned.chosen().source());
        assertThat(each.swaps()).isEqualTo(planned.orders().meanSwaps());
        assertThat(each.handlings()).isEqualTo(planned.handlings());
        assertThat(planned.chosen().fits()).isTrue();
        assertThat(PlanCheck.problems(each.plan())).isEmpty();
      }
    }
  }

  @Test
  void nothingThatFitsIsLeftOut() {
    Plan plan = plan(TYPED);
    Map<String, Integer> most =
        divided(plan).longest().stream()
            .collect(
                Collectors.toMap(
                    d -> d.plan().protocol().name() + " " + d.scored(), Division::stints));
    for (Protocol protocol : Plans.protocols().all()) {
      for (int scored = 1; scored <= 9 && protocol.minTrendEfficiency() == null; scored++) {
        Plan each = plan.with(protocol, plan.stints(), scored, plan.noise());
        Integer listed = most.get(protocol.name() + " " + scored);
        if (listed != null) {
          assertThat(listed).isEqualTo(Schedule.mostStints(each));
        }
      }
    }
    assertThat(most).containsEntry("blocks-of-four 1", 24).containsEntry("blocks-of-four 3", 12);
    assertThat(divided(plan).divisions())
        .as("a rule that is named after eight stints")
        .filteredOn(d -> d.plan().protocol().name().equals("eight-stints"))
        .isNotEmpty()
        .allMatch(d -> d.stints() <= 8);
  }

  @Test
  void simulatedDaysTakeThePlaceOfTheFormulaAndReadAsThePlanItself() {
    Plan plan =
        Plans.with(
            SIX_HOURS.replace("scored: 2", "scored: 4")
                + TYPED
                + "protocol: eight-stints\nstints: 8\n");
    divider.simulate(plan, () -> false);
    Division found =
        divided(plan).divisions().stream().filter(d -> d.is(plan)).findFirst().orElseThrow();
    assertThat(found.source()).isEqualTo(DayAnswer.Source.SIMULATION);
    DayDetail detail =
        answers.detail(
            plan,
            answers
                .simulate(plan, DayAnswers.usualDays(plan), 20_251_101L, () -> false)
                .orElseThrow());
    assertThat(found.most()).isCloseTo(detail.chosen().difference(), within(1e-12));
  }

  @Test
  void theBestIsMarkedOnlyWhereItIsBestAtBothEnds() {
    assertThat(divided(plan(TYPED)).divisions()).noneMatch(Division::best);
    for (String share : List.of("0", "100", "30", "0 to 20", "80 to 100")) {
      List<Division> all =
          divided(plan("noise: {usual_difference: 0.72, stint_share: %s}\n".formatted(share)))
              .divisions();
      for (Division best : all.stream().filter(Division::best).toList()) {
        assertThat(all)
            .allMatch(d -> d.ends().low() >= best.ends().low() * (1 - 1e-9))
            .allMatch(d -> d.ends().high() >= best.ends().high() * (1 - 1e-9));
      }
      assertThat(all.stream().filter(Division::best).count()).isLessThanOrEqualTo(1);
    }
    assertThat(best("0").scored()).isGreaterThan(1);
    assertThat(best("100").scored()).isEqualTo(1);
  }

  private Division best(String share) {
    return divided(plan("noise: {usual_difference: 0.72, stint_share: %s}\n".formatted(share)))
        .divisions()
        .stream()
        .filter(Division::best)
        .findFirst()
        .orElseThrow();
  }

  @Test
  void theShareUpToWhichADifferenceIsReachedIsWhereItIsJustReached() {
    Plan plan = plan("noise: {usual_difference: 0.36}\n");
    double worthwhile = plan.primary().orElseThrow().worthwhile().doubleValue();
    int checked = 0;
    for (Division each : divided(plan).divisions()) {
      if (each.source() == DayAnswer.Source.FORMULA && each.reach().share().isPresent()) {
        BigDecimal share = BigDecimal.valueOf(100 * each.reach().share().getAsDouble());
        DeclaredNoise noise = each.plan().noise().of(1, new StintShare(share, share));
        Plan just = each.plan().with(noise);
        assertThat(answers.quick(just).orElseThrow().chosen().difference())
            .isCloseTo(worthwhile, within(1e-6));
        checked++;
      }
    }
    assertThat(checked).isPositive();
  }

  @Test
  void swapsOf7AndLapsOf10MinutesDivideAsTheMethodSays() {
    // 16 stints of 2 instead of 24 of 1, blocks of four: −10, +2, +14 % at shares 0, .3, .6.
    double[] gains = {-10, 2, 14};
    for (int i = 0; i < 3; i++) {
      String noise = "noise: {usual_difference: 0.72, stint_share: %d}\n".formatted(30 * i);
      double two = alone(noise, 16, 2);
      double one = alone(noise, 24, 1);
      assertThat(100 * (two / one - 1)).isCloseTo(gains[i], within(1.0));
    }
  }

  private double alone(String noise, int stints, int scored) {
    return divided(plan(noise)).divisions().stream()
        .filter(d -> d.stints() == stints && d.scored() == scored)
        .filter(d -> d.plan().protocol().name().equals("blocks-of-four"))
        .findFirst()
        .orElseThrow()
        .most();
  }

  @Test
  void whereEarlierDaysTellTheNoiseEachNumberOfLapsHasItsOwn() {
    Plan plan = plan("noise: null\n");
    EarlierNoise earlier =
        (measure, laps) ->
            Optional.of(new DeclaredNoise(new BigDecimal(10 - laps), 20, "days", null, laps, null));
    DayDivided divided = divider.divide(plan, DayDivider.told(plan, earlier), (done, of) -> true);
    assertThat(divided.divisions())
        .allMatch(d -> d.plan().noise().sd().intValue() == 10 - d.scored())
        .allMatch(d -> d.least() == d.most());
  }

  @Test
  void aMedianOfFewerThanThreeLapsIsNoDivision() {
    Plan plan = plan(TYPED);
    Measure median = plan.measures().get(0).with(blindlap.stats.compare.StintSummary.MEDIAN);
    Plan medians =
        Plans.with(
            DAY.formatted("15:00", 42).replace("scored: 2", "scored: 3")
                + TYPED
                + "measures: [{name: lap time, kind: lap time, unit: s, role: primary, worthwhile: 1,"
                + " summary: median}]\n");
    assertThat(median.summary()).isEqualTo(medians.primary().orElseThrow().summary());
    DayDivided divided = divided(medians);
    assertThat(divided.medians()).isEqualTo(2);
    assertThat(divided.divisions()).isNotEmpty().allMatch(d -> d.scored() >= 3);
  }

  @Test
  void partsThatMayNotBeRefittedSoOftenAndTheLapBudgetLimitTheDay() {
    Plan worn =
        plan(TYPED + "setups: [{name: A, most_refits: 9}, {name: B}]\ndifferences_reason: both\n");
    assertThat(divided(worn).divisions()).isNotEmpty().allMatch(d -> d.stints() <= 16);
    DayDivided few = divided(Plans.with(DAY.formatted("19:00", 18) + TYPED));
    assertThat(few.divisions()).isNotEmpty().allMatch(d -> d.laps() <= 18);
    assertThat(few.beyond()).isPositive();
  }

  @Test
  void aDayTooShortForAnyDivisionAndAPlanWithoutAClockAreRefusedInWords() {
    Plan shortDay = Plans.with(DAY.formatted("09:30", 42) + TYPED);
    assertThat(divided(shortDay).divisions()).isEmpty();
    assertThat(DayDivider.nothingFits(shortDay).fault()).isEqualTo(PlanFault.DIVIDE_NOTHING_FITS);
    assertThat(DayDivider.refused(Plans.with("timetable: null\n")).orElseThrow().fault())
        .isEqualTo(PlanFault.DIVIDE_WITHOUT_TIMETABLE);
    assertThat(DayDivider.refused(shortDay)).isEmpty();
  }

  @Test
  void whoeverDoesNotWaitAnyMoreStopsIt() {
    Plan plan = plan(TYPED);
    assertThatThrownBy(() -> divider.divide(plan, DayDivider.typed(plan), (done, of) -> done < 3))
        .isInstanceOf(CancellationException.class);
  }
}
