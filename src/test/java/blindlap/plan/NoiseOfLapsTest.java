package blindlap.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import blindlap.stats.compare.Verdict;
import java.math.BigDecimal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * How many laps a stint is scored by changes what a day can show, by what is known of the noise.
 */
class NoiseOfLapsTest {
  private static final String USUAL = "noise: {usual_difference: 1}\n";

  private final DayAnswers answers = new DayAnswers();

  private DayAnswer quick(String yaml) {
    return answers.quick(Plans.with(yaml)).orElseThrow();
  }

  private static String laps(int scored) {
    return "laps: {scored: %d}\ntimetable: null\n".formatted(scored);
  }

  private double best(String yaml) {
    DayAnswer day = quick(yaml);
    return day.noise().best(day.chosen().difference(), false);
  }

  @Test
  void moreScoredLapsGiveARangeFromAllNoiseInTheLapToAllOfItInTheStint() {
    DayAnswer one = quick(USUAL + laps(1));
    DayAnswer three = quick(USUAL + laps(3));
    assertThat(one.noise().split()).isFalse();
    assertThat(three.noise().split()).isTrue();
    assertThat(three.chosen().difference()).isEqualTo(one.chosen().difference());
    assertThat(best(USUAL + laps(3)))
        .isCloseTo(one.chosen().difference() / Math.sqrt(3), within(1e-9));
  }

  /** METHOD of several laps: three instead of one, 0, 30 and 60 % of the variance in the stint. */
  @ParameterizedTest
  @CsvSource({"0, -42", "30, -27", "60, -14"})
  void aKnownShareGivesOneFigureWithTheGainOfTheFormula(String share, double perCent) {
    String noise = "noise: {usual_difference: 1, stint_share: %s}\n".formatted(share);
    DayAnswer three = quick(noise + laps(3));
    assertThat(three.noise().split()).isFalse();
    double gain = three.chosen().difference() / quick(noise + laps(1)).chosen().difference();
    assertThat(100 * (gain - 1)).isCloseTo(perCent, within(0.5));
  }

  @Test
  void noiseOfAsManyLapsAsPlannedIsTakenAsItIs() {
    assertThat(quick("noise: {sd: 1, laps: 3, df: 12}\n" + laps(3)).chosen())
        .isEqualTo(quick("noise: {sd: 1, df: 12}\n" + laps(3)).chosen());
    assertThat(quick("noise: {sd: 1, df: 12}\n" + laps(3)).noise().split()).isFalse();
  }

  @Test
  void fewerLapsThanTheNoiseIsKnownOfCostAsMuchAtMostAsTheyCan() {
    DayAnswer day = quick("noise: {sd: 1, laps: 4}\n" + laps(1));
    assertThat(day.noise().least()).isEqualTo(1);
    assertThat(day.noise().sd()).isCloseTo(2, within(1e-12));
  }

  @Test
  void unknownNoiseIsCountedInThatOfLapsOfDifferentStints() {
    DayAnswer day = quick("noise: null\n" + laps(4));
    assertThat(day.noise().sd()).isEqualTo(1);
    assertThat(day.noise().least()).isCloseTo(.5, within(1e-12));
  }

  @Test
  void theOddsAreToldAtBothEnds() {
    DayAnswer day = quick("noise: {usual_difference: 0.7}\n" + laps(3));
    DayAnswer.Ending twice = day.odds().get(3);
    assertThat(twice.best().of(Verdict.REAL_AND_WORTHWHILE))
        .isGreaterThan(twice.odds().of(Verdict.REAL_AND_WORTHWHILE) + .05);
    DayAnswer one = quick("noise: {usual_difference: 0.7}\n" + laps(1));
    assertThat(one.odds()).allMatch(ending -> ending.best().equals(ending.odds()));
    assertThat(twice.odds()).isEqualTo(one.odds().get(3).odds());
  }

  @Test
  void simulatedOddsAreThoseOfTheNoiseAtEitherEnd() {
    Plan plan = Plans.with("noise: {usual_difference: 0.7}\n" + laps(3));
    Plan best = Plans.with("noise: {usual_difference: 0.7, stint_share: 0}\n" + laps(3));
    DaySimulation days = answers.simulate(plan, 300, 5, () -> false).orElseThrow();
    DayDetail split = answers.detail(plan, days);
    DayDetail known = answers.detail(best, days);
    for (int i = 0; i < split.odds().size(); i++) {
      assertThat(split.odds().get(i).best().real())
          .isCloseTo(known.odds().get(i).odds().real(), within(1e-9));
    }
  }

  @Test
  void pairsOfThreeSetupsAreSimulatedAtBothEnds() {
    String three =
        "setups: [{name: A}, {name: B}, {name: C}]\nprotocol: three-setups\nstints: 12\n";
    Plan plan = Plans.with(three + "noise: {usual_difference: 0.7}\n" + laps(3));
    DaySimulation days = answers.simulate(plan, 60, 5, () -> false).orElseThrow();
    DayDetail.PairEnding twice = answers.detail(plan, days).pairs().get(3);
    assertThat(twice.best().pair()).isGreaterThan(twice.odds().pair());
    DaySimulation more = answers.simulate(plan, 60, 6, () -> false).orElseThrow();
    assertThat(answers.detail(plan, days.and(more)).days()).isEqualTo(120);
  }

  @ParameterizedTest
  @ValueSource(strings = {"30", "10 to 60", "10-60", "10 – 60", "0 to 100", "12,5"})
  void aShareIsReadAsPeopleTypeIt(String typed) {
    StintShare share = StintShare.read(typed).orElseThrow();
    assertThat(StintShare.read(share.text())).contains(share);
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "x", "-5", "60 to 10", "101", "10 to", "to 60", "10 to 20 to 30"})
  void whatIsNoShareIsNotRead(String typed) {
    assertThat(StintShare.read(typed)).isEmpty();
  }

  @Test
  void aDifferenceOnTheRatioScaleKeepsItsScaleAtTheLeastNoise() {
    NoiseKnown noise = new NoiseKnown(NoiseKnown.Kind.GUESSED, .02, .01, 0, null);
    assertThat(noise.best(100 * Math.expm1(.04), true))
        .isCloseTo(100 * Math.expm1(.02), within(1e-9));
    assertThat(noise.best(4, false)).isEqualTo(2);
    assertThat(new DeclaredNoise(BigDecimal.ONE, null, "", null).knownLaps(5)).isEqualTo(5);
  }
}
