package blindlap.stats.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class StintSummaryTest {
  @Test
  void theMeanTakesTheLapsThatAreThereAndTheMedianOnlyAStintWithAll() {
    double[] gap = {2, Double.NaN, 7};
    assertThat(StintSummary.MEAN.of(gap)).isEqualTo(4.5);
    assertThat(StintSummary.MEDIAN.of(gap)).isNaN();
    assertThat(StintSummary.MEDIAN.of(new double[] {9, 1, 2})).isEqualTo(2);
    assertThat(StintSummary.MEDIAN.of(new double[] {9, 1, 2, 4})).isEqualTo(3);
    assertThat(StintSummary.MEAN.of(new double[] {Double.NaN})).isNaN();
  }

  @ParameterizedTest
  @EnumSource(StintSummary.class)
  void shiftingEveryLapShiftsTheStint(StintSummary summary) {
    Random random = new Random(4);
    for (int n = summary.fewestLaps(); n < 8; n++) {
      double[] laps = random.doubles(n).toArray();
      double shifted = summary.of(Arrays.stream(laps).map(lap -> lap + 12.5).toArray());
      assertThat(shifted - summary.of(laps)).isCloseTo(12.5, within(1e-12));
    }
  }

  @Test
  void oneSpoiledLapDoesNotMoveTheMedianOfThreePastTheOthers() {
    assertThat(StintSummary.MEDIAN.of(new double[] {95.1, 140, 95.6})).isEqualTo(95.6);
  }
}
