package blindlap.stats.order;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class ForeseenTest {
  /** Every stint of every order, held against all orders that begin alike. */
  private static double byHand(Assignments set) {
    List<String> orders = set.list();
    int foreseen = 0;
    for (String order : orders) {
      for (int stint = 0; stint < order.length(); stint++) {
        String before = order.substring(0, stint);
        int at = stint;
        long ways =
            orders.stream()
                .filter(other -> other.startsWith(before))
                .map(other -> other.charAt(at))
                .distinct()
                .count();
        foreseen += ways == 1 ? 1 : 0;
      }
    }
    return (double) foreseen / orders.size();
  }

  @Test
  void whatOrdersGiveAwayAgreesWithEveryOrderOneByOne() {
    List<Assignments> sets =
        List.of(
            Assignments.rule(2, 8).block(4).build(),
            Assignments.rule(2, 8).block(2).build(),
            Assignments.rule(2, 8).block(8).build(),
            Assignments.rule(2, 8).block(8).maxRun(2).build(),
            Assignments.rule(2, 8).block(8).minTrendEfficiency(0.8).build(),
            Assignments.rule(3, 6).block(3).build(),
            Assignments.rule(2, 8).block(4).patterns(List.of("ABBA", "BAAB")).build());
    for (Assignments set : sets) {
      assertThat(Foreseen.stints(set)).as(set.toString()).isCloseTo(byHand(set), within(1e-12));
    }
  }

  @Test
  void blocksOfFourGiveAwayAThirdPairsAHalfAndThereAndBackThreeQuarters() {
    assertThat(Foreseen.stints(Assignments.rule(2, 12).block(4).build()))
        .isCloseTo(4, within(1e-9));
    assertThat(Foreseen.stints(Assignments.rule(2, 12).block(2).build()))
        .isCloseTo(6, within(1e-9));
    assertThat(
            Foreseen.stints(
                Assignments.rule(2, 12).block(4).patterns(List.of("ABBA", "BAAB")).build()))
        .isCloseTo(9, within(1e-9));
  }

  @Test
  void randomListsOfOrdersAgreeToo() {
    Random random = new Random(20261127);
    for (int trial = 0; trial < 20; trial++) {
      List<String> listed =
          random
              .ints(5, 0, 64)
              .mapToObj(i -> String.format("%6s", Integer.toBinaryString(i)))
              .map(bits -> bits.replace(' ', 'A').replace('0', 'A').replace('1', 'B'))
              .distinct()
              .toList();
      Assignments set = Assignments.listed(listed);
      assertThat(Foreseen.stints(set)).isCloseTo(byHand(set), within(1e-12));
    }
  }
}
