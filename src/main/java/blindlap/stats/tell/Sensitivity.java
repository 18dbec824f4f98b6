package blindlap.stats.tell;

import blindlap.fault.Require;
import blindlap.fault.StatsException;
import blindlap.stats.distribution.Interval;
import blindlap.stats.distribution.NormalCurve;
import blindlap.stats.distribution.ProportionInterval;
import blindlap.stats.distribution.Quantiles;

/**
 * d′ estimated from answers, with standard error and 95 % interval.
 *
 * @param proportion share of right answers; NaN for same-or-other
 * @param dPrime distance of the percepts in their standard deviations; NaN if all answers are right
 * @param criterion response bias; NaN but for same-or-other
 * @param standardError delta-method standard error of d′; NaN where it is not defined
 * @param interval95 95 % interval of d′; an end is NaN where there is no finite one
 */
public record Sensitivity(
    double proportion, double dPrime, double criterion, double standardError, Interval interval95) {

  /**
   * From right answers in a choice task: d′ solves the task's curve; standard error √(p(1 −
   * p)/trials) over the slope of the curve; interval = Clopper-Pearson ends through the inverse
   * curve.
   *
   * @throws StatsException if there is no trial or more are right than there were trials
   */
  public static Sensitivity ofChoices(Discrimination task, int trials, int correct) {
    if (trials < 1) {
      throw new StatsException("trials", "must be at least 1, but is " + trials + ".");
    }
    Require.countUpTo("correct", correct, "trials", trials);
    double p = (double) correct / trials;
    double dPrime = task.dPrime(p);
    double error = dPrime > 0 ? Math.sqrt(p * (1 - p) / trials) / task.slope(dPrime) : Double.NaN;
    Interval share = ProportionInterval.CLOPPER_PEARSON.of(correct, trials);
    Interval interval = new Interval(task.dPrime(share.low()), task.dPrime(share.high()));
    return new Sensitivity(p, dPrime, Double.NaN, error, interval);
  }

  /**
   * From yes-no answers (same or other, A or not A): d′ = Φ⁻¹(h) − Φ⁻¹(f), criterion −(Φ⁻¹(h) +
   * Φ⁻¹(f))/2; standard error of Gourevitch &amp; Galanter (1967), Psychometrika 32:25. If any
   * count is 0, ½ is added to all four (log-linear rule).
   *
   * @throws StatsException if a count is negative or there was no signal or no noise trial
   */
  public static Sensitivity ofSameOrOther(
      int hits, int misses, int falseAlarms, int correctRejections) {
    Require.countUpTo("hits", hits, "int", Integer.MAX_VALUE);
    Require.countUpTo("misses", misses, "int", Integer.MAX_VALUE);
    Require.countUpTo("false_alarms", falseAlarms, "int", Integer.MAX_VALUE);
    Require.countUpTo("correct_rejections", correctRejections, "int", Integer.MAX_VALUE);
    if (hits == 0 && misses == 0) {
      throw new StatsException("hits", "and \"misses\" are both 0; there was no such trial.");
    }
    if (falseAlarms == 0 && correctRejections == 0) {
      throw new StatsException(
          "false_alarms", "and \"correct_rejections\" are both 0; there was no such trial.");
    }
    boolean empty = hits == 0 || misses == 0 || falseAlarms == 0 || correctRejections == 0;
    double more = empty ? 0.5 : 0;
    double signals = (double) hits + misses + 2 * more;
    double noises = (double) falseAlarms + correctRejections + 2 * more;
    double h = (hits + more) / signals;
    double f = (falseAlarms + more) / noises;
    double zh = Quantiles.normal(h);
    double zf = Quantiles.normal(f);
    double error = Math.sqrt(variance(h, zh, signals) + variance(f, zf, noises));
    double dPrime = zh - zf;
    return new Sensitivity(
        Double.NaN, dPrime, -(zh + zf) / 2, error, Interval.normal95(dPrime, error));
  }

  private static double variance(double share, double quantile, double n) {
    double density = NormalCurve.density(quantile);
    return share * (1 - share) / (n * density * density);
  }
}
