package blindlap.review;

import blindlap.fault.Problem;
import blindlap.stats.compare.ManySetups;
import blindlap.stats.compare.TwoSetups;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * The primary measure looked at otherwise, beside the result as planned and never instead of it.
 *
 * @param kind what is done otherwise
 * @param stints the stints it is about
 * @param result the numbers of two setups; empty if none can be had
 * @param many the numbers of three and more setups; empty if none can be had
 * @param why the reason, where there is no result; empty otherwise
 */
public record Sensitivity(
    Kind kind,
    Set<Integer> stints,
    Optional<TwoSetups> result,
    Optional<ManySetups> many,
    Optional<Problem> why) {
  /** What is done otherwise. */
  public enum Kind {
    /** All ridden laps, void ones included. */
    ALL_RIDDEN,
    /** Without the stints in which the rider knew. */
    BLIND_BROKEN_MASKED,
    /** Without the stints on which another setup was on. */
    WRONG_FITS_MASKED,
    /** By what was really on: least squares, without p. */
    AS_FITTED
  }

  public Sensitivity {
    stints = java.util.Collections.unmodifiableSet(new TreeSet<>(stints));
  }

  /** True if only the estimate may be said. */
  public boolean estimateOnly() {
    return kind == Kind.AS_FITTED;
  }
}
