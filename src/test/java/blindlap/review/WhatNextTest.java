package blindlap.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plan.Rule;
import blindlap.plan.StepsDays;
import blindlap.stats.compare.Scale;
import blindlap.stats.compare.TwoSetups;
import blindlap.stats.compare.Verdict;
import blindlap.stats.noise.LapSplit;
import blindlap.stats.noise.RiderNoise;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.Drift;
import blindlap.stats.order.Sampling;
import blindlap.stats.pool.PooledSession;
import blindlap.stats.pool.StratifiedSessions;
import blindlap.stats.power.StepsPower;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;

/** What one and three more days could show, against days simulated with the tests themselves. */
class WhatNextTest {
  private static final Rule TWELVE = Rule.blocks(2, 12, 4);

  private static Plan plan(Rule rule) {
    return Days.plan(rule, List.of(primary()));
  }

  private static Measure primary() {
    return Days.measure(
        "lap time",
        Measure.Kind.LAP_TIME,
        Measure.Role.PRIMARY,
        Measure.Better.LOWER,
        "1",
        Scale.RAW);
  }

  private static WhatNext next(Rule rule, double sd, int df) {
    return WhatNext.of(plan(rule), primary(), new RiderNoise(sd, df), LapSplit.unknown(1))
        .orElseThrow();
  }

  private static WhatNext.Gain gain(WhatNext next, WhatNext.Change change) {
    return next.gains().stream().filter(g -> g.change() == change).findFirst().orElseThrow();
  }

  /** Share of days on which the pooled test of so many days finds this difference. */
  private static double found(Rule rule, int days, double difference, double sd, int trials) {
    Assignments set = rule.assignments();
    var source = RandomSource.XO_RO_SHI_RO_128_PP.create(77);
    Random noise = new Random(78);
    boolean[] valid = new boolean[rule.stints()];
    Arrays.fill(valid, true);
    int found = 0;
    for (int trial = 0; trial < trials; trial++) {
      List<PooledSession> sessions = new ArrayList<>();
      for (int day = 0; day < days; day++) {
        int[] order = set.random(source);
        double[] y = new double[order.length];
        for (int i = 0; i < y.length; i++) {
          y[i] = order[i] * difference + sd * noise.nextGaussian() + 0.1 * i;
        }
        sessions.add(new PooledSession(set, order, y, valid, Drift.LINE));
      }
      Sampling sampling = new Sampling(false, 999, trial);
      double p =
          days == 1
              ? TwoSetups.compare(
                      set,
                      sessions.get(0).order(),
                      sessions.get(0).values(),
                      valid,
                      Drift.LINE,
                      sampling)
                  .curve()
                  .p(0)
              : StratifiedSessions.compare(sessions, sampling).curve().p(0);
      found += p <= 0.05 ? 1 : 0;
    }
    return (double) found / trials;
  }

  @Test
  void oneMoreDayFindsWhatIsSaidOnEightOfTen() {
    WhatNext next = next(TWELVE, 0.7, 9);

    // Three standard errors of 1 500 days, and three per cent of the difference for the formula.
    assertThat(found(TWELVE, 1, next.days().get(0).difference(), 0.7, 1500))
        .isCloseTo(0.8, within(0.05));
  }

  @Test
  void aRuleOfFewOrdersIsSimulatedAndNotRough() {
    Rule pairs = Rule.blocks(2, 12, 2); // 64 orders
    WhatNext next = next(pairs, 1, 9);

    assertThat(found(pairs, 1, next.days().get(0).difference(), 1, 1500))
        .isCloseTo(0.8, within(0.05));
  }

  @Test
  void threeMoreDaysPooledFindWhatIsSaidOnEightOfTen() {
    WhatNext next = next(TWELVE, 0.7, 9);

    assertThat(next.days().get(1).more()).isEqualTo(3);
    assertThat(found(TWELVE, 3, next.days().get(1).difference(), 0.7, 400))
        .isCloseTo(0.8, within(0.06));
  }

  @Test
  void theRangeIsThatOfTheNoise() {
    // docs/method.md#figures-of-the-noise: df 9, limits .69 and 1.83.
    for (WhatNext.Days each : next(TWELVE, 0.7, 9).days()) {
      assertThat(each.range().low() / each.difference()).isCloseTo(0.69, within(0.005));
      assertThat(each.range().high() / each.difference()).isCloseTo(1.83, within(0.005));
    }
  }

  @Test
  void everyGainIsWhatADayLikeThatShows() {
    WhatNext next = next(TWELVE, 0.7, 9);
    double now = next.days().get(0).difference();

    WhatNext.Gain stints = gain(next, WhatNext.Change.STINTS);
    assertThat(stints.to()).isEqualTo(16);
    assertThat(stints.best())
        .isEqualTo(next(Rule.blocks(2, 16, 4), 0.7, 13).days().get(0).difference());
    // docs/method.md#figures-of-rules: 1.91 and 1.54 units of noise.
    assertThat(stints.best() / now).isCloseTo(1.54 / 1.91, within(0.02));

    WhatNext.Gain series = gain(next, WhatNext.Change.SERIES);
    assertThat(found(TWELVE, 2, series.best(), 0.7, 500)).isCloseTo(0.8, within(0.06));

    // One scored lap made three: from all noise in the lap to all of it shared by the stint.
    WhatNext.Gain laps = gain(next, WhatNext.Change.LAPS);
    assertThat(laps.best()).isCloseTo(now / Math.sqrt(3), within(1e-12));
    assertThat(laps.worst()).isEqualTo(now);
  }

  @Test
  void aRuleThatShowsMoreOnAsManyStintsIsNamedAndItsOwnIsNot() {
    Rule thereAndBack = new Rule(2, 24, 4, List.of("ABBA", "BAAB"), null, null); // 64 orders

    assertThat(next(TWELVE, 1, 9).gains()).noneMatch(g -> g.change() == WhatNext.Change.BLOCKS);
    WhatNext.Gain blocks = gain(next(thereAndBack, 1, 21), WhatNext.Change.BLOCKS);
    assertThat(blocks.to()).isEqualTo(4);
    assertThat(blocks.best()).isCloseTo(1.21, within(0.02));
  }

  @Test
  void aPlanThatCanNeverShowAnythingNamesWhatCan() {
    Rule never = new Rule(2, 16, 4, List.of("ABBA", "BAAB"), null, null); // 16 orders
    WhatNext next = next(never, 1, 13);

    assertThat(next.days().get(0).difference()).isNaN();
    // Three such days have 4 096 orders together.
    assertThat(next.days().get(1).difference()).isBetween(0.7, 1.0);
    assertThat(gain(next, WhatNext.Change.BLOCKS).best()).isCloseTo(1.54, within(0.03));
    assertThat(next.gains()).noneMatch(g -> g.change() == WhatNext.Change.LAPS);
  }

  @Test
  void threeSetupsAreNeverPooled() {
    WhatNext next = next(Rule.blocks(3, 18, 3), 1, 13);

    assertThat(next.days()).hasSize(1);
    assertThat(next.gains()).noneMatch(g -> g.change() == WhatNext.Change.SERIES);
  }

  @Test
  void nothingIsSaidOfADayThatIsSettledOrDidNotVary() {
    Random random = new Random(5);
    for (double[] recipe : new double[][] {{5, 0.3}, {0.1, 0.2}, {0, 0}, {0.9, 0.8}}) {
      Plan plan = plan(TWELVE);
      String order = Days.order(TWELVE, random);
      double[] values =
          Days.values(
              blindlap.stats.order.Orders.parse(order),
              90,
              new double[] {0, recipe[0]},
              recipe[1],
              2,
              random);
      DayRecord day = Days.day(plan, order, Map.of("lap time", values));
      Comparison found = Analysis.verdictOnly(day).orElseThrow();
      Verdict verdict = found.verdict().orElseThrow();
      assertThat(WhatNext.of(day, found).isPresent())
          .as(verdict.text())
          .isEqualTo(verdict == Verdict.NOT_SETTLED || verdict == Verdict.DIRECTION_KNOWN);
    }
  }

  @Test
  void ofLevelsItIsTheTrendAndNeverAnotherKindOfDay() {
    Plan plan = StepsDays.clicks(List.of(4, 7, 10), 12);
    WhatNext next =
        WhatNext.of(plan, primary(), new RiderNoise(0.5, 9), LapSplit.unknown(1)).orElseThrow();
    double[] levels = {4, 7, 10};
    Assignments eighteen = plan.protocol().rule(3, 18).assignments();
    StepsPower now = StepsPower.of(plan.rule().assignments(), levels, Drift.LINE);
    StepsPower more = StepsPower.of(eighteen, levels, Drift.LINE);

    assertThat(next.days()).hasSize(1);
    assertThat(next.days().get(0).difference())
        .isCloseTo(now.trend().formula().difference(0.5, 0.8), within(1e-9));
    assertThat(next.gains())
        .extracting(WhatNext.Gain::change)
        .containsExactly(WhatNext.Change.STINTS, WhatNext.Change.LAPS);
    assertThat(gain(next, WhatNext.Change.STINTS).to()).isEqualTo(18);
    assertThat(gain(next, WhatNext.Change.STINTS).best())
        .isCloseTo(more.trend().formula().difference(0.5, 0.8), within(1e-9));
  }
}
