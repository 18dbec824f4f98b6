package blindlap.review;

import blindlap.plan.Plan;
import blindlap.session.day.Guess;
import blindlap.stats.order.Assignments;
import blindlap.stats.tell.GuessTest;
import java.util.Optional;

/**
 * What the rider guessed.
 *
 * @param letters one character per stint: a setup's letter, '-' for "don't know", '.' for no answer
 * @param right number of right guesses
 * @param wrong number of wrong guesses
 * @param unknown number of "don't know"
 * @param test for two setups of which the rider did not know what was on; empty otherwise, or where
 *     nobody guessed
 */
public record Guesses(String letters, int right, int wrong, int unknown, Optional<GuessTest> test) {

  static Guesses of(DayRecord day, Assignments set) {
    Plan plan = day.plan();
    StringBuilder letters = new StringBuilder();
    int[] count = new int[3];
    for (int stint = 1; stint <= plan.stints(); stint++) {
      Guess guess = stint > day.lastStint() ? null : day.guesses().get(stint);
      Integer setup = guess == null ? null : guess.setup();
      letters.append(guess == null ? '.' : setup == null ? '-' : (char) ('A' + setup));
      if (guess != null) {
        count[setup == null ? 2 : setup == day.setup(stint) ? 0 : 1]++;
      }
    }
    boolean any = count[0] + count[1] + count[2] > 0;
    boolean test = plan.level().blind() && plan.setups().size() == 2 && any;
    return new Guesses(
        letters.toString(),
        count[0],
        count[1],
        count[2],
        test ? Optional.of(test(day, set, letters.toString())) : Optional.empty());
  }

  private static GuessTest test(DayRecord day, Assignments set, String letters) {
    boolean[] valid = new boolean[letters.length()];
    java.util.Arrays.fill(valid, true);
    return GuessTest.of(set, day.key().setups(), letters, valid, day.plan().rule().block());
  }

  /** True if anybody guessed. */
  public boolean any() {
    return right + wrong + unknown > 0;
  }
}
