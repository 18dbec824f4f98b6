package blindlap.review;

import blindlap.fault.Problem;
import blindlap.plan.Measure;
import blindlap.stats.compare.ManySetups;
import blindlap.stats.compare.OneDifference;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * A measure looked at otherwise, beside the result as planned and never instead of it: the primary,
 * and any other of which values were set aside.
 *
 * @param kind what is done otherwise
 * @param stints the stints it is about
 * @param result the numbers of two setups; empty if none can be had
 * @param many the numbers of three and more setups; empty if none can be had
 * @param why the reason, where there is no result; empty otherwise
 * @param aside which of the values that were set aside, from 1; 0 where it is not about these
 */
public record Sensitivity(
    Kind kind,
    Set<Integer> stints,
    Optional<OneDifference> result,
    Optional<ManySetups> many,
    Optional<Problem> why,
    int aside) {
  /** What is done otherwise. */
  public enum Kind {
    /** Drift alone taken out, covariates left in. */
    WITHOUT_COVARIATES,
    /** All ridden laps, void ones included. */
    ALL_RIDDEN,
    /** Without void laps, where all ridden laps carry the verdict. */
    VOIDS_LEFT_OUT,
    /** With the values that other machines recorded and that do not count. */
    SET_ASIDE,
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

  /** The values that it is about, masks left aside. */
  public StintValues values(DayRecord day, Measure measure) {
    return switch (kind) {
      case ALL_RIDDEN -> StintValues.of(day, measure, StintValues.Laps.ALL_RIDDEN);
      case SET_ASIDE -> StintValues.others(day, measure, aside);
      case VOIDS_LEFT_OUT -> StintValues.of(day, measure, StintValues.Laps.NOT_VOID);
      case WITHOUT_COVARIATES, BLIND_BROKEN_MASKED, WRONG_FITS_MASKED, AS_FITTED ->
          StintValues.counted(day, measure);
    };
  }

  /** What is taken out, with the values it is taken out of, masks left aside. */
  public TakenOut takenOut(DayRecord day, Measure measure) {
    StintValues stints = values(day, measure);
    return kind == Kind.WITHOUT_COVARIATES
        ? TakenOut.driftAlone(measure, stints)
        : TakenOut.of(day, measure, stints);
  }

  /** True if its stints are left out. */
  public boolean masks() {
    return kind == Kind.BLIND_BROKEN_MASKED || kind == Kind.WRONG_FITS_MASKED;
  }

  /** True if only the estimate may be said. */
  public boolean estimateOnly() {
    return kind == Kind.AS_FITTED;
  }
}
