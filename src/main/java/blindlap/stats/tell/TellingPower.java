package blindlap.stats.tell;

import blindlap.fault.Require;
import blindlap.fault.StatsException;
import java.util.EnumMap;
import java.util.Map;
import org.apache.commons.statistics.distribution.BinomialDistribution;

/**
 * What a run of trials can show before it is ridden (docs/method.md#telling-runs).
 *
 * @param run the trials
 * @param power chance of "can tell" if the rider tells in the declared share of trials
 * @param cannot chance of "cannot tell as often as would matter" if nothing is felt
 */
public record TellingPower(TellingTrials run, double power, double cannot) {
  /** Of a run. */
  public static TellingPower of(TellingTrials run) {
    TrialsPower shows = TrialsPower.of(run.number(), run.task().chance(), run.matters());
    return new TellingPower(run, shows.power(), shows.cannot());
  }

  /**
   * Exact probability of every verdict that can come up, if the rider tells in this share of trials
   * and guesses in the others.
   *
   * @param told 0 to 1
   * @throws StatsException if it is not
   */
  public Map<TellingVerdict, Double> rates(double told) {
    return rates(run, told);
  }

  private static Map<TellingVerdict, Double> rates(TellingTrials run, double told) {
    BinomialDistribution answers =
        BinomialDistribution.of(run.number(), run.rightShare(Require.proportion("told", told)));
    Map<TellingVerdict, Double> rates = new EnumMap<>(TellingVerdict.class);
    for (int right = 0; right <= run.number(); right++) {
      rates.merge(Telling.of(run, right).verdict(), answers.probability(right), Double::sum);
    }
    return rates;
  }
}
