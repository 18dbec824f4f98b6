package blindlap.stats.compare;

import static blindlap.stats.Refusals.refused;
import static org.assertj.core.api.Assertions.assertThat;

import blindlap.stats.SmallSets;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.Drift;
import blindlap.stats.order.Orders;
import blindlap.stats.order.Sampling;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** A watched harm: one p both ways, shown by the adjusted p, ruled out for the measure alone. */
class HarmTestTest {
  private static final HarmTest.Direction MORE = HarmTest.Direction.MORE_IS_HARM;
  private static final HarmTest.Direction LESS = HarmTest.Direction.LESS_IS_HARM;
  private static final HarmTest.Finding SHOWN = HarmTest.Finding.SHOWN;
  private static final HarmTest.Finding OUT = HarmTest.Finding.RULED_OUT;
  private static final HarmTest.Finding OPEN = HarmTest.Finding.NOT_SETTLED;

  private static boolean[] all(int n) {
    boolean[] use = new boolean[n];
    Arrays.fill(use, true);
    return use;
  }

  private static ConfidenceCurve shifted(double effect, double spread) {
    double[] y = {0.3, -0.2, 0.1, -0.4, 0.2, 0.5, -0.1, 0, -0.3, 0.4, 0.1, -0.2};
    String ridden = "ABBABABAABAB";
    for (int i = 0; i < 12; i++) {
      y[i] = y[i] * spread + (ridden.charAt(i) == 'B' ? effect : 0);
    }
    return TwoSetups.compare(
            SmallSets.BLOCK4_12.assignments(),
            Orders.parse(ridden),
            y,
            all(12),
            Drift.LINE,
            Sampling.PREFERRED)
        .curve();
  }

  private static void found(
      ConfidenceCurve curve,
      HarmTest.Direction direction,
      HarmTest.Finding bAgainstA,
      HarmTest.Finding aAgainstB) {
    HarmTest test = HarmTest.of(curve, -1, 1, direction, HarmTest.p(curve, -1, 1), 6);
    assertThat(test.bAgainstA()).isEqualTo(bAgainstA);
    assertThat(test.aAgainstB()).isEqualTo(aAgainstB);
  }

  @Test
  void aHarmIsShownRuledOutOrOpenAndSaidBothWaysRound() {
    found(shifted(3, 1), MORE, SHOWN, OUT);
    found(shifted(3, 1), LESS, OUT, SHOWN);
    found(shifted(-3, 1), MORE, OUT, SHOWN);
    found(shifted(0, 1), MORE, OUT, OUT);
    found(shifted(1, 1), MORE, OPEN, OUT);
    found(shifted(0, 20), LESS, OPEN, OPEN);
    refused("worthwhile", () -> HarmTest.p(shifted(0, 1), 0, 0));
  }

  @Test
  void onePLooksBothWaysAtTheDeclaredHarm() {
    ConfidenceCurve curve = shifted(3, 1);
    assertThat(HarmTest.p(curve, -1, 1)).isEqualTo(2 * curve.pGreater(1));
    ConfidenceCurve other = shifted(-3, 1);
    assertThat(HarmTest.p(other, -1, 1)).isEqualTo(2 * other.pLess(-1));
    assertThat(HarmTest.p(shifted(0, 1), -1, 1)).isEqualTo(1);
  }

  @Test
  void whatIsShownAloneNeedNotBeAmongManyWatchedMeasures() {
    ConfidenceCurve curve = shifted(3, 1);
    double alone = HarmTest.p(curve, -1, 1);
    double[] among = new double[8];
    Arrays.fill(among, 1);
    among[0] = alone;
    double adjusted = PValueAdjustment.HOLM.adjust(among)[0];
    assertThat(alone).isLessThanOrEqualTo(0.05);
    assertThat(adjusted).isGreaterThan(0.05);
    HarmTest test = HarmTest.of(curve, -1, 1, MORE, adjusted, 6);
    assertThat(test.bAgainstA()).isEqualTo(OPEN);
    assertThat(test.aAgainstB()).isEqualTo(OUT);
    assertThat(test.shown()).isFalse();
  }

  @Test
  void nothingIsRuledOutWithFewerThanThreeStintsOnASetup() {
    ConfidenceCurve curve = shifted(0, 1);
    assertThat(HarmTest.of(curve, -1, 1, MORE, 1, HarmTest.LEAST_STINTS).ruledOut()).isTrue();
    HarmTest few = HarmTest.of(curve, -1, 1, MORE, 1, HarmTest.LEAST_STINTS - 1);
    assertThat(few.bAgainstA()).isEqualTo(OPEN);
    assertThat(few.aAgainstB()).isEqualTo(OPEN);
  }

  /** docs/method.md#least-stints: of n stints on each setup, the first n whose lot reaches .05. */
  @Test
  void threeStintsOnEachSetupAreTheFirstWithWhichTheLotCanReachFivePerCent() {
    for (int n = 2; n <= 4; n++) {
      Assignments set = Assignments.rule(2, 2 * n).block(2 * n).build();
      double[] y = new double[2 * n];
      for (int i = 0; i < y.length; i++) {
        y[i] = i < n ? -10 + 0.1 * i * i : 10 + 0.1 * i;
      }
      int[] order = Orders.parse("A".repeat(n) + "B".repeat(n));
      ConfidenceCurve curve =
          TwoSetups.compare(set, order, y, all(2 * n), Drift.NONE, Sampling.PREFERRED).curve();
      assertThat(curve.fallsShortOf(1000, 0.05)).isEqualTo(n >= HarmTest.LEAST_STINTS);
    }
  }
}
