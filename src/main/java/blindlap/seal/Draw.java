package blindlap.seal;

import blindlap.fault.Unusable;
import blindlap.plan.Rule;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.Orders;
import java.math.BigInteger;

/**
 * The draw of the order that will be ridden: block by block a uniform index into the block's
 * sequences in lexicographic order; an order that breaks a constraint on the whole day is thrown
 * away whole and the same stream goes on with the next. Trials are drawn alike, one after the
 * other, under a name of their own: no constraint spans them and nothing is thrown away.
 */
final class Draw {
  /** The name of this draw in every key: changes with anything that would change an order. */
  static final String ALGORITHM = "blindlap-draw-1";

  /** The name of the draw of trials, each of which is independent of all others. */
  static final String TRIALS = "blindlap-trials-1";

  /** A rule for which more tries than this are to be expected is refused at once. */
  static final int MOST_EXPECTED_TRIES = 20_000;

  /** Beyond the odds of any real draw: a rule at the limit above fails to come out once in e^50. */
  static final int MOST_TRIES = 50 * MOST_EXPECTED_TRIES;

  private Draw() {}

  /** The name of the draw that a rule is drawn by. */
  static String algorithm(Rule rule) {
    return rule.trials() ? TRIALS : ALGORITHM;
  }

  /**
   * Draws the order of a rule.
   *
   * @param seed 32 bytes
   * @return one letter per stint
   * @throws Unusable if the rule contradicts itself or admits no order, or so few of its shuffles
   *     that drawing one would take too long
   */
  static String order(Rule rule, byte[] seed) {
    refuseHopeless(rule);
    Assignments day = rule.assignments();
    Assignments block = rule.blockSequences();
    int blocks = rule.stints() / rule.block();
    OrderStream stream = new OrderStream(seed);
    for (int i = 0; i < MOST_TRIES; i++) {
      StringBuilder order = new StringBuilder(rule.stints());
      for (int b = 0; b < blocks; b++) {
        order.append(Orders.letters(block.order(stream.below(block.count()))));
      }
      if (!rule.constrainsWholeDay() || day.contains(Orders.parse(order.toString()))) {
        return order.toString();
      }
    }
    throw new Unusable(
        "rule",
        "no admissible order came up in " + MOST_TRIES + " tries.",
        DrawFault.NONE_CAME_UP,
        MOST_TRIES);
  }

  /**
   * Draws nothing.
   *
   * @throws Unusable as {@link #order} does, whatever the seed
   */
  static void refuseHopeless(Rule rule) {
    BigInteger admissible = rule.assignments().count();
    BigInteger shuffles = rule.blockSequences().count().pow(rule.stints() / rule.block());
    if (admissible.signum() == 0) {
      throw new Unusable(
          "rule",
          "admits no order, so none can be drawn; loosen max_run or min_trend_efficiency.",
          DrawFault.NO_ORDER);
    }
    if (shuffles.compareTo(admissible.multiply(BigInteger.valueOf(MOST_EXPECTED_TRIES))) > 0) {
      throw new Unusable(
          "rule",
          "admits only "
              + admissible
              + " of "
              + shuffles
              + " shuffles, too few to draw one by trying; list the blocks it wants under patterns,"
              + " or loosen max_run or min_trend_efficiency.",
          DrawFault.TOO_FEW_ORDERS,
          admissible,
          shuffles);
    }
  }
}
