package blindlap.plan;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.fault.Unusable;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** What arithmetic says of the size of a rule, against the graph that is made of it. */
class RuleSizeTest {
  private static final List<String> TWO = List.of("ABBA", "BAAB", "ABAB", "BABA");

  private static Rule rule(
      int setups,
      int stints,
      int block,
      List<String> patterns,
      @Nullable Integer run,
      double least) {
    return new Rule(setups, stints, block, patterns, run, least == 0 ? null : least);
  }

  @Test
  void itIsTheNumberOfNodesWhereNothingSpansTheBlocks() {
    for (Rule rule :
        List.of(
            Rule.blocks(2, 24, 4),
            Rule.blocks(2, 24, 24),
            Rule.blocks(3, 18, 3),
            Rule.blocks(4, 24, 24),
            rule(2, 16, 4, TWO, null, 0))) {
      assertThat(RuleSize.nodesAtMost(rule))
          .as(rule.toString())
          .isEqualTo(rule.assignments().nodes());
    }
  }

  @Test
  void itIsNeverLessThanTheNodesThatAreMade() {
    Random random = new Random(20_261_127);
    int made = 0;
    for (int i = 0; i < 400; i++) {
      int setups = 2 + random.nextInt(3);
      int block = setups * (1 + random.nextInt(4));
      int stints = block * (1 + random.nextInt(3));
      List<String> patterns =
          setups == 2 && block == 4 && random.nextBoolean()
              ? TWO.subList(0, 1 + random.nextInt(4))
              : List.of();
      Integer run = random.nextInt(3) == 0 ? null : 1 + random.nextInt(6);
      double least = setups == 2 && random.nextInt(3) == 0 ? random.nextInt(100) / 100.0 : 0;
      Rule rule = rule(setups, stints, block, patterns, run, least);
      assertThat(RuleSize.nodesAtMost(rule))
          .as(rule.toString())
          .isGreaterThanOrEqualTo(rule.assignments().nodes());
      made++;
    }
    assertThat(made).isEqualTo(400);
  }

  @Test
  void itIsNearTheNodesOfTheRulesThatAreRefusedForTheirSize() {
    Rule long4 = rule(4, 24, 24, List.of(), 10, 0);
    assertThat(RuleSize.nodesAtMost(long4)).isBetween(28_753L, 40_000L);
    assertThat(RuleSize.nodesAtMost(rule(2, 24, 24, List.of(), 10, 0))).isBetween(1_779L, 2_500L);
  }

  @Test
  void aRuleWhoseBlocksDoNotGoUpHasNone() {
    List<Rule> odd = new ArrayList<>();
    odd.add(Rule.blocks(2, 10, 4));
    odd.add(Rule.blocks(2, 9, 3));
    odd.add(Rule.blocks(2, 10, 0));
    for (Rule rule : odd) {
      assertThat(RuleSize.nodesAtMost(rule)).isZero();
      org.assertj.core.api.Assertions.assertThatThrownBy(rule::planned)
          .isInstanceOf(Unusable.class);
    }
  }
}
