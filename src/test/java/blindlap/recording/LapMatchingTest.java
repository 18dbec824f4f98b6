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
