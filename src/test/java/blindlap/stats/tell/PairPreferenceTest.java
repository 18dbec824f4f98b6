package blindlap.stats.tell;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import blindlap.fault.StatsException;
import org.junit.jupiter.api.Test;

class PairPreferenceTest {
  private static final double[][] WINS = {{0, 7, 3, 9}, {2, 0, 5, 1}, {6, 4, 0, 8}, {1, 3, 0, 0}};

  @Test
  void twoItemsGiveTheLogOddsAndItsStandardError() {
    PairPreference found = PairPreference.of(new double[][] {{0, 5}, {15, 0}}, 0);
    assertThat(found.scores()).containsExactly(new double[] {0, Math.log(3)}, within(1e-13));
    assertThat(found.standardErrors())
        .containsExactly(new double[] {0, Math.sqrt(1 / 5.0 + 1 / 15.0)}, within(1e-13));
  }

  @Test
  void lopsidedWinsSettleToo() {
    PairPreference found = PairPreference.of(new double[][] {{0, 1e9}, {1, 0}}, 1);
    assertThat(found.scores()[0]).isCloseTo(Math.log(1e9), within(1e-13));
  }

  @Test
  void atTheMaximumEveryItemWinsAsOftenAsExpected() {
    double[] scores = PairPreference.of(WINS, 1).scores();
    for (int i = 0; i < 4; i++) {
      double won = 0;
      double expected = 0;
      for (int j = 0; j < 4; j++) {
        if (i != j) {
          won += WINS[i][j];
          expected += (WINS[i][j] + WINS[j][i]) / (1 + Math.exp(scores[j] - scores[i]));
        }
      }
      assertThat(won).isCloseTo(expected, within(1e-11));
    }
  }

  @Test
  void anotherReferenceShiftsAllScoresAndTheDiagonalIsIgnored() {
    double[] first = PairPreference.of(WINS, 0).scores();
    double[][] withDiagonal = {{99, 7, 3, 9}, {2, 5, 5, 1}, {6, 4, 1, 8}, {1, 3, 0, 7}};
    double[] third = PairPreference.of(withDiagonal, 2).scores();
    for (int i = 0; i < 4; i++) {
      assertThat(third[i]).isCloseTo(first[i] - first[2], within(1e-12));
    }
    assertThat(third[2]).isZero();
  }

  @Test
  void anUnbeatenItemIsRefusedBecauseNoFiniteScoreExists() {
    assertThatThrownBy(() -> PairPreference.of(new double[][] {{0, 3}, {0, 0}}, 0))
        .isInstanceOf(StatsException.class)
        .hasMessageContaining("no finite scores exist");
    assertThatThrownBy(() -> PairPreference.of(new double[][] {{0, 3}, {-1, 0}}, 0))
        .hasMessageStartingWith("wins[1][0]: must not be negative");
    assertThatThrownBy(() -> PairPreference.of(new double[][] {{0, 3, 1}, {1, 0, 1}}, 0))
        .hasMessageStartingWith("wins: must be square");
    assertThatThrownBy(() -> PairPreference.of(WINS, 4)).hasMessageStartingWith("reference:");
  }
}
