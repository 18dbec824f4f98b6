package blindlap.stats.compare;

import static blindlap.stats.Refusals.refused;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import blindlap.stats.Regression;
import blindlap.stats.SmallSets;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.Drift;
import blindlap.stats.order.Nuisance;
import blindlap.stats.order.Orders;
import blindlap.stats.order.Sampling;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class ManySetupsTest {
  private final UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(8L);

  static List<SmallSets.Plain> rules() {
    return List.of(
        SmallSets.THREE_9,
        SmallSets.THREE_6_WHOLE,
        SmallSets.FOUR_8,
        SmallSets.SHORT_8,
        new SmallSets.Plain(3, 9, 3, List.of("ABC", "BCA", "CAB", "ACB", "BAC", "CBA"), 1, 0));
  }

  private double[] noise(int n) {
    return random.doubles(n, 80, 90).toArray();
  }

  private static boolean[] all(int n) {
    boolean[] use = new boolean[n];
    Arrays.fill(use, true);
    return use;
  }

  private static ManySetups compare(
      Assignments set, String order, double[] y, boolean[] use, Drift drift) {
    return ManySetups.compare(
        set, Orders.parse(order), y, use, Nuisance.of(drift), Sampling.PREFERRED);
  }

  @ParameterizedTest
  @MethodSource("rules")
  void everyCountIsThatOfARegressionForEveryOrder(SmallSets.Plain rule) {
    List<String> orders = SmallSets.filtered(rule);
    for (Drift drift : List.of(Drift.NONE, Drift.LINE)) {
      String ridden = orders.get(random.nextInt(orders.size()));
      double[] y = noise(rule.stints());
      agrees(rule.assignments(), orders, ridden, y, all(rule.stints()), drift);
    }
  }

  @Test
  void aVoidStintLeavesTheOrdersAndCountsAsInARegressionWithoutIt() {
    List<String> orders = SmallSets.filtered(SmallSets.THREE_9);
    boolean[] use = all(9);
    use[3] = false;
    agrees(SmallSets.THREE_9.assignments(), orders, "BACABCCAB", noise(9), use, Drift.LINE);
  }

  @Test
  void aListThatIsNotClosedUnderRenamingIsWalkedAsItStands() {
    List<String> orders = List.of("ABCABC", "BCABCA", "CABCAB", "ACBACB", "ABCACB", "CABABC");
    Assignments set = Assignments.listed(orders);
    assertThat(set.closedUnderRenaming()).isFalse();
    agrees(set, set.list(), "ABCACB", noise(6), all(6), Drift.NONE);
  }

  private static void agrees(
      Assignments set, List<String> orders, String ridden, double[] y, boolean[] use, Drift drift) {
    int k = set.setups();
    ManySetups found = compare(set, ridden, y, use, drift);
    Regression observed = new Regression(ridden, k, y, use, drift);
    assertThat(found.f()).isCloseTo(observed.f(), within(1e-7 * observed.f()));
    List<Regression> all = new ArrayList<>();
    orders.forEach(order -> all.add(new Regression(order, k, y, use, drift)));
    double slack = 1 - 1e-6;
    assertThat(found.p())
        .isCloseTo(share(all, each -> each.f() >= observed.f() * slack), within(1e-12));
    for (ManySetups.Pair pair : found.pairs()) {
      double t = observed.t(pair.first(), pair.second());
      double limit = Math.abs(t) * slack;
      assertThat(pair.t()).isCloseTo(t, within(1e-7));
      assertThat(pair.estimate())
          .isCloseTo(
              observed.effects[pair.second()] - observed.effects[pair.first()], within(1e-8));
      assertThat(pair.p())
          .isCloseTo(
              share(all, each -> Math.abs(each.t(pair.first(), pair.second())) >= limit),
              within(1e-12));
      assertThat(pair.pAdjusted())
          .isCloseTo(share(all, each -> largest(each, k) >= limit), within(1e-12));
    }
  }

  private static double share(
      List<Regression> all, java.util.function.Predicate<Regression> condition) {
    return (double) all.stream().filter(condition).count() / all.size();
  }

  private static double largest(Regression one, int k) {
    double largest = 0;
    for (int a = 0; a < k; a++) {
      for (int b = a + 1; b < k; b++) {
        largest = Math.max(largest, Math.abs(one.t(a, b)));
      }
    }
    return largest;
  }

  @ParameterizedTest
  @MethodSource("twoSetupRules")
  void withTwoSetupsEveryPIsThatOfTheTwoSetupTest(SmallSets.Plain rule) {
    Assignments set = rule.assignments();
    for (int trial = 0; trial < 8; trial++) {
      String ridden = set.list().get(trial);
      double[] y = noise(rule.stints());
      ManySetups many = compare(set, ridden, y, all(rule.stints()), Drift.LINE);
      TwoSetups two =
          TwoSetups.compare(
              set, Orders.parse(ridden), y, all(rule.stints()), Drift.LINE, Sampling.PREFERRED);
      assertThat(many.p()).isEqualTo(two.curve().p(0));
      assertThat(many.pairs().get(0).p()).isEqualTo(two.curve().p(0));
      assertThat(many.pairs().get(0).pAdjusted()).isEqualTo(two.curve().p(0));
      assertThat(many.pairs().get(0).estimate()).isCloseTo(two.estimate(), within(1e-10));
      assertThat(many.noiseSd()).isCloseTo(two.noiseSd(), within(1e-10));
      assertThat(many.df()).isEqualTo(two.df());
    }
  }

  static List<SmallSets.Plain> twoSetupRules() {
    return SmallSets.twoSetups().stream().filter(rule -> rule.setups() == 2).toList();
  }

  @Test
  void renamingTheSetupsRenamesThePairsAndChangesNothingElse() {
    Assignments set = SmallSets.THREE_9.assignments();
    double[] y = noise(9);
    ManySetups one = compare(set, "ABCCABBAC", y, all(9), Drift.LINE);
    ManySetups other = compare(set, "CBAACBBCA", y, all(9), Drift.LINE);
    assertThat(other.p()).isEqualTo(one.p());
    ManySetups.Pair ab = one.pairs().get(0);
    ManySetups.Pair bc = other.pairs().get(2);
    assertThat(bc.estimate()).isCloseTo(-ab.estimate(), within(1e-10));
    assertThat(bc.pAdjusted()).isEqualTo(ab.pAdjusted());
    assertThat(bc.p()).isEqualTo(ab.p());
  }

  @Test
  void aConstantAStraightTrendAndAScaleChangeNoP() {
    Assignments set = SmallSets.THREE_9.assignments();
    double[] y = noise(9);
    double[] moved = new double[9];
    for (int i = 0; i < 9; i++) {
      moved[i] = 1000 - 7 * y[i] + 3 * i;
    }
    ManySetups one = compare(set, "ABCCABBAC", y, all(9), Drift.LINE);
    ManySetups other = compare(set, "ABCCABBAC", moved, all(9), Drift.LINE);
    assertThat(other.p()).isEqualTo(one.p());
    for (int i = 0; i < 3; i++) {
      assertThat(other.pairs().get(i).pAdjusted()).isEqualTo(one.pairs().get(i).pAdjusted());
      assertThat(other.pairs().get(i).t()).isCloseTo(-one.pairs().get(i).t(), within(1e-7));
    }
  }

  @Test
  void adjustedIsNeverBelowUnadjusted() {
    Assignments set = SmallSets.FOUR_8.assignments();
    for (int trial = 0; trial < 10; trial++) {
      for (ManySetups.Pair pair : compare(set, "ABCDDCBA", noise(8), all(8), Drift.NONE).pairs()) {
        assertThat(pair.pAdjusted()).isGreaterThanOrEqualTo(pair.p());
      }
    }
  }

  @Test
  void aSampleIsCloseToTheWholeSetAndHoldsTheObservedOrder() {
    Assignments set = SmallSets.Plain.blocks(3, 27, 3).assignments();
    double[] y = noise(27);
    for (int i = 0; i < 27; i++) {
      y[i] += "ABC".charAt(i % 3) == 'B' ? 100 : 0;
    }
    ManySetups found = compare(set, "ABC".repeat(9), y, all(27), Drift.LINE);
    assertThat(found.sampled()).isTrue();
    assertThat(found.count()).isEqualTo(10_077_696);
    // The observed order counts itself; of 9 999 draws hardly any splits off B in the same way.
    assertThat(found.p()).isBetween(1 / 10_000.0, 5 / 10_000.0);
    assertThat(found.pairs().get(0).pAdjusted()).isBetween(1 / 10_000.0, 5 / 10_000.0);
    assertThat(found.pairs().get(1).p()).isGreaterThan(0.2);
    assertThat(found.pError(0.5)).isCloseTo(0.5 / Math.sqrt(9_999), within(1e-12));
  }

  @Test
  void valuesThatDoNotVaryMakeEveryPOne() {
    double[] flat = new double[9];
    Arrays.fill(flat, 3.3);
    ManySetups found =
        compare(SmallSets.THREE_9.assignments(), "ABCCABBAC", flat, all(9), Drift.LINE);
    assertThat(found.noVariation()).isTrue();
    assertThat(found.p()).isEqualTo(1);
    assertThat(found.pairs()).allSatisfy(pair -> assertThat(pair.p()).isEqualTo(1));
    assertThat(found.f()).isNaN();
  }

  @Test
  void whatCannotBeComparedIsRefusedAtItsArgument() {
    Assignments set = SmallSets.THREE_9.assignments();
    boolean[] noC = new boolean[9];
    for (int i = 0; i < 9; i++) {
      noC[i] = "ABCCABBAC".charAt(i) != 'C';
    }
    refused("values", () -> compare(set, "ABCCABBAC", noise(9), noC, Drift.LINE));
    refused("values", () -> compare(set, "ABCCABBAC", noise(10), all(9), Drift.LINE));
    refused("order", () -> compare(set, "ABCCABBCC", noise(9), all(9), Drift.LINE));
    refused("values", () -> compare(set, "ABCCABBAC", noise(9), new boolean[9], Drift.LINE));
    Assignments large = SmallSets.Plain.blocks(3, 27, 3).assignments();
    Sampling exact = new Sampling(true, 999, 1);
    refused(
        "exact",
        () ->
            ManySetups.compare(
                large,
                Orders.parse("ABC".repeat(9)),
                noise(27),
                all(27),
                Nuisance.of(Drift.LINE),
                exact));
  }

  /** R 4.2.2: TukeyHSD of aov(y ~ setup); lm(y ~ stint + setup) with qtukey, good to some 1e-8. */
  @Test
  void intervalsOfPairsAreThoseOfTukeyAndKramer() {
    double[] y = {90.1, 91.4, 89.7, 90.9, 92.3, 90.2, 91.1, 92.8, 89.9, 90.6, 91.9, 0};
    boolean[] use = all(12);
    use[11] = false;
    Assignments set = Assignments.rule(3, 12).block(3).build();
    ManySetups none = compare(set, "ABCABCABCABC", y, use, Drift.NONE);
    double[][] expected = {
      {0.478864783061, 2.371135216939},
      {-1.763609501103, 0.280276167769},
      {-3.188609501103, -1.144723832231}
    };
    for (int i = 0; i < 3; i++) {
      ends(none, i, expected[i]);
    }
    ManySetups line = compare(set, "ABCABCABCABC", y, use, Drift.LINE);
    ends(line, 0, new double[] {0.426834867511, 2.309276243600});
    ends(line, 2, new double[] {-3.147541184244, -1.128847704645});
  }

  private static void ends(ManySetups found, int pair, double[] expected) {
    var interval = found.interval(found.pairs().get(pair), 0.95).orElseThrow();
    assertThat(interval.low()).isCloseTo(expected[0], within(1e-7));
    assertThat(interval.high()).isCloseTo(expected[1], within(1e-7));
  }
}
