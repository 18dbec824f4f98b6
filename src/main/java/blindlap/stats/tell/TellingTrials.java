package blindlap.stats.tell;

import blindlap.fault.Require;
import blindlap.fault.StatsException;
import blindlap.stats.order.Assignments;
import blindlap.stats.tell.BinomialChoice.Tail;
import java.util.List;
import java.util.OptionalInt;

/**
 * A run of trials, each drawn on its own, and what would matter (docs/method.md#telling-runs).
 *
 * @param task triangle, duo-trio or two-choice
 * @param number number of trials
 * @param matters declared share of trials really told that would matter
 * @param least least number of right answers that shows that the rider can tell; empty if not even
 *     all of them would
 */
public record TellingTrials(Discrimination task, int number, double matters, OptionalInt least) {
  /** Most trials of a run. */
  public static final int MOST = 100;

  /** At or below this probability guessing does not explain the answers. */
  public static final double LEVEL = 0.05;

  /** The share of trials that would matter unless another one is declared. */
  public static final double USUAL_SHARE = 0.5;

  /**
   * Declares a run.
   *
   * @param number 1 to {@value #MOST}
   * @param matters above 0, at most 1
   * @throws StatsException if a value is impossible, or the task is none of a telling run
   */
  public static TellingTrials of(Discrimination task, int number, double matters) {
    if (task == Discrimination.THREE_CHOICE) {
      throw new StatsException("task", "must be triangle, duo-trio or two-choice here.");
    }
    if (number < 1 || number > MOST) {
      throw new StatsException(
          "trials", "must lie between 1 and " + MOST + ", but is " + number + ".");
    }
    Require.positive("matters", Require.proportion("matters", matters));
    return new TellingTrials(
        task,
        number,
        matters,
        BinomialChoice.of(number, task.chance()).minimum(LEVEL, Tail.GREATER));
  }

  /** The number of trials that is proposed for a task unless another is asked for. */
  public static int usual(Discrimination task) {
    return task == Discrimination.TRIANGLE ? 15 : 24;
  }

  /** The orders of one trial, A and B being the two that are told apart; all equally likely. */
  public static List<String> orders(Discrimination task) {
    return switch (task) {
      case TRIANGLE -> List.of("AAB", "ABA", "BAA", "BBA", "BAB", "ABB");
      case DUO_TRIO -> List.of("AAB", "ABA", "BBA", "BAB");
      case TWO_CHOICE -> List.of("AB", "BA");
      case THREE_CHOICE -> List.of();
    };
  }

  /** Every order of all laps that can be drawn: the trials one after the other, each on its own. */
  public Assignments draws() {
    return Assignments.repeated(orders(task), number);
  }

  /** The share of right answers of a rider who tells in this share of trials and guesses else. */
  double rightShare(double told) {
    return Math.min(1, task.chance() + (1 - task.chance()) * told);
  }

  /** The share of trials really told behind a share of right answers, cut at 0. */
  double told(double rightShare) {
    return Math.max(0, (rightShare - task.chance()) / (1 - task.chance()));
  }

  /** The number of right answers that guessing gives on average. */
  public double guessed() {
    return number * task.chance();
  }

  /** The probability that guessing gives right answers in all trials. */
  public double allByGuessing() {
    return Math.pow(task.chance(), number);
  }

  /** The number of right answers that telling in the declared share of trials gives on average. */
  public double mattering() {
    return number * rightShare(matters);
  }
}
