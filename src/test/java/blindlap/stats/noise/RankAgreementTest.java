package blindlap.stats.noise;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class RankAgreementTest {
  private static final double[][] RANKS = {{1, 2, 3, 4}, {2, 1, 3, 4}, {1, 3, 2, 4}};

  @Test
  void withoutTiesItIsTheTextbookFormula() {
    double squares = 4 * 4 + 6 * 6 + 8 * 8 + 12 * 12;
    double expected = 12 * squares / (3 * 4 * 5) - 3 * 3 * 5;
    RankAgreement found = RankAgreement.of(RANKS);
    assertThat(found.chiSquared()).isCloseTo(expected, within(1e-13));
    assertThat(found.kendallW()).isCloseTo(expected / 9, within(1e-14));
    assertThat(found.df()).isEqualTo(3);
  }

  @Test
  void ridersWhoRankAlikeGiveOne() {
    double[][] same = {{1, 2, 3}, {10, 20, 30}, {-3, 0, 1}};
    assertThat(RankAgreement.of(same).kendallW()).isCloseTo(1, within(1e-15));
  }

  @Test
  void onlyTheOrderWithinARowCounts() {
    double[][] stretched = {{1, 20, 300, 4000}, {-2, -10, 0.3, 4}, {1, 1.003, 1.002, 4}};
    assertThat(RankAgreement.of(stretched)).isEqualTo(RankAgreement.of(RANKS));
  }

  @Test
  void fullTiesAreRefused() {
    assertThatThrownBy(() -> RankAgreement.of(new double[][] {{1, 1}, {2, 2}}))
        .hasMessageStartingWith("table: ties all columns in every row");
    assertThatThrownBy(() -> RankAgreement.of(new double[][] {{1, 1}}))
        .hasMessageStartingWith("table: has 1 rows");
  }
}
