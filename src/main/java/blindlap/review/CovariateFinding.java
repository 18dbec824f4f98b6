package blindlap.review;

import blindlap.plan.Covariate;
import blindlap.stats.compare.ManySetups;
import blindlap.stats.compare.OneDifference;
import java.util.List;
import java.util.Optional;

/**
 * What became of a declared covariate in the primary measure, and its check: the covariate itself
 * compared by the same orders (docs/method.md#covariates). The check changes no verdict, whatever
 * it says.
 *
 * @param covariate what was declared
 * @param leftOut why it is not used; empty where it is
 * @param without stints with a value of the primary measure that lack it, from 1
 * @param check the covariate of two setups compared; empty if it could not be
 * @param many the same of three and more setups
 * @param correlation with the primary measure after drift and setups; NaN where there is none
 */
public record CovariateFinding(
    Covariate covariate,
    Optional<TakenOut.Why> leftOut,
    List<Integer> without,
    Optional<OneDifference> check,
    Optional<ManySetups> many,
    double correlation) {
  /** At or below this p of the check it is said that the setup may have touched the covariate. */
  public static final double TOUCHED = 0.10;

  public CovariateFinding {
    without = List.copyOf(without);
  }

  /** Two-sided p of the check; NaN where there is none. */
  public double p() {
    if (check.isPresent()) {
      return check.get().noVariation() ? 1 : check.get().curve().p(0);
    }
    return many.map(ManySetups::p).orElse(Double.NaN);
  }

  /** True if the setup may have touched it. */
  public boolean touched() {
    return p() <= TOUCHED;
  }
}
