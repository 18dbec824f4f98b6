package blindlap.stats.noise;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.junit.jupiter.api.Test;

class VarianceComponentsTest {
  private static final double[][] UNEVEN = {{4, 7, 6.5}, {9, 8.5, 11, 10}, {3, 5}, {12}};

  /** Restricted log-likelihood from the full covariance matrix, without its constant. */
  private static double likelihood(double[][] groups, double between, double within) {
    int n = java.util.Arrays.stream(groups).mapToInt(group -> group.length).sum();
    RealMatrix v = new Array2DRowRealMatrix(n, n);
    RealMatrix y = new Array2DRowRealMatrix(n, 1);
    RealMatrix x = new Array2DRowRealMatrix(n, 1);
    int start = 0;
    for (double[] group : groups) {
      for (int i = 0; i < group.length; i++) {
        y.setEntry(start + i, 0, group[i]);
        x.setEntry(start + i, 0, 1);
        for (int j = 0; j < group.length; j++) {
          v.setEntry(start + i, start + j, between + (i == j ? within : 0));
        }
      }
      start += group.length;
    }
    LUDecomposition lu = new LUDecomposition(v);
    RealMatrix inverse = lu.getSolver().getInverse();
    double information = x.transpose().multiply(inverse).multiply(x).getEntry(0, 0);
    double mean = x.transpose().multiply(inverse).multiply(y).getEntry(0, 0) / information;
    RealMatrix rest = y.subtract(x.scalarMultiply(mean));
    double squares = rest.transpose().multiply(inverse).multiply(rest).getEntry(0, 0);
    return -0.5 * (Math.log(lu.getDeterminant()) + Math.log(information) + squares);
  }

  @Test
  void isAMaximumOfTheLikelihoodFromTheFullCovarianceMatrix() {
    VarianceComponents found = VarianceComponents.reml(UNEVEN);
    double between = Math.pow(found.betweenSd(), 2);
    double within = Math.pow(found.withinSd(), 2);
    double best = likelihood(UNEVEN, between, within);
    for (double a : new double[] {0, 0.5, 0.9, 0.999, 1.001, 1.1, 2, 5}) {
      for (double b : new double[] {0.5, 0.9, 0.999, 1, 1.001, 1.1, 2, 5}) {
        assertThat(likelihood(UNEVEN, a * between, b * within)).isLessThan(best);
      }
    }
  }

  @Test
  void balancedGroupsGiveTheAnalysisOfVarianceEstimates() {
    double[][] groups = {{1, 2, 3}, {6, 7, 9}, {2, 2, 5}, {8, 10, 9}};
    OneWay anova = OneWay.of(groups);
    VarianceComponents found = VarianceComponents.reml(groups);
    assertThat(found.withinSd()).isCloseTo(anova.residualSd(), within(1e-13));
    assertThat(found.betweenSd())
        .isCloseTo(Math.sqrt((anova.betweenMean() - anova.withinMean()) / 3), within(1e-12));
    assertThat(found.meanSe()).isCloseTo(Math.sqrt(anova.betweenMean() / 12), within(1e-13));
    assertThat(found.mean()).isCloseTo(64 / 12.0, within(1e-14));
  }

  @Test
  void groupsThatDifferLessThanTheyScatterHaveNoVarianceBetween() {
    double[][] groups = {{1, 5, 3}, {2, 4, 3}, {0, 6, 3.5}};
    VarianceComponents found = VarianceComponents.reml(groups);
    assertThat(found.betweenSd()).isZero();
    Spread all = Spread.of(1, 5, 3, 2, 4, 3, 0, 6, 3.5);
    assertThat(found.withinSd()).isCloseTo(all.sd(), within(1e-14));
    assertThat(found.meanSe()).isCloseTo(all.sd() / 3, within(1e-14));
  }

  @Test
  void groupsOfOneAreRefused() {
    assertThatThrownBy(() -> VarianceComponents.reml(new double[][] {{1}, {2}}))
        .hasMessageStartingWith("groups: has one value per group");
    assertThatThrownBy(() -> VarianceComponents.reml(new double[][] {{1, 1}, {2, 2}}))
        .hasMessageStartingWith("groups: is constant within every group");
  }
}
