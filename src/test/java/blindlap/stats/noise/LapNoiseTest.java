package blindlap.stats.noise;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import blindlap.stats.compare.StintSummary;
import blindlap.stats.distribution.Interval;
import blindlap.stats.order.Drift;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LapNoiseTest {
  private static final int[] SETUPS = {0, 1, 1, 0, 1, 0, 0, 1, 0, 1, 0, 1, 1, 0, 1, 0};

  /** Variances of the sample median that Teichroew (1956) tabled; figures from memory. */
  @ParameterizedTest
  @CsvSource({"1, 1", "2, .5", "3, .4487", "4, .2982", "5, .2868", "6, .2147", "7, .2104"})
  void theMedianOfNormalLapsHasTheVarianceOfTheTables(int laps, double variance) {
    assertThat(LapNoise.share(laps, StintSummary.MEDIAN)).isCloseTo(variance, within(6e-5));
    assertThat(LapNoise.share(laps, StintSummary.MEAN)).isEqualTo(1.0 / laps);
  }

  /** A day: drift, a setup effect, a slower first lap, and the two noises. */
  private static double[][] day(double shared, double own, int laps, Random random) {
    double[][] day = new double[SETUPS.length][laps];
    for (int stint = 0; stint < day.length; stint++) {
      double level = 90 + 0.1 * stint + 0.7 * SETUPS[stint] + shared * random.nextGaussian();
      for (int lap = 0; lap < laps; lap++) {
        day[stint][lap] = level + (lap == 0 ? 1.5 : 0) + own * random.nextGaussian();
      }
    }
    return day;
  }

  @Test
  void aWholeDayGivesTheSquaresOfATwoWayTable() {
    double[][] day = day(0.5, 1, 3, new Random(1));
    LapNoise found = LapNoise.of(SETUPS, day, Drift.LINE).orElseThrow();
    double grand = Arrays.stream(day).flatMapToDouble(Arrays::stream).average().orElseThrow();
    double squares = 0;
    for (int stint = 0; stint < 16; stint++) {
      double mean = Arrays.stream(day[stint]).average().orElseThrow();
      for (int lap = 0; lap < 3; lap++) {
        int at = lap;
        double position = Arrays.stream(day).mapToDouble(s -> s[at]).average().orElseThrow();
        squares += Math.pow(day[stint][lap] - mean - position + grand, 2);
      }
    }
    assertThat(found.lap().df()).isEqualTo(30);
    assertThat(found.lap().sd()).isCloseTo(Math.sqrt(squares / 30), within(1e-12));
    assertThat(found.laps()).isCloseTo(3, within(1e-12));
    assertThat(found.stint().df()).isEqualTo(13);
  }

  @Test
  void aSlowerFirstLapIsNotTakenForNoise() {
    double[][] day = day(0.5, 1, 3, new Random(2));
    double[][] slower =
        Arrays.stream(day)
            .map(laps -> new double[] {laps[0] + 40, laps[1], laps[2] - 7})
            .toArray(double[][]::new);
    assertThat(LapNoise.of(SETUPS, slower, Drift.LINE).orElseThrow().lap().sd())
        .isCloseTo(LapNoise.of(SETUPS, day, Drift.LINE).orElseThrow().lap().sd(), within(1e-9));
  }

  @ParameterizedTest
  @CsvSource({"0, 2", "0.3, 2", "0.6, 3", "1.5, 3"})
  void intervalsCoverAsOftenAsTheySay(double ratio, int laps) {
    Random random = new Random(7);
    int days = 2000;
    int covered = 0;
    int variance = 0;
    double sum = 0;
    for (int i = 0; i < days; i++) {
      double[][] day = day(Math.sqrt(ratio), 1, laps, random);
      if (i % 2 == 0) {
        day[random.nextInt(16)][0] = Double.NaN;
      }
      LapNoise found = LapNoise.of(SETUPS, day, Drift.LINE).orElseThrow();
      Interval of = found.ratio95();
      covered += of.low() <= ratio && ratio <= of.high() ? 1 : 0;
      Interval shared = found.sharedVariance95();
      variance += shared.low() <= ratio && ratio <= shared.high() ? 1 : 0;
      sum += found.lap().sd() * found.lap().sd();
    }
    // Three simulation errors of a rate near .95 are .015; the second interval is cautious.
    assertThat(covered / (double) days).isBetween(.935, ratio == 0 ? 1 : .965);
    assertThat(variance / (double) days).isBetween(.94, ratio == 0 ? 1 : .985);
    assertThat(sum / days).isCloseTo(1, within(0.03));
  }

  @Test
  void moreLapsTakeAwayWhatLapsDoNotShareAndNothingElse() {
    LapNoise own = new LapNoise(new RiderNoise(1, 1000), new RiderNoise(Math.sqrt(.5), 1000), 2);
    assertThat(own.stintSd(8, StintSummary.MEAN)).isCloseTo(Math.sqrt(1 / 8.0), within(1e-12));
    assertThat(own.stintSd(3, StintSummary.MEDIAN)).isCloseTo(Math.sqrt(.4487), within(1e-4));
    LapNoise shared = new LapNoise(new RiderNoise(1e-6, 1000), new RiderNoise(1, 1000), 2);
    assertThat(shared.stintSd(8, StintSummary.MEAN)).isCloseTo(1, within(1e-9));
    Interval range = own.stintSdRange(8, StintSummary.MEAN);
    assertThat(range.low()).isLessThanOrEqualTo(own.stintSd(8, StintSummary.MEAN));
    assertThat(range.high()).isGreaterThan(own.stintSd(8, StintSummary.MEAN));
    assertThat(LapNoise.unknownSplit(2, 4, StintSummary.MEAN)).isEqualTo(new Interval(1, 2));
  }

  @Test
  void daysAreTakenTogetherByTheirDegreesOfFreedom() {
    LapNoise one = new LapNoise(new RiderNoise(1, 10), new RiderNoise(2, 6), 2);
    LapNoise other = new LapNoise(new RiderNoise(3, 30), new RiderNoise(1, 12), 3);
    LapNoise both = LapNoise.pooled(List.of(one, other));
    assertThat(both.lap().sd()).isCloseTo(Math.sqrt((10 + 270) / 40.0), within(1e-12));
    assertThat(both.stint().df()).isEqualTo(18);
    assertThat(both.laps()).isCloseTo(18 / (3.0 + 4.0), within(1e-12));
  }

  @Test
  void aDayOfOneLapAStintTellsNothing() {
    double[][] day = day(0.5, 1, 1, new Random(3));
    assertThat(LapNoise.of(SETUPS, day, Drift.LINE)).isEmpty();
    double[][] lost = day(0.5, 1, 2, new Random(3));
    for (double[] laps : lost) {
      laps[1] = Double.NaN;
    }
    assertThat(LapNoise.of(SETUPS, lost, Drift.LINE)).isEmpty();
  }
}
