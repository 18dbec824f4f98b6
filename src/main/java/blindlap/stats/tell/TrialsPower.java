package blindlap.stats.tell;

import blindlap.fault.Require;
import blindlap.fault.StatsException;
import java.util.OptionalInt;
import org.apache.commons.statistics.distribution.BinomialDistribution;

/**
 * What a number of trials can show of whether somebody tells two things apart
 * (docs/method.md#trials-planned). Exact: right answers are binomial, with the chance of guessing
 * where nothing is felt, and with {@code chance + (1 − chance)·share} where the share of trials is
 * really told.
 *
 * @param trials number of trials
 * @param least least number of right answers with one-sided p ≤ .05; empty if not even all reach it
 * @param smallestP p of all answers right
 * @param power chance of {@code least} or more where the declared share is really told; 0 if there
 *     is no least
 * @param cannot chance, where nothing is felt, of a count that shows the share told to be below the
 *     declared one: neither too many nor too few for guessing (one-sided p above .05 each way), and
 *     the upper of the two-sided 90 % Clopper-Pearson limits below the declared share
 */
public record TrialsPower(
    int trials, OptionalInt least, double smallestP, double power, double cannot) {
  /** Level of every one-sided statement about trials. */
  public static final double LEVEL = 0.05;

  /**
   * @param trials number of trials, at least 1
   * @param chance right answers by guessing, above 0 and below 1
   * @param share share of trials told that would matter, above 0 and at most 1
   * @throws StatsException if a value is impossible
   */
  public static TrialsPower of(int trials, double chance, double share) {
    BinomialChoice guessing = BinomialChoice.of(trials, chance);
    if (!(Require.proportion("share", share) > 0)) {
      throw new StatsException("share", "must be above 0, but is " + share + ".");
    }
    double told = chance + (1 - chance) * share;
    return new TrialsPower(
        trials,
        guessing.minimum(LEVEL, BinomialChoice.Tail.GREATER),
        guessing.p(trials, BinomialChoice.Tail.GREATER),
        guessing.power(LEVEL, told),
        cannot(guessing, trials, chance, told));
  }

  /** An upper limit lies below a proportion just where P(X ≤ x) at that proportion is below .05. */
  private static double cannot(BinomialChoice guessing, int trials, double chance, double told) {
    BinomialDistribution felt = BinomialDistribution.of(trials, told);
    BinomialDistribution nothing = BinomialDistribution.of(trials, chance);
    double sum = 0;
    for (int right = 0; right <= trials; right++) {
      boolean plain =
          guessing.p(right, BinomialChoice.Tail.GREATER) > LEVEL
              && guessing.p(right, BinomialChoice.Tail.LESS) > LEVEL;
      if (plain && felt.cumulativeProbability(right) < LEVEL) {
        sum += nothing.probability(right);
      }
    }
    return sum;
  }
}
