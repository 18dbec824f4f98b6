package blindlap.stats.distribution;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.statistics.distribution.TDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NoncentralTTest {
  /**
   * df, ncp, t, P(T ≤ t), P(T &gt; t): mpmath 1.3 at 40 digits, quadrature of Φ(δ − t·s) against
   * the density of s = √(χ²/ν).
   */
  @ParameterizedTest
  @CsvSource({
    "1, 0.5, 2, 0.74848558423929016, 0.25151441576070984",
    "1, 3, 12.7062047361747, 0.81389192575371483, 0.18610807424628517",
    "2, 1, -1, 0.042056263743704791, 0.95794373625629521",
    "3, 2, 3.18244630528371, 0.71145133332919137, 0.28854866667080863",
    "5, 0.5, 0, 0.3085375387259869, 0.6914624612740131",
    "9, 3, 2.2621571628541, 0.23884473901150847, 0.76115526098849153",
    "13, 2.83, 2.1603686564610127, 0.25573636852844547, 0.74426363147155453",
    "13, 2.83, -2.1603686564610127, 2.0744537524259939e-6, 0.99999792554624757",
    "38, 3.16227766016838, 2.0243941645751367, 0.13104719844832376, 0.86895280155167624",
    "10, -2, 1.5, 0.99951604669924042, 0.00048395330075957826",
    "21.5, 4, 2.5, 0.076580437304471298, 0.9234195626955287",
    "200, 7, 5, 0.025822292296550109, 0.97417770770344989",
    "1000, 2, 1.96, 0.48386661421828904, 0.51613338578171096",
    "1e6, 2, 1.96, 0.48404638313534848, 0.51595361686465152",
    "4, 10, 30, 0.97767216377676699, 0.022327836223233015",
    "30, 20, 15, 0.010830850362076558, 0.98916914963792344",
    "2.5, 0, 4.3, 0.98342380602503905, 0.016576193974960951",
    "0.5, 1, 8, 0.752189671109555, 0.247810328890445",
    "9, 0.1, 25, 0.99999999914684807, 8.5315193379678479e-10",
  })
  void agreesWithFortyDigitQuadratureInBothTails(
      double df, double shift, double t, double below, double above) {
    NoncentralT distribution = NoncentralT.of(df, shift);
    assertThat(distribution.cdf(t)).isCloseTo(below, within(1e-13 * below));
    assertThat(distribution.sf(t)).isCloseTo(above, within(1e-13 * above));
  }

  @Test
  void isStudentsTWithoutShift() {
    for (double df : new double[] {0.7, 1, 2, 6.5, 13, 100}) {
      for (double t : new double[] {-40, -3, -0.1, 0, 0.7, 2.5, 12}) {
        TDistribution central = TDistribution.of(df);
        NoncentralT here = NoncentralT.of(df, 0);
        assertThat(here.cdf(t)).isCloseTo(central.cumulativeProbability(t), within(1e-13));
        assertThat(here.sf(t)).isCloseTo(central.survivalProbability(t), within(1e-13));
      }
    }
  }

  @Test
  void tailsSumToOneAndMirrorWithTheShift() {
    for (double df : new double[] {0.5, 1, 3, 13, 500}) {
      for (double shift : new double[] {-8, -1, 0.3, 2.8, 40}) {
        for (double t : new double[] {-5, -0.2, 1.1, 2.2, 35, 80}) {
          NoncentralT here = NoncentralT.of(df, shift);
          assertThat(here.cdf(t) + here.sf(t)).isCloseTo(1, within(1e-14));
          assertThat(here.cdf(t)).isEqualTo(NoncentralT.of(df, -shift).sf(-t));
        }
      }
    }
  }

  @Test
  void refusesValuesThatNoDistributionHas() {
    assertThatThrownBy(() -> NoncentralT.of(0, 1)).hasMessageStartingWith("df: must be at least");
    assertThatThrownBy(() -> NoncentralT.of(Double.NaN, 1)).hasMessageStartingWith("df:");
    assertThatThrownBy(() -> NoncentralT.of(3, 1e9)).hasMessageStartingWith("ncp:");
    assertThatThrownBy(() -> NoncentralT.of(3, 1).cdf(Double.POSITIVE_INFINITY))
        .hasMessageStartingWith("t: must be a finite number");
  }
}
