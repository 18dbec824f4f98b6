package blindlap.wording;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.Reviews;
import blindlap.desk.SampleDays;
import blindlap.plan.StepsDay;
import blindlap.review.Analysis;
import blindlap.review.DayRecord;
import blindlap.review.Finding;
import blindlap.session.day.Guess;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.function.IntFunction;
import org.junit.jupiter.api.Test;

/** What is said of guesses of levels: the end that was named, and whether chance explains it. */
class LevelGuessWordsTest {
  /** Eighteen stints at three levels. */
  private static final String THREE = "air-on-otter-traverse";

  /** Sixteen stints at four levels, of which the day settles something. */
  private static final String FOUR = "rebound-on-heron-line";

  /** A day with the guess that each level is given. */
  private static void guessed(String name, IntFunction<StepsDay.End> end, Consumer<Finding> look) {
    SampleDays.ride(
        name,
        (desk, state) -> {
          DayRecord day = Reviews.day(state);
          TreeMap<Integer, Guess> all = new TreeMap<>();
          for (int stint = 1; stint <= day.plan().stints(); stint++) {
            all.put(stint, new Guess(end.apply(day.setup(stint)).ordinal(), null, ""));
          }
          look.accept(
              Analysis.of(
                  new DayRecord(
                      day.session(),
                      day.plan(),
                      day.key(),
                      day.laps(),
                      all,
                      day.blindBroken(),
                      day.lastStint(),
                      day.fits(),
                      day.remarks())));
        });
  }

  @Test
  void whoNamesTheNearerEndOfEveryLevelMayHaveKnown() {
    guessed(
        THREE,
        level -> level == 0 ? StepsDay.End.LOW : StepsDay.End.HIGH,
        finding -> {
          assertThat(finding.guesses().flagged()).isTrue();
          assertThat(finding.guesses().neither()).isEqualTo(6);
          assertThat(new FindingText(finding).guesses())
              .startsWith("The guesses beat chance: 12 named the end that the level was nearer to,")
              .contains("0 the other", "0 \"don't know\", 6 a level that is nearer to neither")
              // Of the 6^6 orders those count that have A wherever it was named: 2^6, by half.
              .contains("(T = 6.00, by chance about 0; p = .0007)")
              .contains("The rider may have known");
        });
  }

  @Test
  void whoAlwaysNamesOneEndGainsNothingByIt() {
    guessed(
        THREE,
        level -> StepsDay.End.HIGH,
        finding -> {
          assertThat(finding.guesses().flagged()).isFalse();
          assertThat(new FindingText(finding).guesses())
              .startsWith("No sign of unblinding: 6 named the end that the level was nearer to, 6")
              .contains("(T = 0.00, by chance about 0; p = .50)")
              .endsWith("it is no proof that the blind held.");
        });
  }

  @Test
  void aDayWhoseGuessesBeatChanceIsNotCalledSettled() {
    guessed(
        FOUR,
        level -> level < 2 ? StepsDay.End.LOW : StepsDay.End.HIGH,
        finding -> {
          assertThat(finding.guesses().neither()).isZero();
          assertThat(new FindingText(finding).guesses()).contains("16 named", "\"don't know\" (T");
          assertThat(new FindingText(finding).next())
              .anyMatch(line -> line.contains("the guesses beat chance"));
        });
  }
}
