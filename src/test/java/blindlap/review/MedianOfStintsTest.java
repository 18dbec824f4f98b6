package blindlap.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import blindlap.plan.Plan;
import blindlap.plan.Rule;
import blindlap.stats.compare.StintSummary;
import blindlap.stats.compare.TwoSetups;
import blindlap.stats.order.Nuisance;
import blindlap.stats.order.Orders;
import blindlap.stats.order.Sampling;
import blindlap.wording.FindingText;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** A day whose lap time is the median of three laps a stint. */
class MedianOfStintsTest {
  private static final Rule RULE = Rule.blocks(2, 12, 4);
  private static final String ORDER = "ABBABABAABAB";
  private static final Plan PLAN =
      Days.plan(RULE, List.of(Days.lapTime().with(StintSummary.MEDIAN)), 3);
  private static final int SPOILED = 4;

  /** Half a second between the setups, and one lap of a stint with a fall of a minute. */
  private static double[][] laps() {
    Random random = new Random(6);
    double[][] laps = new double[12][3];
    for (int stint = 0; stint < 12; stint++) {
      for (int lap = 0; lap < 3; lap++) {
        double seconds = 90 + (ORDER.charAt(stint) == 'B' ? 0.5 : 0) + 0.4 * random.nextGaussian();
        laps[stint][lap] = Math.round(100 * seconds) / 100.0;
      }
    }
    laps[SPOILED][1] += 60;
    return laps;
  }

  private static DayRecord day(double[][] laps, boolean[][] voids) {
    return Days.laps(PLAN, ORDER, Map.of("lap time", laps), voids);
  }

  @Test
  void theFindingIsThatOfTheMediansOfTheStints() {
    double[][] laps = laps();
    Comparison found = Analysis.of(day(laps, new boolean[12][3])).primary().orElseThrow();
    double[] middle =
        Arrays.stream(laps).mapToDouble(lap -> Arrays.stream(lap).sorted().toArray()[1]).toArray();
    boolean[] all = new boolean[12];
    Arrays.fill(all, true);
    TwoSetups wanted =
        TwoSetups.compare(
            RULE.assignments(),
            Orders.parse(ORDER),
            middle,
            all,
            Nuisance.of(Days.lapTime().drift()),
            Sampling.PREFERRED);
    assertThat(found.estimate()).isCloseTo(wanted.estimate(), within(1e-12));
    assertThat(found.result().curve().p(0)).isEqualTo(wanted.curve().p(0));
    assertThat(found.result().noiseSd()).isLessThan(1);
  }

  @Test
  void aStintThatLacksALapIsMaskedAndTheWordsSaySo() {
    double[][] laps = laps();
    boolean[][] voids = new boolean[12][3];
    voids[SPOILED][1] = true;
    laps[9][0] = Double.NaN;
    Finding finding = Analysis.of(day(laps, voids));
    StintValues stints = finding.primary().orElseThrow().stints();
    assertThat(stints.used()).isEqualTo(10);
    assertThat(stints.incomplete()).isEqualTo(2);
    // The void is a decided event; what lacks a value without one counts as missing.
    assertThat(stints.missingShare()).isCloseTo(1 / 11.0, within(1e-15));
    assertThat(new FindingText(finding).evidence())
        .anyMatch(
            line ->
                line.contains("10 of 12 stints used")
                    && line.contains("2 of the stints without a value have laps, but too few"));
  }

  @Test
  void allRiddenLapsGiveTheStintItsMedianBack() {
    boolean[][] voids = new boolean[12][3];
    voids[SPOILED][1] = true;
    Sensitivity all = Analysis.of(day(laps(), voids)).sensitivities().get(0);
    assertThat(all.kind()).isEqualTo(Sensitivity.Kind.ALL_RIDDEN);
    assertThat(all.result().orElseThrow().used()).isEqualTo(12);
  }

  @Test
  void noiseIsThatOfMeansWhateverTheDaySummarises() {
    NoiseDay noise = NoiseDay.of(day(laps(), new boolean[12][3]), PLAN.measures().get(0));
    assertThat(noise.noise().orElseThrow().sd()).isGreaterThan(3);
  }

  @Test
  void twoMoreLapsAStintHelpAMedianAsMuchAsAMedianCanBeHelped() {
    DayRecord day = day(laps(), new boolean[12][3]);
    WhatNext next = WhatNext.of(day, Analysis.of(day).primary().orElseThrow()).orElseThrow();
    WhatNext.Gain laps =
        next.gains().stream()
            .filter(gain -> gain.change() == WhatNext.Change.LAPS)
            .findFirst()
            .orElseThrow();
    // Variances of the median of three and of five normal laps (Teichroew 1956, from memory).
    assertThat(laps.best() / next.days().get(0).difference())
        .isCloseTo(Math.sqrt(.2868 / .4487), within(1e-3));
  }
}
