package blindlap.review;

import blindlap.plan.Plan;
import blindlap.plan.StepsDay;
import blindlap.session.day.Guess;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.Sampling;
import blindlap.stats.tell.GuessTest;
import blindlap.stats.tell.LevelGuessTest;
import java.math.BigDecimal;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * What the rider guessed.
 *
 * @param letters one character per stint: a setup's letter, on a steps day L for the low end and H
 *     for the high one, '-' for "don't know", '.' for no answer
 * @param right number of right guesses
 * @param wrong number of wrong guesses; a level in the middle between both ends makes neither
 * @param unknown number of "don't know"
 * @param test for two setups of which the rider did not know what was on; empty otherwise, or where
 *     nobody guessed
 * @param levelTest the same for the levels of a steps day
 */
public record Guesses(
    String letters,
    int right,
    int wrong,
    int unknown,
    Optional<GuessTest> test,
    Optional<LevelGuessTest> levelTest) {

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
      letters.append(guess == null ? '.' : setup == null ? '-' : letter(plan, setup));
      if (guess != null) {
        count[setup == null ? UNKNOWN : said(day, stint, setup)]++;
      }
    }
    String said = letters.toString();
    boolean tested = plan.level().blind() && said.chars().anyMatch(letter -> letter != '.');
    return new Guesses(
        said,
        count[RIGHT],
        count[WRONG],
        count[UNKNOWN],
        tested && plan.steps() == null && plan.setups().size() == 2
            ? Optional.of(test(day, set, said))
            : Optional.empty(),
        tested && plan.steps() != null ? Optional.of(levelTest(day, set, said)) : Optional.empty());
  }

  private static char letter(Plan plan, int answer) {
    if (plan.steps() == null) {
      return (char) ('A' + answer);
    }
    return answer == StepsDay.End.LOW.ordinal() ? 'L' : 'H';
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
    int block = day.plan().rule().block();
    return GuessTest.of(set, day.key().setups(), letters, all(letters), block);
  }

  private static LevelGuessTest levelTest(DayRecord day, Assignments set, String letters) {
    double[] levels = day.plan().levelNumbers();
    int[] order = day.key().setups();
    return LevelGuessTest.of(set, levels, order, letters, all(letters), Sampling.PREFERRED);
  }

  /** A guess counts whatever became of its laps. */
  private static boolean[] all(String letters) {
    boolean[] valid = new boolean[letters.length()];
    Arrays.fill(valid, true);
    return valid;
  }

  /** True if the test, where there is one, gives a sign that the rider knew more than chance. */
  public boolean flagged() {
    return test.map(GuessTest::flagged)
        .or(() -> levelTest.map(LevelGuessTest::flagged))
        .orElse(false);
  }

  /** Guesses of an end beside a level that is half-way between both. */
  public int neither() {
    long answers = letters.chars().filter(letter -> letter != '.').count();
    return Math.toIntExact(answers) - right - wrong - unknown;
  }

  /** True if anybody guessed. */
  public boolean any() {
    return letters.chars().anyMatch(letter -> letter != '.');
  }
}
