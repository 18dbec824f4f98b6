package blindlap.stats.tell;

import static blindlap.stats.Refusals.refused;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import blindlap.stats.SmallSets;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.Orders;
import blindlap.stats.order.Sampling;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** Guesses of levels, beside every order by itself. */
class LevelGuessTestTest {
  private static final double[] LEVELS = {13, 1, 4};

  private static boolean[] all(int n) {
    boolean[] valid = new boolean[n];
    Arrays.fill(valid, true);
    return valid;
  }

  private static LevelGuessTest of(
      SmallSets.Plain rule, double[] levels, String order, String guesses, boolean[] valid) {
    return LevelGuessTest.of(
        rule.assignments(), levels, Orders.parse(order), guesses, valid, Sampling.PREFERRED);
  }

  @Test
  void everyOrderIsHeldAgainstTheGuessesWithTheLevelsAsWeights() {
    String order = "BCAACBCAB";
    String guesses = "LLHH-LHH.";
    boolean[] valid = all(9);
    valid[6] = false;
    LevelGuessTest found = of(SmallSets.THREE_9, LEVELS, order, guesses, valid);
    double observed = score(order, guesses, valid);
    long more = 0;
    long same = 0;
    for (String each : SmallSets.filtered(SmallSets.THREE_9)) {
      double score = score(each, guesses, valid);
      more += score > observed + 1e-9 ? 1 : 0;
      same += Math.abs(score - observed) <= 1e-9 ? 1 : 0;
    }
    assertThat(same).as("ties are part of it").isGreaterThan(1);
    assertThat(found.t()).isCloseTo(observed / 12, within(1e-12));
    assertThat(found.p()).isCloseTo((more + same) / 216.0, within(1e-12));
    assertThat(found.midP()).isCloseTo((more + same / 2.0) / 216, within(1e-12));
    // Void and unanswered stints are left out; 4 is nearer to 1 than to 13.
    assertThat(found.right()).isEqualTo(6);
    assertThat(found.wrong()).isZero();
    assertThat(found.unsure()).isEqualTo(1);
  }

  private static double score(String order, String guesses, boolean[] valid) {
    double sum = 0;
    for (int i = 0; i < valid.length; i++) {
      double guess = guesses.charAt(i) == 'H' ? 1 : guesses.charAt(i) == 'L' ? -1 : 0;
      sum += valid[i] ? guess * (LEVELS[order.charAt(i) - 'A'] - 6) : 0;
    }
    return sum;
  }

  @Test
  void twoLevelsAreGuessedAsTwoSetupsAre() {
    String order = "ABBABABAABAB";
    LevelGuessTest levels =
        of(SmallSets.BLOCK4_12, new double[] {3, 7}, order, "LHH-HLHLL.LH", all(12));
    GuessTest setups =
        GuessTest.of(
            SmallSets.BLOCK4_12.assignments(), Orders.parse(order), "ABB-BABAA.AB", all(12), 4);
    assertThat(levels.p()).isCloseTo(setups.p(), within(1e-12));
    assertThat(levels.midP()).isCloseTo(setups.midP(), within(1e-12));
    assertThat(levels.t()).isCloseTo(setups.t() / 2.0, within(1e-12));
    assertThat(levels.right() - levels.wrong()).isEqualTo((int) setups.t());
  }

  @Test
  void aHabitGainsNothingAndKnowingEveryStintIsFlagged() {
    LevelGuessTest habit = of(SmallSets.THREE_9, LEVELS, "BCAACBCAB", "HHHHHHHHH", all(9));
    assertThat(habit.t()).isCloseTo(0, within(1e-12));
    assertThat(habit.p()).isEqualTo(1);
    assertThat(habit.midP()).isEqualTo(0.5);
    assertThat(habit.flagged()).isFalse();
    LevelGuessTest knew = of(SmallSets.THREE_9, LEVELS, "BCAACBCAB", "LLHHLLLHL", all(9));
    assertThat(knew.p()).as("A on its three stints, 8 of 216").isCloseTo(8 / 216.0, within(1e-12));
    assertThat(knew.flagged()).isTrue();
  }

  @Test
  void rightIsTheNearerEndAndNotTheSideOfTheMeanLevel() {
    // The mean is 3.5, half-way lies 4.5: 4 is above the one and nearer to 0.
    LevelGuessTest low =
        of(SmallSets.FOUR_8, new double[] {0, 1, 4, 9}, "ABCDDCBA", "LLLHHLL-", all(8));
    assertThat(new int[] {low.right(), low.wrong(), low.unsure()}).containsExactly(7, 0, 1);
    assertThat(low.t()).as("4 guessed low takes away").isCloseTo(18.5 / 9, within(1e-12));
    LevelGuessTest between =
        of(SmallSets.FOUR_8, new double[] {0, 1, 4.5, 9}, "ABCDDCBA", "LLLHHHL-", all(8));
    assertThat(new int[] {between.right(), between.wrong()}).containsExactly(5, 0);
  }

  @Test
  void aSampleHoldsTheOrderRiddenAndComesNearTheWholeSet() {
    Assignments set = SmallSets.Plain.blocks(3, 12, 3).assignments();
    int[] order = Orders.parse("ABCBACBCABCA");
    String guesses = "LHH-HLLH-HLH";
    LevelGuessTest whole =
        LevelGuessTest.of(set, LEVELS, order, guesses, all(12), Sampling.PREFERRED);
    LevelGuessTest some =
        LevelGuessTest.of(set, LEVELS, order, guesses, all(12), new Sampling(false, 9_999, 5, 100));
    assertThat(whole.sampled()).isFalse();
    assertThat(some.sampled()).isTrue();
    assertThat(some.p()).isCloseTo(whole.p(), within(0.02));
    assertThat(some.p()).isGreaterThan(0);
  }

  @Test
  void guessesThatDoNotFitAreRefused() {
    String order = "BCAACBCAB";
    refused("guesses", () -> of(SmallSets.THREE_9, LEVELS, order, "LLHH", all(9)));
    refused("guesses", () -> of(SmallSets.THREE_9, LEVELS, order, "ABCABCABC", all(9)));
    refused("guesses", () -> of(SmallSets.THREE_9, LEVELS, order, ".........", all(9)));
    refused("guesses", () -> of(SmallSets.THREE_9, LEVELS, order, "LLLLLLLLL", new boolean[9]));
    refused("levels", () -> of(SmallSets.THREE_9, new double[] {1, 2}, order, "LLLLLLLLL", all(9)));
  }
}
