package blindlap.stats.order;

import static blindlap.stats.Refusals.refused;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import blindlap.stats.SmallSets;
import blindlap.stats.compare.OrderSet;
import blindlap.stats.compare.TrendEfficiency;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class AssignmentsTest {
  static List<SmallSets.Plain> rules() {
    return SmallSets.all();
  }

  @ParameterizedTest
  @MethodSource("rules")
  void theGraphHoldsExactlyTheSequencesThatSatisfyTheRule(SmallSets.Plain rule) {
    List<String> expected = SmallSets.filtered(rule);
    Assignments set = rule.assignments();
    assertThat(set.count()).isEqualTo(BigInteger.valueOf(expected.size()));
    assertThat(set.list()).isEqualTo(expected);
    for (int i = 0; i < expected.size(); i++) {
      assertThat(Orders.letters(set.order(BigInteger.valueOf(i)))).isEqualTo(expected.get(i));
    }
  }

  @ParameterizedTest
  @MethodSource("rules")
  void membershipIsTrueOfTheListedOrdersAndOfNoOther(SmallSets.Plain rule) {
    Set<String> expected = new HashSet<>(SmallSets.filtered(rule));
    Assignments set = rule.assignments();
    Assignments everything = Assignments.rule(rule.setups(), rule.stints()).build();
    everything.forEach(
        order ->
            assertThat(set.contains(order)).isEqualTo(expected.contains(Orders.letters(order))));
    assertThat(set.contains(new int[rule.stints() + 1])).isFalse();
    assertThat(set.contains(new int[rule.stints()])).isFalse();
  }

  @Test
  void theCountsAreThoseOfTheDesignTable() {
    // docs/method.md#figures-of-rules
    assertThat(SmallSets.SHORT_8.assignments().count()).isEqualTo(50);
    assertThat(SmallSets.Plain.blocks(2, 16, 4).assignments().count()).isEqualTo(1296);
    assertThat(SmallSets.Plain.blocks(2, 24, 4).assignments().count()).isEqualTo(46_656);
    assertThat(SmallSets.Plain.blocks(2, 24, 24).assignments().count()).isEqualTo(2_704_156);
    assertThat(new SmallSets.Plain(2, 24, 24, List.of(), 2, 0).assignments().count())
        .isEqualTo(52_404);
  }

  @Test
  void sixtyStintsShuffledWholeAreCountedExactly() {
    // 60!/(30! 30!), central binomial coefficient, OEIS A000984
    assertThat(SmallSets.Plain.blocks(2, 60, 60).assignments().count())
        .isEqualTo(new BigInteger("118264581564861424"));
    // 60!/(20!)^3 is beyond 64 bits
    BigInteger three = SmallSets.Plain.blocks(3, 60, 60).assignments().count();
    assertThat(three).isEqualTo(factorial(60).divide(factorial(20).pow(3)));
  }

  private static BigInteger factorial(int n) {
    BigInteger product = BigInteger.ONE;
    for (int i = 2; i <= n; i++) {
      product = product.multiply(BigInteger.valueOf(i));
    }
    return product;
  }

  @Test
  void drawsAreUniformOverTheSet() {
    Assignments set = SmallSets.SHORT_8.assignments();
    UniformRandomProvider source = RandomSource.XO_RO_SHI_RO_128_PP.create(11L);
    Map<String, Integer> often = new HashMap<>();
    int draws = 50_000;
    for (int i = 0; i < draws; i++) {
      often.merge(Orders.letters(set.random(source)), 1, Integer::sum);
    }
    assertThat(often.keySet()).containsExactlyInAnyOrderElementsOf(set.list());
    double chi = 0;
    for (int count : often.values()) {
      chi += (count - 1000.0) * (count - 1000.0) / 1000;
    }
    // 0.9999 quantile of chi-squared on 49 df is about 94.
    assertThat(chi).isLessThan(94);
  }

  @Test
  void drawsFromSetsBeyondSixtyFourBitsAreMembersAndSpread() {
    Assignments set = SmallSets.Plain.blocks(3, 60, 60).assignments();
    UniformRandomProvider source = RandomSource.XO_RO_SHI_RO_128_PP.create(12L);
    int first = 0;
    for (int i = 0; i < 3000; i++) {
      int[] order = set.random(source);
      assertThat(set.contains(order)).isTrue();
      first += order[0] == 0 ? 1 : 0;
    }
    assertThat(first / 3000.0).isCloseTo(1 / 3.0, within(0.04));
  }

  @Test
  void aListIsClosedUnderRenamingOnlyIfItHoldsEveryImage() {
    assertThat(Assignments.listed(List.of("ABBA", "BAAB")).closedUnderRenaming()).isTrue();
    assertThat(Assignments.listed(List.of("ABBA", "BAAB", "ABAB")).closedUnderRenaming()).isFalse();
    List<String> six = new ArrayList<>(List.of("ABC", "ACB", "BAC", "BCA", "CAB", "CBA"));
    assertThat(Assignments.listed(six).closedUnderRenaming()).isTrue();
    assertThat(Assignments.listed(six.subList(0, 5)).closedUnderRenaming()).isFalse();
    for (SmallSets.Plain rule : SmallSets.all()) {
      assertThat(rule.assignments().closedUnderRenaming()).isTrue();
    }
  }

  @Test
  void anOrderListedTwiceCountsOnce() {
    assertThat(Assignments.listed(List.of("ABBA", "BAAB", "ABBA")).count()).isEqualTo(2);
    assertThat(Assignments.repeated(List.of("AAB", "ABA"), 2).list())
        .containsExactly("AABAAB", "AABABA", "ABAAAB", "ABAABA");
    assertThat(Assignments.repeated(List.of("AAB", "BBA"), 100).count())
        .isEqualTo(java.math.BigInteger.TWO.pow(100));
    refused("times", () -> Assignments.repeated(List.of("AB"), 0));
  }

  @Test
  void aRuleThatContradictsItselfIsRefusedAtItsField() {
    refused("block", () -> Assignments.rule(2, 10).block(4).build());
    refused("block", () -> Assignments.rule(3, 8).block(4).build());
    refused("patterns[1]", () -> pattern("ABBA", "ABAA"));
    refused("patterns[0]", () -> pattern("ABC", "BAAB"));
    refused("setups", () -> Assignments.rule(1, 4).build());
    refused("stints", () -> Assignments.rule(2, 0).build());
    refused("min_trend_efficiency", () -> Assignments.rule(2, 8).minTrendEfficiency(1.5).build());
    refused("min_trend_efficiency", () -> Assignments.rule(3, 9).minTrendEfficiency(0.5).build());
    refused("orders", () -> Assignments.listed(List.of()));
    refused("orders[1]", () -> Assignments.listed(List.of("ABBA", "BAA")));
    refused("orders[1]", () -> Assignments.listed(List.of("ABBA", "BaAB")));
  }

  private static void pattern(String... patterns) {
    Assignments.rule(2, 8).block(4).patterns(List.of(patterns)).build();
  }

  @Test
  void theSummaryOfASetAgreesWithGoingThroughItsOrders() {
    for (SmallSets.Plain rule : SmallSets.twoSetups()) {
      List<String> orders = SmallSets.filtered(rule);
      OrderSet summary = OrderSet.of(rule.assignments());
      double swaps = 0;
      double inverse = 0;
      for (String order : orders) {
        for (int i = 1; i < order.length(); i++) {
          swaps += order.charAt(i) == order.charAt(i - 1) ? 0 : 1;
        }
        inverse += 1 / SmallSets.efficiency(order);
      }
      assertThat(summary.meanSwaps()).isCloseTo(swaps / orders.size(), within(1e-12));
      assertThat(summary.smallestP()).isEqualTo(2.0 / orders.size());
      assertThat(summary.trendEfficiency()).isCloseTo(orders.size() / inverse, within(1e-12));
      assertThat(TrendEfficiency.walked(rule.assignments(), all(rule), Drift.LINE, whole()))
          .isCloseTo(orders.size() / inverse, within(1e-12));
    }
  }

  private static boolean[] all(SmallSets.Plain rule) {
    boolean[] all = new boolean[rule.stints()];
    java.util.Arrays.fill(all, true);
    return all;
  }

  private static Sampling whole() {
    return Sampling.PREFERRED;
  }
}
