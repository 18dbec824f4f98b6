package blindlap.review;

import blindlap.fault.Unusable;
import blindlap.plan.Covariate;
import blindlap.plan.Measure;
import blindlap.stats.compare.ManySetups;
import blindlap.stats.compare.OneDifference;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.Nuisance;
import blindlap.stats.order.Sampling;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Says of every declared covariate what became of it, and compares it by the same orders. */
final class CovariateChecks {
  private final DayRecord day;
  private final Assignments set;
  private final Measure primary;
  private final StintValues stints;
  private final int[] order;

  /**
   * @param stints of the primary measure, nothing masked for want of a covariate
   */
  CovariateChecks(DayRecord day, Assignments set, Measure primary, StintValues stints) {
    this.day = day;
    this.set = set;
    this.primary = primary;
    this.stints = stints;
    this.order = day.key().setups();
  }

  List<CovariateFinding> found() {
    TakenOut out = TakenOut.of(day, primary, stints);
    return day.plan().covariates().stream().map(covariate -> found(covariate, out)).toList();
  }

  private CovariateFinding found(Covariate covariate, TakenOut out) {
    double[] values = TakenOut.values(day, covariate);
    Optional<TakenOut.Why> leftOut = Optional.ofNullable(out.leftOut().get(covariate));
    List<Integer> without = new ArrayList<>();
    boolean[] use = stints.valid();
    for (int i = 0; i < values.length; i++) {
      if (use[i] && Double.isNaN(values[i])) {
        without.add(i + 1);
        use[i] = false;
      }
    }
    Optional<OneDifference> two = Optional.empty();
    Optional<ManySetups> many = Optional.empty();
    if (leftOut.isEmpty()) {
      try {
        if (day.plan().oneDifference()) {
          two = Optional.of(compare(values));
        } else {
          many = Optional.of(compareMany(values));
        }
      } catch (Unusable tooFew) {
        // The measure itself is refused for the same reason, with a sentence.
      }
    }
    return new CovariateFinding(
        covariate,
        leftOut,
        without,
        two,
        many,
        leftOut.isEmpty()
            ? CovariateSeen.goesWith(order, primary, values, use, stints)
            : Double.NaN);
  }

  /** On every stint on which it was said: the check hangs on no value of the measure. */
  private OneDifference compare(double[] values) {
    return OfDay.compare(
        day.plan(), set, order, values, said(values), Nuisance.of(primary.drift()));
  }

  private ManySetups compareMany(double[] values) {
    return ManySetups.compare(
        set, order, values, said(values), Nuisance.of(primary.drift()), Sampling.PREFERRED);
  }

  private static boolean[] said(double[] values) {
    boolean[] said = new boolean[values.length];
    for (int i = 0; i < said.length; i++) {
      said[i] = !Double.isNaN(values[i]);
    }
    return said;
  }
}
