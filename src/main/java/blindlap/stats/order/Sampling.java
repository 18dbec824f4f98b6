package blindlap.stats.order;

import blindlap.fault.StatsException;
import java.math.BigInteger;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;

/**
 * How a reference set is made: every order up to 2^22, beyond that a random sample that includes
 * the observed order (Phipson and Smyth 2010, SAGMB 9:39), unless exactness is required.
 *
 * @param exactRequired refuse what would have to be sampled
 * @param draws number of drawn pairs {order, mirror image} beyond the limit
 * @param seed of the stream the sample is drawn from; stated with the answer
 * @param wholeUpTo largest set that is walked whole: 2^22 orders of a day, 2^24 combinations of
 *     orders of a series; less in simulations only
 */
public record Sampling(boolean exactRequired, int draws, long seed, long wholeUpTo) {
  /** Largest set that is walked whole. */
  public static final long LARGEST_WALK = 1L << 22;

  /** Largest product of the sets of a series' days that is walked whole. */
  public static final long LARGEST_PRODUCT = 1L << 24;

  /** Sets up to 2^22 whole, larger ones by 9 999 draws. */
  public static final Sampling PREFERRED = new Sampling(false, 9_999, 20_251_101L);

  /** Products up to 2^24 combinations whole, larger ones by 999 999 draws; series only. */
  public static final Sampling OF_SERIES =
      new Sampling(false, 999_999, PREFERRED.seed(), LARGEST_PRODUCT);

  public Sampling {
    if (draws < 99 || draws > 10_000_000) {
      throw new StatsException("draws", "must lie between 99 and 10,000,000, not " + draws + ".");
    }
    if (wholeUpTo < 0 || wholeUpTo > LARGEST_PRODUCT) {
      throw new StatsException("whole_up_to", "must lie between 0 and " + LARGEST_PRODUCT + ".");
    }
  }

  /** Sets up to 2^22 orders whole. */
  public Sampling(boolean exactRequired, int draws, long seed) {
    this(exactRequired, draws, seed, LARGEST_WALK);
  }

  /** True if this set must be sampled. */
  public boolean samples(Assignments set) {
    return !set.atMost(wholeUpTo);
  }

  /** The stream of random numbers for this seed. */
  public UniformRandomProvider source() {
    return RandomSource.XO_RO_SHI_RO_128_PP.create(seed);
  }

  /**
   * @throws StatsException if exactness is required and the set is too large
   */
  public void check(Assignments set) {
    if (exactRequired && samples(set)) {
      BigInteger count = set.count();
      throw new StatsException(
          "exact",
          "is required, but the set has "
              + count
              + " orders and at most "
              + wholeUpTo
              + " are walked whole.");
    }
  }
}
