package blindlap.stats.pool;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import blindlap.stats.compare.HarmTest;
import org.junit.jupiter.api.Test;

class RidersMeanTest {
  /**
   * Differences of the ten sleepers of Student (1908), Biometrika 6:1; mean, t, p and interval as
   * R's {@code t.test} of the data set {@code sleep} gives them, quoted from memory.
   */
  private static final double[] SLEEP = {1.2, 2.4, 1.3, 1.3, 0.0, 1.0, 1.8, 0.8, 4.6, 1.4};

  @Test
  void theMeanItsIntervalAndPAreThoseOfStudent() {
    RidersMean mean = RidersMean.of(SLEEP).orElseThrow();
    assertThat(mean.estimate()).isCloseTo(1.58, within(1e-12));
    assertThat(mean.estimate() / mean.standardError()).isCloseTo(4.0621, within(5e-5));
    assertThat(mean.p(0)).isCloseTo(0.002833, within(5e-7));
    assertThat(mean.interval(0.95).low()).isCloseTo(0.7001142, within(5e-8));
    assertThat(mean.interval(0.95).high()).isCloseTo(2.4598858, within(5e-8));
  }

  @Test
  void aHarmIsShownOnTheSideItLiesAndRuledOutOnTheOther() {
    RidersMean mean = RidersMean.of(SLEEP).orElseThrow();
    HarmTest more = mean.harm(-0.3, 0.3, HarmTest.Direction.MORE_IS_HARM);
    assertThat(more.bAgainstA()).isEqualTo(HarmTest.Finding.SHOWN);
    assertThat(more.aAgainstB()).isEqualTo(HarmTest.Finding.RULED_OUT);
    assertThat(more.p()).isEqualTo(mean.p(0.3));
    HarmTest less = mean.harm(-0.3, 0.3, HarmTest.Direction.LESS_IS_HARM);
    assertThat(less.aAgainstB()).isEqualTo(HarmTest.Finding.SHOWN);
    // Adjusted for many others it is shown no more, and is not ruled out for that.
    assertThat(more.adjustedTo(0.2).bAgainstA()).isEqualTo(HarmTest.Finding.NOT_SETTLED);
    assertThat(more.adjustedTo(0.2).aAgainstB()).isEqualTo(HarmTest.Finding.RULED_OUT);
  }

  @Test
  void threeRidersAreTooFewAndRidersWhoAllAgreeHaveNoSpread() {
    assertThat(RidersMean.of(new double[] {1, 2, 3})).isEmpty();
    assertThat(RidersMean.of(new double[] {2, 2, 2, 2})).isEmpty();
  }
}
