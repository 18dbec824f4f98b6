package blindlap.stats.power;

import static blindlap.stats.Refusals.refused;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import blindlap.stats.SmallSets;
import blindlap.stats.compare.CutShort;
import blindlap.stats.compare.Residuals;
import blindlap.stats.compare.SetupFit;
import blindlap.stats.distribution.Interval;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.Drift;
import blindlap.stats.order.Orders;
import blindlap.stats.order.Sampling;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicInteger;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;

/** Detectable difference by formula, and days cut short. */
class PlanningTest {
  private static Detectable blocks(int stints, int block) {
    return Detectable.of(
        SmallSets.Plain.blocks(2, stints, block).assignments(), Drift.LINE, Sampling.PREFERRED);
  }

  @Test
  void theFormulaGivesTheDifferencesOfTheDesignSection() {
    // docs/method.md#figures-of-the-formula
    assertThat(onResiduals(blocks(12, 4))).isCloseTo(1.86, within(0.005));
    assertThat(onResiduals(blocks(16, 4))).isCloseTo(1.52, within(0.005));
    assertThat(onResiduals(blocks(20, 4))).isCloseTo(1.33, within(0.005));
    assertThat(onResiduals(blocks(24, 4))).isCloseTo(1.20, within(0.005));
    assertThat(onResiduals(blocks(12, 2))).isCloseTo(2.00, within(0.005));
    assertThat(onResiduals(blocks(8, 8))).isCloseTo(3.23, within(0.005));
    Assignments abba = new SmallSets.Plain(2, 24, 4, List.of("ABBA", "BAAB"), 0, 0).assignments();
    assertThat(onResiduals(Detectable.of(abba, Drift.LINE, Sampling.PREFERRED)))
        .isCloseTo(1.30, within(0.005));
  }

  private static double onResiduals(Detectable day) {
    return day.onResidualDf().difference(1, 0.8);
  }

  @Test
  void theDifferenceScalesWithTheNoiseAndGivesBackItsPower() {
    Detectable day = blocks(16, 4);
    assertThat(day.difference(0.62, 0.9)).isCloseTo(0.62 * day.difference(1, 0.9), within(1e-10));
    assertThat(day.power(day.difference(0.62, 0.9), 0.62)).isCloseTo(0.9, within(1e-10));
    assertThat(day.power(0, 1)).isCloseTo(day.attainableLevel(), within(1e-12));
    assertThat(day.difference(new Interval(0.5, 2), 0.8).high())
        .isCloseTo(4 * day.difference(0.5, 0.8), within(1e-9));
  }

  @Test
  void theEfficiencyUnderACurveIsThatOfGoingThroughAllOrders() {
    SmallSets.Plain rule = SmallSets.BLOCK4_12;
    boolean[] all = new boolean[12];
    Arrays.fill(all, true);
    Residuals residuals = new Residuals(all, Drift.CURVE);
    double sum = 0;
    List<String> orders = SmallSets.filtered(rule);
    for (String order : orders) {
      double[] z = SetupFit.signs(Orders.parse(order));
      sum += 3 / Residuals.dot(z, residuals.apply(z));
    }
    assertThat(Detectable.of(rule.assignments(), Drift.CURVE, Sampling.PREFERRED).efficiency())
        .isCloseTo(orders.size() / sum, within(1e-12));
    assertThat(Detectable.of(rule.assignments(), Drift.NONE, Sampling.PREFERRED).efficiency())
        .isEqualTo(1);
  }

  @Test
  void aSetWithoutAttainableLevelDetectsNothing() {
    Detectable abba =
        Detectable.of(
            new SmallSets.Plain(2, 16, 4, List.of("ABBA", "BAAB"), 0, 0).assignments(),
            Drift.LINE,
            Sampling.PREFERRED);
    assertThat(abba.attainableLevel()).isZero();
    assertThat(abba.difference(1, 0.8)).isNaN();
    assertThat(abba.power(5, 1)).isZero();
  }

  @Test
  void impossibleWishesAreRefused() {
    Detectable day = blocks(16, 4);
    refused("sd", () -> day.difference(0, 0.8));
    refused("power", () -> day.difference(1, 1));
    refused("power", () -> day.difference(1, 0.01));
    refused(
        "rule",
        () -> Detectable.of(SmallSets.THREE_9.assignments(), Drift.LINE, Sampling.PREFERRED));
    refused(
        "rule",
        () ->
            Detectable.of(
                SmallSets.Plain.blocks(2, 2, 2).assignments(), Drift.LINE, Sampling.PREFERRED));
  }

  @Test
  void blocksOfFourCanReachFivePercentFromTheNinthStintOn() {
    // docs/method.md#days-cut-short
    Assignments day = SmallSets.Plain.blocks(2, 16, 4).assignments();
    for (int stint = 0; stint <= 8; stint++) {
      assertThat(CutShort.after(day, stint, Drift.LINE).share()).isZero();
      assertThat(CutShort.after(day, stint, Drift.LINE).smallestP()).isGreaterThan(0.05);
    }
    assertThat(CutShort.after(day, 9, Drift.LINE).smallestP()).isCloseTo(0.028, within(0.0005));
    assertThat(CutShort.after(day, 10, Drift.LINE).smallestP()).isCloseTo(0.0093, within(0.00005));
    assertThat(CutShort.after(day, 9, Drift.LINE).share()).isEqualTo(1);
    assertThat(CutShort.after(day, 16, Drift.LINE).smallestP()).isEqualTo(2 / 1296.0);
  }

  @Test
  void twoVoidsLeaveFiftyEightPercentOfTheEightStintSetAble() {
    // docs/method.md#days-cut-short
    Assignments day = SmallSets.SHORT_8.assignments();
    assertThat(CutShort.losing(day, 2, Drift.LINE).share()).isCloseTo(0.58, within(0.005));
    assertThat(CutShort.losing(day, 0, Drift.LINE).share()).isEqualTo(1);
  }

  @Test
  void theShareLeftIsThatOfGoingThroughAllOrders() {
    UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(14L);
    for (SmallSets.Plain rule : SmallSets.all()) {
      List<String> orders = SmallSets.filtered(rule);
      int group = rule.setups() == 2 ? 2 : rule.setups() == 3 ? 6 : 24;
      for (int trial = 0; trial < 8; trial++) {
        boolean[] left = new boolean[rule.stints()];
        Arrays.fill(left, true);
        for (int lost = 0; lost < trial % 4; lost++) {
          left[random.nextInt(rule.stints())] = false;
        }
        Map<String, Integer> classes = new HashMap<>();
        orders.forEach(order -> classes.merge(masked(order, left), 1, Integer::sum));
        double smallest = 1;
        int able = 0;
        for (int size : classes.values()) {
          double p = Math.min(1, (double) group * size / orders.size());
          smallest = Math.min(smallest, p);
          able += p <= 0.05 ? size : 0;
        }
        CutShort found = CutShort.of(rule.assignments(), left, Drift.NONE);
        assertThat(found.smallestP()).isCloseTo(smallest, within(1e-12));
        assertThat(found.share()).isCloseTo(able / (double) orders.size(), within(1e-12));
      }
    }
  }

  @Test
  void lossesOfAnyTwoStintsAreThoseOfGoingThroughEveryChoice() {
    for (SmallSets.Plain rule : SmallSets.all()) {
      Assignments set = rule.assignments();
      double smallest = 1;
      double largest = 0;
      double share = 0;
      int choices = 0;
      for (int first = 0; first < set.stints(); first++) {
        for (int second = first + 1; second < set.stints(); second++) {
          boolean[] left = new boolean[set.stints()];
          Arrays.fill(left, true);
          left[first] = false;
          left[second] = false;
          CutShort one = CutShort.of(set, left, Drift.LINE);
          smallest = Math.min(smallest, one.smallestP());
          largest = Math.max(largest, one.largestP());
          share += one.share();
          choices++;
        }
      }
      CutShort all = CutShort.losing(set, 2, Drift.LINE);
      assertThat(all.smallestP()).as("%s", rule).isEqualTo(smallest);
      assertThat(all.largestP()).isEqualTo(largest);
      assertThat(all.share()).isCloseTo(share / choices, within(1e-12));
    }
  }

  @Test
  void lossesThatNobodyWaitsForAreDroppedAfterAStint() {
    AtomicInteger asked = new AtomicInteger();
    Assignments day = SmallSets.Plain.blocks(2, 16, 4).assignments();
    assertThatThrownBy(() -> CutShort.losing(day, 2, Drift.LINE, () -> asked.incrementAndGet() > 3))
        .isInstanceOf(CancellationException.class);
    assertThat(asked).hasValue(4);
  }

  private static String masked(String order, boolean[] left) {
    StringBuilder kept = new StringBuilder();
    for (int i = 0; i < left.length; i++) {
      kept.append(left[i] ? order.charAt(i) : '.');
    }
    return kept.toString();
  }

  @Test
  void aDayOfWhichTooLittleIsLeftShowsNothing() {
    Assignments day = SmallSets.BLOCK4_12.assignments();
    assertThat(CutShort.after(day, 3, Drift.LINE)).isEqualTo(new CutShort(1, 0, 1));
    refused("stints", () -> CutShort.after(day, 13, Drift.LINE));
    refused("lost", () -> CutShort.losing(day, 4, Drift.LINE));
  }

  /** Every choice of the stints lost by itself, for levels whose p counts orders in twos. */
  @Test
  void ofATrendWhatIsLeftIsTheAverageOverAllChoicesOfWhatIsLost() {
    Assignments day = Assignments.rule(3, 9).block(3).build();
    double share = 0;
    double smallest = 1;
    double largest = 0;
    int choices = 0;
    for (int i = 0; i < 9; i++) {
      for (int j = i + 1; j < 9; j++) {
        boolean[] left = new boolean[9];
        Arrays.fill(left, true);
        left[i] = left[j] = false;
        CutShort each = CutShort.ofTrend(day, left, Drift.LINE);
        share += each.share();
        smallest = Math.min(smallest, each.smallestP());
        largest = Math.max(largest, each.largestP());
        choices++;
      }
    }
    CutShort all = CutShort.losingOfTrend(day, 2, Drift.LINE, () -> false);
    assertThat(all.share()).isCloseTo(share / choices, within(1e-12));
    assertThat(all.smallestP()).isCloseTo(smallest, within(1e-12));
    assertThat(all.largestP()).isCloseTo(largest, within(1e-12));
    assertThat(all.largestP()).as("both of one block").isCloseTo(4 / 216.0, within(1e-12));
    assertThat(CutShort.losing(day, 2, Drift.LINE).largestP()).isCloseTo(12 / 216.0, within(1e-12));
    boolean[] six = {true, true, true, true, true, true, false, false, false};
    assertThat(CutShort.afterOfTrend(day, 6, Drift.LINE))
        .isEqualTo(CutShort.ofTrend(day, six, Drift.LINE));
  }
}
