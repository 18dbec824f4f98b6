package blindlap.recording;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class LapMatchingTest {
  private static final double HOUR = 3600;

  private static int[] laps(LapMatching matching, int recorded) {
    return IntStream.range(0, recorded).map(matching::lap).toArray();
  }

  @Test
  void anyOffsetOfTheRecordersClockChangesNoMatchAndIsFound() {
    double[] finished = {600, 1700, 2900, 4100, 5200};
    for (double off : new double[] {0, 45, -3 * HOUR, 7 * 24 * HOUR}) {
      double[] entered = Arrays.stream(finished).map(at -> at + off + 40).toArray();
      LapMatching matching = LapMatching.of(finished, entered);
      assertThat(laps(matching, 5)).containsExactly(0, 1, 2, 3, 4);
      assertThat(matching.certain()).isTrue();
      assertThat(matching.offset()).isCloseTo(off + 40, within(1e-9));
    }
  }

  @Test
  void aLapTheRecorderMissedAndOneThatIsNoneOfTheDayAreLeftToAPerson() {
    double[] entered = {640, 1750, 2930, 4150};
    LapMatching missed = LapMatching.of(new double[] {600, 2900, 4100}, entered);
    assertThat(laps(missed, 3)).containsExactly(0, 2, 3);
    assertThat(missed.certain()).isFalse();
    LapMatching extra = LapMatching.of(new double[] {600, 1700, 2200, 2900, 4100}, entered);
    assertThat(laps(extra, 5)).containsExactly(0, 1, -1, 2, 3);
    assertThat(extra.certain()).isFalse();
  }

  @Test
  void lapsKeptOnPaperAreMatchedByTheirOrderBetweenThoseWithATime() {
    LapMatching matching =
        LapMatching.of(
            new double[] {600, 1700, 2900, 4100}, new double[] {640, Double.NaN, Double.NaN, 4140});
    assertThat(laps(matching, 4)).containsExactly(0, 1, 2, 3);
    assertThat(matching.certain()).isTrue();
  }

  @Test
  void withoutAnyClockOnlyAsManyAsThereAreLapsAreCertain() {
    double[] unknown = {Double.NaN, Double.NaN, Double.NaN};
    assertThat(LapMatching.of(new double[] {1, 900, 1800}, unknown).certain()).isTrue();
    LapMatching more = LapMatching.of(new double[] {1, 900, 1800, 2700}, unknown);
    assertThat(laps(more, 4)).containsExactly(0, 1, 2, -1);
    assertThat(more.certain()).isFalse();
    assertThat(LapMatching.of(new double[0], unknown).certain()).isFalse();
  }

  /**
   * A file of one lap fits every lap; of files that fit as well that of the truer clock is meant.
   */
  @Test
  void oneRecordedLapIsProposedWhereTheClockIsLeastOffAndLeftToAPerson() {
    double[] entered = {640, 1750, 2930, 4150};
    LapMatching one = LapMatching.of(new double[] {2900}, entered);
    assertThat(laps(one, 1)).containsExactly(2);
    assertThat(one.open(0)).isTrue();
    LapMatching said = LapMatching.of(new double[] {2900}, entered, new int[] {1});
    assertThat(laps(said, 1)).containsExactly(1);
    assertThat(said.open(0)).isFalse();
    assertThat(said.offset()).isEqualTo(1750 - 2900);
  }

  @Test
  void whatAPersonSaidOfOneLapSettlesWhatTheClockLeavesOpen() {
    double[] entered = {1000, 2000, 3000, 4000, 5000};
    double[] finished = {980, 1980, 2980};
    int free = LapMatching.FREE;
    LapMatching open = LapMatching.of(finished, entered);
    assertThat(laps(open, 3)).containsExactly(0, 1, 2);
    assertThat(open.open(0)).isTrue();
    LapMatching said = LapMatching.of(finished, entered, new int[] {1, free, free});
    assertThat(laps(said, 3)).containsExactly(1, 2, 3);
    assertThat(IntStream.range(0, 3).noneMatch(said::open)).isTrue();
  }

  @Test
  void withoutClocksWhatAPersonSaidPartsTheDay() {
    double unknown = Double.NaN;
    int free = LapMatching.FREE;
    double[] entered = {unknown, unknown, unknown, unknown, unknown};
    double[] finished = {1, 900, 1800, 2700};
    LapMatching said = LapMatching.of(finished, entered, new int[] {free, free, 3, free});
    assertThat(said.lap(2)).isEqualTo(3);
    assertThat(said.lap(3)).isEqualTo(4);
    assertThat(said.open(3)).isFalse();
    assertThat(said.open(0)).isTrue();
    assertThat(said.certain()).isFalse();
  }

  @Test
  void fewerLapsThanWereKeptOnPaperBetweenTwoClocksAreLeftToAPerson() {
    double[] entered = {640, Double.NaN, Double.NaN, 4140};
    LapMatching fewer = LapMatching.of(new double[] {600, 2000, 4100}, entered);
    assertThat(fewer.open(0)).isFalse();
    assertThat(fewer.open(1)).isTrue();
    assertThat(fewer.open(2)).isFalse();
  }

  @Test
  void randomDaysAreMatchedAsTheyWereRidden() {
    Random random = new Random(20_261_127);
    for (int day = 0; day < 200; day++) {
      int laps = 6 + random.nextInt(15);
      double off = (random.nextDouble() - 0.5) * 48 * HOUR;
      double at = 0;
      double[] finished = new double[laps];
      double[] entered = new double[laps];
      for (int i = 0; i < laps; i++) {
        at += 500 + random.nextInt(900);
        finished[i] = at;
        entered[i] = at + off + 20 + random.nextInt(120);
      }
      int gone = random.nextInt(laps);
      double[] left =
          IntStream.range(0, laps).filter(i -> i != gone).mapToDouble(i -> finished[i]).toArray();
      int[] expected = IntStream.range(0, laps).filter(i -> i != gone).toArray();
      assertThat(laps(LapMatching.of(finished, entered), laps))
          .as("day %d", day)
          .containsExactly(IntStream.range(0, laps).toArray());
      assertThat(laps(LapMatching.of(left, entered), laps - 1))
          .as("day %d without lap %d", day, gone)
          .containsExactly(expected);
    }
  }
}
