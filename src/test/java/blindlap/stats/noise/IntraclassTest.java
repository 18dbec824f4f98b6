package blindlap.stats.noise;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class IntraclassTest {
  private static final double[][] TABLE = {{9, 2, 5}, {6, 1, 3}, {8, 4, 6}, {7, 1, 2}};

  @Test
  void ratersWhoAgreeFullyGiveOneThroughout() {
    Intraclass found = Intraclass.of(new double[][] {{1, 1, 1}, {4, 4, 4}, {9, 9, 9}});
    assertThat(found).isEqualTo(new Intraclass(1, 1, 1, 1, 1, 1));
  }

  @Test
  void ratersWhoDifferByAConstantAreConsistentButDoNotAgree() {
    Intraclass found = Intraclass.of(new double[][] {{1, 3}, {4, 6}, {9, 11}});
    assertThat(found.icc31()).isCloseTo(1, within(1e-14));
    assertThat(found.icc21()).isLessThan(1);
    assertThat(found.icc11()).isLessThan(found.icc21());
  }

  @Test
  void theMeanOfAllRatersFollowsSpearmanAndBrown() {
    Intraclass found = Intraclass.of(TABLE);
    assertThat(found.icc1k()).isCloseTo(3 * found.icc11() / (1 + 2 * found.icc11()), within(1e-14));
    assertThat(found.icc3k()).isCloseTo(3 * found.icc31() / (1 + 2 * found.icc31()), within(1e-14));
  }

  @Test
  void theOneWayFormIsTheOneWayAnalysisOfVariance() {
    OneWay anova = OneWay.of(TABLE);
    double expected =
        (anova.betweenMean() - anova.withinMean()) / (anova.betweenMean() + 2 * anova.withinMean());
    assertThat(Intraclass.of(TABLE).icc11()).isCloseTo(expected, within(1e-14));
  }

  @Test
  void tablesWithoutVariationOrShapeAreRefused() {
    assertThatThrownBy(() -> Intraclass.of(new double[][] {{2, 2}, {2, 2}}))
        .hasMessageStartingWith("table: holds one value throughout");
    assertThatThrownBy(() -> Intraclass.of(new double[][] {{2, 2}, {2}}))
        .hasMessageStartingWith("table[1]: has 1 values");
    assertThatThrownBy(() -> Intraclass.of(new double[][] {{2, 2}, {2, 3, 4}}))
        .hasMessage("table[1]: has 3 columns, but the first row has 2.");
    assertThatThrownBy(() -> Intraclass.of(new double[][] {{2, 2}}))
        .hasMessageStartingWith("table: has 1 rows");
  }
}
