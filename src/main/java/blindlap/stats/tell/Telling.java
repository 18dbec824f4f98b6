package blindlap.stats.tell;

import blindlap.fault.Require;
import blindlap.fault.StatsException;
import blindlap.stats.distribution.Interval;
import blindlap.stats.distribution.ProportionInterval;
import blindlap.stats.tell.BinomialChoice.Tail;
import java.util.Optional;

/**
 * Can the rider tell? Right answers of a run of trials, each drawn on its own, against guessing and
 * against the share of trials that was declared to matter (docs/method.md#telling-runs).
 *
 * <p>As no trial's draw hangs on another's, the count is exactly binomial for whoever cannot tell,
 * whatever the habits of answering.
 *
 * @param run the answered trials
 * @param right number of right answers
 * @param p probability of as many right answers or more by guessing
 * @param pFewer probability of as many or fewer by guessing
 * @param share share of trials in which the rider really told, (right/trials − chance)/(1 −
 *     chance), cut at 0
 * @param limits its limits, two-sided {@value #CONFIDENCE}: Clopper-Pearson ends of the share of
 *     right answers put through the same, cut at 0
 */
public record Telling(
    TellingTrials run, int right, double p, double pFewer, double share, Interval limits) {
  /** Confidence of the limits that verdicts are read from. */
  public static final double CONFIDENCE = 0.90;

  /**
   * Reads a run.
   *
   * @param task triangle, duo-trio or two-choice
   * @param trials answered trials
   * @param right right answers among them
   * @param matters declared share of trials really told that would matter, above 0, at most 1
   * @throws StatsException if a value is impossible
   */
  public static Telling of(Discrimination task, int trials, int right, double matters) {
    return of(TellingTrials.of(task, trials, matters), right);
  }

  /**
   * Reads a run.
   *
   * @param right right answers
   * @throws StatsException if they are negative or more than the trials
   */
  public static Telling of(TellingTrials run, int right) {
    int trials = run.number();
    Require.countUpTo("correct", right, "trials", trials);
    BinomialChoice guessing = BinomialChoice.of(trials, run.task().chance());
    Interval shares = ProportionInterval.exact(right, trials, CONFIDENCE);
    return new Telling(
        run,
        right,
        guessing.p(right, Tail.GREATER),
        guessing.p(right, Tail.LESS),
        run.told((double) right / trials),
        new Interval(run.told(shares.low()), run.told(shares.high())));
  }

  /** The verdict. */
  public TellingVerdict verdict() {
    if (run.least().isEmpty()) {
      return TellingVerdict.COULD_NOT_SHOW;
    }
    if (right >= run.least().getAsInt()) {
      return TellingVerdict.CAN_TELL;
    }
    return !fewer() && limits.high() < run.matters()
        ? TellingVerdict.CANNOT_AS_OFTEN
        : TellingVerdict.NOT_SETTLED;
  }

  /** How often, against what was declared to matter; empty unless the rider can tell. */
  public Optional<TellingVerdict.Often> often() {
    if (verdict() != TellingVerdict.CAN_TELL) {
      return Optional.empty();
    }
    return Optional.of(
        limits.low() > run.matters()
            ? TellingVerdict.Often.MORE
            : limits.high() < run.matters()
                ? TellingVerdict.Often.LESS
                : TellingVerdict.Often.OPEN);
  }

  /**
   * True if so few are right that guessing rarely gives as few: something was turned round, so
   * nothing is settled.
   */
  public boolean fewer() {
    return pFewer <= TellingTrials.LEVEL;
  }

  /** d′ with its 95 % interval. */
  public Sensitivity sensitivity() {
    return Sensitivity.ofChoices(run.task(), run.number(), right);
  }

  /** An interval of the number of right answers: exact limits of their share, times the trials. */
  public Interval rightLimits(double confidence) {
    Interval shares = ProportionInterval.exact(right, run.number(), confidence);
    return new Interval(shares.low() * run.number(), shares.high() * run.number());
  }
}
