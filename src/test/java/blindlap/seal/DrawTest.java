package blindlap.seal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import blindlap.plan.Rule;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.Orders;
import java.math.BigInteger;
import java.nio.charset.StandardCharsets;
import java.util.HashSet;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import org.junit.jupiter.api.Test;

class DrawTest {
  /**
   * A fair draw exceeds the bound once in a million sets of seeds. The seeds here are fixed, so the
   * test either always passes or always fails.
   */
  private static final double ODDS = 1e-6;

  private static final Rule PATTERNS_LIMITED = new Rule(2, 16, 4, List.of("ABBA", "BAAB"), 2, null);

  private static byte[] seed(int number) {
    return Fingerprint.digest(("seed " + number).getBytes(StandardCharsets.UTF_8));
  }

  @Test
  void wordsAreTheFirstEightBytesOfTheHashOfSeedAndNumber() {
    // Reference: Python hashlib, int.from_bytes(sha256(seed + i.to_bytes(8, "big")).digest()[:8]).
    OrderStream stream = new OrderStream(HexFormat.of().parseHex(FixedBytes.counting(0)));
    assertThat(List.of(stream.word(), stream.word(), stream.word()))
        .containsExactly(
            new BigInteger("12238220826280364221"),
            new BigInteger("6945047847015946120"),
            new BigInteger("8315228738316000402"));
  }

  @Test
  void everyOrderOfEightStintsInBlocksOfFourIsEquallyLikely() {
    assertEquallyLikely(Rule.blocks(2, 8, 4), 36);
  }

  @Test
  void everyOrderOfTheEightStintSetIsEquallyLikely() {
    assertEquallyLikely(Golden.EIGHT_STINT_SET, 50);
  }

  @Test
  void everyOrderOfThreeSetupsInSixStintsIsEquallyLikely() {
    assertEquallyLikely(Rule.blocks(3, 6, 3), 36);
  }

  private static void assertEquallyLikely(Rule rule, int orders) {
    Map<String, Integer> seen = new TreeMap<>();
    int expected = 500;
    for (int i = 0; i < expected * orders; i++) {
      seen.merge(Draw.order(rule, seed(i)), 1, Integer::sum);
    }
    assertThat(seen.keySet()).containsExactlyElementsOf(rule.assignments().list());
    assertThat(seen).hasSize(orders);
    double chiSquare =
        seen.values().stream().mapToDouble(n -> (n - expected) * (n - expected)).sum() / expected;
    double bound = ChiSquaredDistribution.of(orders - 1).inverseSurvivalProbability(ODDS);
    assertThat(chiSquare).isLessThan(bound);
  }

  @Test
  void aPlainRemainderWouldFavourSmallNumbersAndTheStreamDoesNot() {
    assertThirdsAreEquallyLikely(BigInteger.ONE.shiftLeft(62).multiply(BigInteger.valueOf(3)));
  }

  @Test
  void boundsBeyondOneWordAreJustAsFair() {
    assertThirdsAreEquallyLikely(BigInteger.ONE.shiftLeft(126).multiply(BigInteger.valueOf(3)));
  }

  /** With v mod 3·2^62 alone the lowest third would come up half of the time. */
  private static void assertThirdsAreEquallyLikely(BigInteger bound) {
    OrderStream stream = new OrderStream(seed(1));
    BigInteger third = bound.divide(BigInteger.valueOf(3));
    int draws = 9000;
    int[] seen = new int[3];
    for (int i = 0; i < draws; i++) {
      BigInteger value = stream.below(bound);
      assertThat(value).isBetween(BigInteger.ZERO, bound.subtract(BigInteger.ONE));
      seen[value.divide(third).intValueExact()]++;
    }
    double chiSquare = 0;
    for (int n : seen) {
      chiSquare += Math.pow(n - draws / 3.0, 2) / (draws / 3.0);
    }
    assertThat(chiSquare).isLessThan(ChiSquaredDistribution.of(2).inverseSurvivalProbability(ODDS));
  }

  @Test
  void aBoundOfOneTakesAWordAndGivesZero() {
    OrderStream stream = new OrderStream(seed(2));
    OrderStream twin = new OrderStream(seed(2));
    assertThat(stream.below(BigInteger.ONE)).isZero();
    twin.word();
    assertThat(stream.word()).isEqualTo(twin.word());
  }

  @Test
  void drawnOrdersAreAlwaysAdmissible() {
    List<Rule> rules =
        List.of(
            Golden.BLOCKS_OF_FOUR,
            Golden.EIGHT_STINT_SET,
            PATTERNS_LIMITED,
            Rule.blocks(2, 60, 60),
            Rule.blocks(3, 60, 60),
            new Rule(2, 24, 24, List.of(), 2, null),
            new Rule(4, 16, 8, List.of(), 2, null));
    for (Rule rule : rules) {
      Assignments set = rule.assignments();
      Set<String> distinct = new HashSet<>();
      for (int i = 0; i < 20; i++) {
        String order = Draw.order(rule, seed(i));
        assertThat(set.contains(Orders.parse(order))).as("%s of %s", order, rule).isTrue();
        distinct.add(order);
      }
      assertThat(distinct).as("%s", rule).hasSizeGreaterThan(1);
    }
  }

  @Test
  void aRuleWithoutAnyOrderIsRefusedInOneSentence() {
    Rule none = new Rule(2, 8, 4, List.of("AABB", "BBAA"), 1, null);
    assertThatThrownBy(() -> Draw.order(none, seed(1)))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("admits no order")
        .hasMessageContaining("max_run");
  }

  @Test
  void aRuleThatAlmostNoShuffleMeetsIsRefusedBeforeTrying() {
    Rule alternating = new Rule(2, 60, 60, List.of(), 1, null);
    assertThatThrownBy(() -> Draw.order(alternating, seed(1)))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("admits only 2 of 118264581564861424 shuffles")
        .hasMessageContaining("patterns");
  }

  @Test
  void aSeedOfAnotherLengthIsRefused() {
    assertThatThrownBy(() -> Draw.order(Golden.BLOCKS_OF_FOUR, new byte[31]))
        .hasMessage("a seed has 32 bytes, not 31");
  }
}
