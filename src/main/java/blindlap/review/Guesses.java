package blindlap.review;

import blindlap.plan.Plan;
import blindlap.plan.StepsDay;
import blindlap.session.day.Guess;
import blindlap.stats.order.Assignments;
import blindlap.stats.tell.GuessTest;
import java.math.BigDecimal;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * What the rider guessed.
 *
 * @param letters one character per stint: a setup's letter, on a steps day A for the low end and B
 *     for the high one, '-' for "don't know", '.' for no answer
 * @param right number of right guesses
 * @param wrong number of wrong guesses; a level in the middle between both ends makes neither
 * @param unknown number of "don't know"
 * @param test for two setups of which the rider did not know what was on; empty otherwise, or where
 *     nobody guessed
 */
public record Guesses(String letters, int right, int wrong, int unknown, Optional<GuessTest> test) {

  private static final int RIGHT = 0;
  private static final int WRONG = 1;
  private static final int UNKNOWN = 2;
  private static final int NEITHER = 3;

  static Guesses of(DayRecord day, Assignments set) {
    Plan plan = day.plan();
    StringBuilder letters = new StringBuilder();
    int[] count = new int[NEITHER + 1];
    for (int stint = 1; stint <= plan.stints(); stint++) {
      Guess guess = stint > day.lastStint() ? null : day.guesses().get(stint);
      Integer setup = guess == null ? null : guess.setup();
      letters.append(guess == null ? '.' : setup == null ? '-' : (char) ('A' + setup));
      if (guess != null) {
        count[setup == null ? UNKNOWN : said(day, stint, setup)]++;
      }
    }
    boolean any = letters.chars().anyMatch(letter -> letter != '.');
    boolean test = plan.level().blind() && plan.setups().size() == 2 && any;
    return new Guesses(
        letters.toString(),
        count[RIGHT],
        count[WRONG],
        count[UNKNOWN],
        test ? Optional.of(test(day, set, letters.toString())) : Optional.empty());
  }

  /** Right or wrong; on a steps day by the end that is nearer, which the very middle has not. */
  private static int said(DayRecord day, int stint, int answer) {
    List<BigDecimal> levels = day.plan().levels().orElse(List.of());
    if (levels.isEmpty()) {
      return answer == day.setup(stint) ? RIGHT : WRONG;
    }
    BigDecimal ends =
        levels.stream()
            .min(Comparator.naturalOrder())
            .orElseThrow()
            .add(levels.stream().max(Comparator.naturalOrder()).orElseThrow());
    int side = levels.get(day.setup(stint)).multiply(BigDecimal.valueOf(2)).compareTo(ends);
    int guessed = answer == StepsDay.End.LOW.ordinal() ? -1 : 1;
    return side == 0 ? NEITHER : Integer.signum(side) == guessed ? RIGHT : WRONG;
  }

  private static GuessTest test(DayRecord day, Assignments set, String letters) {
    boolean[] valid = new boolean[letters.length()];
    java.util.Arrays.fill(valid, true);
    return GuessTest.of(set, day.key().setups(), letters, valid, day.plan().rule().block());
  }

  /** True if anybody guessed. */
  public boolean any() {
    return letters.chars().anyMatch(letter -> letter != '.');
  }
}
