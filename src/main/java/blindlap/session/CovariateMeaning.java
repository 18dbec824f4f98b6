package blindlap.session;

import blindlap.fault.Problem;
import blindlap.plan.Covariate;
import blindlap.plan.Plan;
import blindlap.session.day.CovariateAt;
import java.util.Optional;
import java.util.stream.Collectors;

/** Whether a plan has the covariate that an entry is about, said for what the entry says it for. */
final class CovariateMeaning {
  private CovariateMeaning() {}

  static Optional<Problem> problem(Plan plan, CovariateAt at) {
    Covariate covariate = plan.covariate(at.covariate()).orElse(null);
    if (covariate == null) {
      return Optional.of(
          Problem.of(
              MeaningFault.NO_SUCH_COVARIATE,
              "",
              at.covariate(),
              plan.covariates().stream().map(Covariate::name).collect(Collectors.joining(", "))));
    }
    return covariate.perLap() == at.lap() > 0
        ? Optional.empty()
        : Optional.of(Problem.of(MeaningFault.NOT_A_PLACE, "", at.covariate()));
  }
}
