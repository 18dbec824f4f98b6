package blindlap.stats.compare;

import blindlap.stats.order.Sampling;
import java.math.BigInteger;

/**
 * One difference after drift with its exact confidence curve: of two setups, or from the lowest to
 * the highest of several levels.
 */
public interface OneDifference {
  /** Number of admissible orders, whether walked or sampled. */
  BigInteger count();

  /** The estimated difference, in the unit of the values. */
  double estimate();

  /** Information of the ridden order on it. */
  double c();

  /** Stint-to-stint standard deviation after drift and difference, with {@link #df()}. */
  double noiseSd();

  /** Degrees of freedom of the noise: stints used less nuisance columns less 1. */
  int df();

  /** Number of stints used. */
  int used();

  /** True if nothing is left to vary: no test is possible. */
  boolean noVariation();

  /** True if the reference set was sampled. */
  boolean sampled();

  /** How the reference set was made. */
  Sampling sampling();

  /** Monte-Carlo standard error of a p-value; 0 where the set was walked whole. */
  double pError(double p);

  /** The confidence curve; without variation every order counts at every shift. */
  ConfidenceCurve curve();

  /** The verdict for shifts −D and +D. */
  Verdict verdict(double worthwhileLow, double worthwhileHigh);
}
