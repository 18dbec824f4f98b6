package blindlap.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plan.Rule;
import blindlap.plan.StepsDays;
import blindlap.stats.compare.LevelMeans;
import blindlap.stats.compare.Trend;
import blindlap.stats.compare.Verdict;
import blindlap.stats.noise.LapSplit;
import blindlap.stats.noise.RiderNoise;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.Nuisance;
import blindlap.stats.order.Orders;
import blindlap.stats.order.Sampling;
import blindlap.stats.power.StepsPower;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;

/** What a steps day tells of noise, and what a repeat of it could show. */
class StepsNoiseTest {
  private static final double[] BENT = {0, -3, -3, 0};

  private static String order(Plan plan, long seed) {
    return Orders.letters(
        plan.rule().assignments().random(RandomSource.XO_RO_SHI_RO_128_PP.create(seed)));
  }

  private static DayRecord day(Plan plan, double[] effects, double sd, int seed) {
    String order = order(plan, seed);
    String primary = plan.primary().orElseThrow().name();
    double[] values = Days.values(Orders.parse(order), 150, effects, sd, 3, new Random(seed));
    return Days.day(plan, order, Map.of(primary, values));
  }

  /** Least squares with a mean a level and a line, worked out in another place: LevelMeans. */
  @Test
  void itsNoiseIsThatAfterDriftAndLevelsSoThatNoBendIsInIt() {
    DayRecord day = day(StepsDays.clicks(), BENT, 0.5, 3);
    Measure primary = day.plan().primary().orElseThrow();
    Trend trend = Analysis.of(day).trend().orElseThrow();
    LevelMeans means = trend.means().orElseThrow();

    NoiseDay told = NoiseDay.of(day, primary);
    RiderNoise noise = told.noise().orElseThrow();

    assertThat(told.source()).isEqualTo(NoiseDay.Source.STEPS_DAY);
    assertThat(told.source().blinded()).isTrue();
    assertThat(noise.sd()).isCloseTo(means.noiseSd(), within(1e-9));
    assertThat(noise.df()).isEqualTo(means.df()).isEqualTo(16 - 4 - 1);
    assertThat(noise.sd()).isBetween(0.25, 0.85);
    assertThat(trend.noiseSd()).as("what is left beside a line").isGreaterThan(1.3);
  }

  @Test
  void whatIsNextGoesByTheSameNoiseAndNeitherPoolsDaysNorPicksTwoLevels() {
    DayRecord day = day(StepsDays.clicks(), BENT, 0.5, 3);
    Comparison found = Analysis.verdictOnly(day).orElseThrow();
    assertThat(found.verdict().orElseThrow()).isEqualTo(Verdict.NOT_SETTLED);

    WhatNext next = WhatNext.of(day, found).orElseThrow();

    assertThat(next.noise())
        .isEqualTo(RiderNoise.of(found.trend().flatMap(Trend::means).orElseThrow()));
    assertThat(next.days()).hasSize(1);
    assertThat(next.gains())
        .extracting(WhatNext.Gain::change)
        .contains(WhatNext.Change.STINTS)
        .doesNotContain(WhatNext.Change.SERIES, WhatNext.Change.TWO_SETUPS);
  }

  /** By formula, one block less shows less; by simulated days with the test itself, 8 of 10. */
  @Test
  void theStintsThatARepeatNeedsShowTheWorthwhileDifferenceOnEightOfTenAndABlockLessDoesNot() {
    Plan plan = StepsDays.clicks(List.of(4, 7, 10), 12);
    Measure primary = plan.primary().orElseThrow();
    double margin =
        primary
            .scale()
            .margin(java.util.Objects.requireNonNull(primary.worthwhile()).doubleValue());
    double sd = margin / 1.2;
    NeededStints needed =
        WhatNext.of(plan, primary, new RiderNoise(sd, 8), LapSplit.unknown(1))
            .orElseThrow()
            .needed()
            .orElseThrow();
    int stints = needed.stints().orElseThrow();

    assertThat(needed.worthwhile()).isEqualTo(margin);
    assertThat(stints % 3).isZero();
    assertThat(shows(plan, stints, sd)).isLessThanOrEqualTo(margin);
    assertThat(shows(plan, stints - 3, sd)).isGreaterThan(margin);
    assertThat(needed.fewest().orElseThrow()).isLessThan(stints);
    assertThat(found(plan, stints, margin, sd, 800)).isBetween(0.76, 0.87);
  }

  @Test
  void aNoiseThatNoDayOvercomesNeedsMoreStintsThanADayHas() {
    Plan plan = StepsDays.clicks(List.of(4, 7, 10), 12);
    Measure primary = plan.primary().orElseThrow();
    NeededStints needed =
        WhatNext.of(plan, primary, new RiderNoise(100, 8), LapSplit.unknown(1))
            .orElseThrow()
            .needed()
            .orElseThrow();
    assertThat(needed.stints()).isEmpty();
    assertThat(needed.most()).isEmpty();
  }

  private static double shows(Plan plan, int stints, double sd) {
    Assignments set = plan.protocol().rule(3, stints).assignments();
    return StepsPower.of(set, plan.levelNumbers(), plan.primary().orElseThrow().drift())
        .trend()
        .formula()
        .difference(sd, 0.8);
  }

  /** Share of simulated days on which a straight trend of this size is found. */
  private static double found(Plan plan, int stints, double difference, double sd, int days) {
    Rule rule = plan.protocol().rule(3, stints);
    Assignments set = rule.assignments();
    var source = RandomSource.XO_RO_SHI_RO_128_PP.create(77);
    Random noise = new Random(78);
    boolean[] valid = new boolean[stints];
    Arrays.fill(valid, true);
    int found = 0;
    for (int day = 0; day < days; day++) {
      int[] order = set.random(source);
      double[] y = new double[stints];
      for (int i = 0; i < stints; i++) {
        y[i] = order[i] * difference / 2 + sd * noise.nextGaussian() + 0.1 * i;
      }
      Trend trend =
          Trend.of(
              set,
              plan.levelNumbers(),
              order,
              y,
              valid,
              Nuisance.of(plan.primary().orElseThrow().drift()),
              new Sampling(false, 999, day));
      found += trend.curve().p(0) <= 0.05 ? 1 : 0;
    }
    return (double) found / days;
  }
}
