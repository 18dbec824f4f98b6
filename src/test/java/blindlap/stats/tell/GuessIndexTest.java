package blindlap.stats.tell;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class GuessIndexTest {
  private static final double[][] TABLE = {{14, 5, 6}, {4, 12, 9}};

  /** James's index written out from six shares. */
  private static double james(double[] p) {
    double unsure = p[2] + p[5];
    double sure = 1 - unsure;
    double observed = (p[1] + p[3]) / 2 / sure;
    double expected =
        ((p[0] + p[1]) * (p[1] + p[4]) + (p[3] + p[4]) * (p[0] + p[3])) / 2 / (sure * sure);
    return (1 + unsure + sure * (observed - expected) / expected) / 2;
  }

  @Test
  void bangIsRightMinusWrongOverAllGuessesOfARow() {
    GuessIndex found = GuessIndex.of(TABLE);
    assertThat(found.bang()).containsExactly(new double[] {9 / 25.0, 8 / 25.0}, within(1e-15));
    double variance = (19 / 25.0 - Math.pow(9 / 25.0, 2)) / 25;
    assertThat(found.bangSe()[0]).isCloseTo(Math.sqrt(variance), within(1e-15));
  }

  @Test
  void theErrorOfJamesIsThatOfNumericalDerivatives() {
    double[] p = new double[6];
    for (int cell = 0; cell < 6; cell++) {
      p[cell] = TABLE[cell / 3][cell % 3] / 50;
    }
    double mean = 0;
    double squares = 0;
    for (int cell = 0; cell < 6; cell++) {
      double[] up = p.clone();
      double[] down = p.clone();
      up[cell] += 1e-5;
      down[cell] -= 1e-5;
      double slope = (james(up) - james(down)) / 2e-5;
      mean += p[cell] * slope;
      squares += p[cell] * slope * slope;
    }
    GuessIndex found = GuessIndex.of(TABLE);
    assertThat(found.james()).isCloseTo(james(p), within(1e-14));
    assertThat(found.jamesSe()).isCloseTo(Math.sqrt((squares - mean * mean) / 50), within(1e-9));
  }

  @Test
  void renamingTheSetupsSwapsTheRows() {
    double[][] renamed = {{12, 4, 9}, {5, 14, 6}};
    GuessIndex there = GuessIndex.of(TABLE);
    GuessIndex back = GuessIndex.of(renamed);
    assertThat(back.bang()).containsExactly(there.bang()[1], there.bang()[0]);
    assertThat(back.james()).isCloseTo(there.james(), within(1e-15));
    assertThat(back.jamesSe()).isCloseTo(there.jamesSe(), within(1e-15));
  }

  @Test
  void theEndsOfTheScalesAreReached() {
    GuessIndex known = GuessIndex.of(new double[][] {{10, 0, 0}, {0, 10, 0}});
    assertThat(known.bang()).containsExactly(1, 1);
    assertThat(known.bangSe()).containsExactly(0, 0);
    assertThat(known.james()).isCloseTo(0, within(1e-15));
    GuessIndex unsure = GuessIndex.of(new double[][] {{0, 0, 10}, {0, 0, 10}});
    assertThat(unsure.bang()).containsExactly(0, 0);
    assertThat(unsure.james()).isNaN();
    assertThat(unsure.jamesSe()).isNaN();
  }

  @Test
  void otherAnswerFormsHaveNoJamesIndex() {
    GuessIndex found =
        GuessIndex.of(new double[][] {{3, 4, 1, 2}, {1, 1, 4, 4}}, new double[] {1, 0.5, -0.5, -1});
    assertThat(found.bang()).containsExactly(new double[] {0.25, 0.45}, within(1e-15));
    assertThat(found.james()).isNaN();
  }

  @Test
  void impossibleTablesAreRefusedByPlace() {
    assertThatThrownBy(() -> GuessIndex.of(new double[][] {{1, 2, 3}, {0, 0, 0}}))
        .hasMessage("table[1]: has no guess at all.");
    assertThatThrownBy(() -> GuessIndex.of(new double[][] {{1, 2.5, 3}, {0, 1, 0}}))
        .hasMessageStartingWith("table[0][1]: must be a whole number");
    assertThatThrownBy(() -> GuessIndex.of(new double[][] {{1, 2, 3}, {0, -1, 0}}))
        .hasMessageStartingWith("table[1][1]:");
    assertThatThrownBy(() -> GuessIndex.of(new double[][] {{1, 2}, {2, 1}}))
        .hasMessage("table: has 2 columns, but there are 3 weights.");
    assertThatThrownBy(
            () -> GuessIndex.of(new double[][] {{1, 2}, {2, 1}, {1, 1}}, new double[] {1, -1}))
        .hasMessage("table: must have 2 rows, but has 3.");
    assertThatThrownBy(() -> GuessIndex.of(new double[][] {{1, 2}, {2, 1}}, new double[] {1, -2}))
        .hasMessageStartingWith("weights[1]:");
  }
}
