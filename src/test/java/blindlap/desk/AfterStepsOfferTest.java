package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.plan.Plan;
import blindlap.plan.Plans;
import blindlap.plan.StepsDays;
import blindlap.review.Analysis;
import blindlap.review.DayRecord;
import blindlap.review.Days;
import blindlap.stats.order.Orders;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;

/** Which levels of a steps day are offered for new plans: those ridden, the best by their means. */
class AfterStepsOfferTest {
  private static final double[] MIDDLE_IS_LOW = {0, -6, -9, -3};

  private static DayRecord day(Plan plan, double[] effects) {
    String order =
        Orders.letters(
            plan.rule().assignments().random(RandomSource.XO_RO_SHI_RO_128_PP.create(5)));
    double[] values = Days.values(Orders.parse(order), 150, effects, 0.3, 3, new Random(5));
    return Days.day(plan, order, Map.of(plan.primary().orElseThrow().name(), values));
  }

  private static AfterSteps.Offer offer(DayRecord day) {
    return AfterSteps.offer(day, Analysis.verdictOnly(day)).orElseThrow();
  }

  private static Plan better(String better) {
    return Plans.with(
        StepsDays.text("levels: [4, 7, 10, 13], least: 2, most: 16", 16)
            + """
            measures:
              - {name: lap time, kind: lap time, unit: s, role: primary, worthwhile: 2, better: %s}
            """
                .formatted(better));
  }

  @Test
  void theTwoBestGoByMeansAfterDriftAndByTheBetterDirectionTheLowerLevelFirst() {
    assertThat(offer(day(better("lower"), MIDDLE_IS_LOW)).best()).containsExactly(1, 2);
    assertThat(offer(day(better("higher"), MIDDLE_IS_LOW)).best()).containsExactly(0, 3);
    assertThat(offer(day(better("neither"), MIDDLE_IS_LOW)).best()).isEmpty();
  }

  @Test
  void aLevelThatWasNotRiddenIsNotOffered() {
    DayRecord whole = day(better("lower"), MIDDLE_IS_LOW);
    assertThat(offer(whole).names()).hasSize(4);
    int never = 2;
    DayRecord without =
        new DayRecord(
            whole.session(),
            whole.plan(),
            whole.key(),
            whole.laps().stream().filter(lap -> whole.setup(lap.id().stint()) != never).toList(),
            whole.guesses(),
            whole.blindBroken(),
            whole.lastStint(),
            whole.fits(),
            List.of());
    AfterSteps.Offer offer = offer(without);
    assertThat(offer.levels()).containsExactly(0, 1, 3);
    assertThat(offer.best()).containsExactly(1, 3);
  }

  @Test
  void anOrdinaryComparisonOffersNothing() {
    Plan plan = Plans.with("");
    DayRecord day = day(plan, new double[] {0, 1});
    assertThat(AfterSteps.offer(day, Analysis.verdictOnly(day))).isEmpty();
  }
}
