package blindlap.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import blindlap.stats.compare.Verdict;
import blindlap.stats.distribution.Interval;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DayAnswersTest {
  private static final String THREE =
      "setups: [{name: A}, {name: B}, {name: C}]\nprotocol: three-setups\ntimetable: null\n";

  private final DayAnswers answers = new DayAnswers();

  private DayAnswer quick(String yaml) {
    return answers.quick(Plans.with(yaml)).orElseThrow();
  }

  /**
   * docs/method.md#figures-of-rules, simulated differences in units of noise; the formula may be
   * off by 3 %.
   */
  @ParameterizedTest
  @CsvSource({
    "blocks-of-four, 12, 1.91",
    "blocks-of-four, 16, 1.54",
    "blocks-of-four, 20, 1.35",
    "blocks-of-four, 24, 1.21",
    "pairs, 16, 1.68",
    "pairs, 20, 1.43",
    "pairs, 24, 1.26",
    "limited-runs, 12, 1.98",
    "limited-runs, 16, 1.58",
    "limited-runs, 24, 1.24",
    "whole-day, 12, 1.91",
    "whole-day, 16, 1.57",
    "whole-day, 24, 1.23"
  })
  void withoutKnownNoiseAnswersAreInUnitsOfItAndAgreeWithTheMethod(
      String protocol, int stints, double difference) {
    DayAnswer answer =
        quick(
            "noise: null\ntimetable: null\nprotocol: %s\nstints: %d\n".formatted(protocol, stints));

    assertThat(answer.noise().kind()).isEqualTo(NoiseKnown.Kind.UNKNOWN);
    assertThat(answer.chosen().source()).isEqualTo(DayAnswer.Source.FORMULA);
    assertThat(answer.chosen().difference()).isCloseTo(difference, within(0.03 * difference));
  }

  @Test
  void aSmallSetIsRoughUntilDaysAreSimulated() {
    // docs/method.md#figures-of-rules: eight stints show 2.94 units of noise.
    String yaml = "noise: null\nprotocol: eight-stints\nstints: 8\n";
    Plan plan = Plans.with(yaml);

    assertThat(quick(yaml).chosen().source()).isEqualTo(DayAnswer.Source.ROUGH);
    DayDetail detail =
        answers.detail(plan, answers.simulate(plan, 4000, 7, () -> false).orElseThrow());
    assertThat(detail.chosen().difference()).isCloseTo(2.94, within(0.1));
    assertThat(detail.error95().low()).isLessThan(2.94);
    assertThat(detail.error95().high()).isGreaterThan(2.94);
  }

  @Test
  void noiseKnownFromFewStintsGivesARange() {
    // docs/method.md#figures-of-the-noise: at N = 16 (df 13) the limits of the noise are .73 and
    // 1.61
    // times its estimate.
    DayAnswer answer = quick("noise: {sd: 1, df: 13}\n");
    Interval range = java.util.Objects.requireNonNull(answer.chosen().range());

    assertThat(range.low() / answer.chosen().difference()).isCloseTo(0.73, within(0.006));
    assertThat(range.high() / answer.chosen().difference()).isCloseTo(1.61, within(0.006));
  }

  @Test
  void aUsualDifferenceIsTurnedIntoNoise() {
    // docs/method.md#typed-noise: SD = x/1.13.
    assertThat(NoiseKnown.of(Plans.with("noise: {usual_difference: 1.13}\n")).sd())
        .isCloseTo(1.0, within(0.003));
  }

  @Test
  void itIsSaidHowManyStintsOrDaysWouldDo() {
    DayAnswer near = quick("noise: {sd: 0.35}\n");
    DayAnswer far = quick("noise: {sd: 0.64}\n");

    // .35 x 1.55 = .54 at 16; .35 x 1.35 = .47 at 20.
    assertThat(near.least().orElseThrow().stints()).isEqualTo(20);
    assertThat(near.days()).hasValue(2);
    // (.64 x 1.547/.5)^2 = 3.9
    assertThat(far.days()).hasValue(4);
    assertThat(quick("noise: {sd: 0.2}\n").showsWorthwhile()).isTrue();
  }

  @Test
  void aPlanThatCanNeverShowAnythingSaysSo() {
    DayAnswer answer = quick("protocol: there-and-back\nstints: 16\n");

    assertThat(answer.never()).isTrue();
    assertThat(answer.chosen().difference()).isNaN();
    assertThat(answer.odds()).isEmpty();
  }

  @Test
  void verdictOddsAgreeWithTheMethodsTable() {
    // docs/method.md#figures-of-verdicts, N = 16, D = 1.5: nothing there 0/1/74/4/21, 1 D
    // 5/1/4/72/18.
    Plan plan = Plans.with("noise: {sd: 0.333333}\n");
    DayDetail detail =
        answers.detail(plan, answers.simulate(plan, 3000, 11, () -> false).orElseThrow());

    assertThat(detail.odds().get(0).odds().of(Verdict.NO_WORTHWHILE_DIFFERENCE))
        .isCloseTo(0.74, within(0.03));
    assertThat(detail.odds().get(1).odds().of(Verdict.DIRECTION_KNOWN))
        .isCloseTo(0.72, within(0.03));
    assertThat(detail.odds().get(1).odds().of(Verdict.REAL_AND_WORTHWHILE))
        .isCloseTo(0.05, within(0.015));
  }

  @Test
  void aDayCutShortCanShowNothingThroughStintEight() {
    // docs/method.md#days-cut-short: nothing through 8; .028 at 9, .0093 at 10.
    DayLeft left = answers.left(Plans.with(""), () -> false).orElseThrow();

    assertThat(left.fewestStints()).isEqualTo(9);
    assertThat(left.cuts().get(8).left().smallestP()).isCloseTo(0.028, within(0.0005));
    assertThat(left.cuts().get(9).left().smallestP()).isCloseTo(0.0093, within(0.0001));
  }

  @Test
  void theEightStintSetLosesALotWithTwoStints() {
    // docs/method.md#days-cut-short: with two voids only 58 % of its orders still can.
    Plan plan = Plans.with("protocol: eight-stints\nstints: 8\n");

    assertThat(answers.left(plan, () -> false).orElseThrow().losingTwo().share())
        .isCloseTo(0.58, within(0.005));
  }

  @Test
  void threeSetupsGiveAnApproximationForPairs() {
    // docs/method.md#figures-of-pairs: k = 3, N = 18 shows 1.5 SD with power .45, so that 8 of 10
    // needs more than 1.5 SD.
    DayAnswer answer =
        quick(
            "setups: [{name: A}, {name: B}, {name: C}]\nprotocol: three-setups\nstints: 18\n"
                + "noise: null\n");

    assertThat(answer.chosen().source()).isEqualTo(DayAnswer.Source.PAIRS);
    assertThat(answer.chosen().difference()).isBetween(1.9, 2.3);
  }

  @Test
  void threeSetupsAreSimulatedWithTheTestOfTheirPairs() {
    // docs/method.md#figures-of-pairs, k = 3, N = 18: 1.5 SD is told apart with power .45, the
    // setups differ with .63.
    Plan plan = Plans.with(THREE + "stints: 18\nnoise: {sd: 0.333333}\n");
    DaySimulation first = answers.simulate(plan, 300, 3, () -> false).orElseThrow();
    DaySimulation all = first.and(answers.simulate(plan, 300, 4, () -> false).orElseThrow());
    DayDetail detail = answers.detail(plan, all);

    assertThat(detail.odds()).isEmpty();
    // Worthwhile are .5 s, 1.5 times the noise.
    DayDetail.PairEnding just = detail.pairs().get(1);
    assertThat(just.difference()).isCloseTo(0.5, within(1e-9));
    assertThat(just.odds().pair()).isCloseTo(0.45, within(0.06));
    assertThat(just.odds().differ()).isCloseTo(0.63, within(0.06));
    assertThat(detail.pairs().get(0).odds().wrong()).isCloseTo(0.05, within(0.03));
    assertThat(detail.error95().low()).isLessThan(detail.chosen().difference());
    assertThat(detail.error95().high()).isGreaterThan(detail.chosen().difference());

    DayAnswer refined = answers.refined(plan, answers.quick(plan).orElseThrow(), detail);
    assertThat(refined.chosen()).isEqualTo(detail.chosen());
    assertThat(refined.curve()).contains(detail.chosen());
  }

  @Test
  void threeSetupsOnNineStintsAreFoundToShowNoPairReliably() {
    // Of 36 partitions few have the largest |t| of a pair alone, however large the difference.
    Plan plan = Plans.with(THREE + "stints: 9\nnoise: null\n");
    DayAnswer quick = answers.quick(plan).orElseThrow();
    DayDetail detail =
        answers.detail(plan, answers.simulate(plan, 200, 3, () -> false).orElseThrow());

    assertThat(quick.never()).isFalse();
    assertThat(quick.chosen().difference()).isNaN();
    assertThat(detail.chosen().difference()).isNaN();
    assertThat(detail.pairs()).isEmpty();
    assertThat(answers.refined(plan, quick, detail).showsWorthwhile()).isFalse();
  }

  @Test
  void aDayOfThreeSetupsThatEndsAfterWholeBlocksIsAShorterDay() {
    DayLeft left =
        answers.left(Plans.with(THREE + "stints: 18\nnoise: null\n"), () -> false).orElseThrow();

    double twelve = quick(THREE + "stints: 12\nnoise: null\n").chosen().difference();
    assertThat(left.cuts().get(11).difference()).isEqualTo(twelve);
    assertThat(left.cuts().get(8).difference()).isNaN();
    assertThat(left.cuts().get(9).difference()).isNaN();
    assertThat(left.fewestStints()).isEqualTo(8);
    assertThat(left.fewestForDifference()).hasValue(12);
  }

  @Test
  void whatTheFormulaHoldsForIsNotReplaced() {
    Plan plan = Plans.with("");
    DayAnswer quick = answers.quick(plan).orElseThrow();
    DayDetail detail =
        answers.detail(plan, answers.simulate(plan, 50, 3, () -> false).orElseThrow());

    assertThat(answers.refined(plan, quick, detail)).isSameAs(quick);
  }

  @Test
  void aKnobTurnedAgainStopsTheSimulation() {
    Plan plan = Plans.with("");

    assertThatThrownBy(() -> answers.simulate(plan, 1_000_000, 1, () -> true))
        .isInstanceOf(CancellationException.class);
    assertThatThrownBy(() -> answers.left(plan, () -> true))
        .isInstanceOf(CancellationException.class);
  }

  @Test
  void onTheRatioScaleDifferencesArePerCent() {
    String yaml =
        "measures: [{name: lap time, kind: lap time, unit: s, role: primary, worthwhile: 1, scale:"
            + " ratio}]\nnoise: {sd: 0.7}\n";

    // .7 % x 1.547, logarithms and per cent being nearly alike there.
    assertThat(quick(yaml).chosen().difference()).isCloseTo(1.07, within(0.02));
  }
}
