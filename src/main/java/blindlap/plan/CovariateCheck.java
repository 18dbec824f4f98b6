package blindlap.plan;

import blindlap.stats.order.Nuisance;
import java.util.List;
import java.util.Set;

/** What must be right with the covariates of a plan (docs/method.md#covariates). */
final class CovariateCheck {
  private final Plan plan;
  private final Set<String> reserved;
  private final FoundProblems problems;

  /**
   * @param reserved column names of lap files
   */
  CovariateCheck(Plan plan, Set<String> reserved, FoundProblems problems) {
    this.reserved = reserved;
    this.plan = plan;
    this.problems = problems;
  }

  void all() {
    List<Covariate> covariates = plan.covariates();
    if (covariates.size() > Nuisance.MOST) {
      problems.add(PlanFault.TOO_MANY_COVARIATES, "covariates", covariates.size(), Nuisance.MOST);
    }
    if (!covariates.isEmpty() && plan.kind() == Plan.Kind.NOISE_RUN) {
      problems.add(PlanFault.COVARIATE_OF_NOISE_RUN, "covariates", covariates.get(0).name());
    }
    for (int i = 0; i < covariates.size(); i++) {
      named(i);
      said(covariates.get(i), "covariates[" + (i + 1) + "]");
    }
  }

  private void named(int i) {
    Covariate covariate = plan.covariates().get(i);
    String where = "covariates[" + (i + 1) + "]";
    String name = covariate.name();
    if (name.isBlank()) {
      problems.add(PlanFault.MISSING_FIELD, where + ".name");
      return;
    }
    if (reserved.stream().anyMatch(covariate::called)) {
      problems.add(PlanFault.RESERVED_COVARIATE, where, name);
    }
    if (plan.measures().stream().anyMatch(m -> covariate.called(m.name()))
        || plan.covariates().subList(0, i).stream().anyMatch(c -> covariate.called(c.name()))) {
      problems.add(PlanFault.SAME_COVARIATE, where, name);
    }
  }

  private void said(Covariate covariate, String where) {
    String name = covariate.name();
    if (covariate.unit().isBlank()) {
      problems.add(PlanFault.COVARIATE_WITHOUT_UNIT, where + ".unit", name);
    }
    if (covariate.reason().isBlank()) {
      problems.add(PlanFault.COVARIATE_WITHOUT_REASON, where + ".reason", name);
    }
    if (covariate.perLap() && !covariate.mayBePerLap()) {
      problems.add(
          covariate.by() == Covariate.By.RIDER
              ? PlanFault.RIDER_PER_LAP
              : PlanFault.COVARIATE_PER_LAP,
          where + ".per",
          name);
    } else if (covariate.by() == Covariate.By.RIDER
        && covariate.kind() == Covariate.Kind.CONTROL_SECTOR) {
      problems.add(PlanFault.RIDER_TIMES_SECTOR, where + ".by", name);
    }
    if (covariate.correlation() != null
        && (covariate.correlation().signum() < 0 || covariate.correlation().doubleValue() >= 1)) {
      problems.add(
          PlanFault.CORRELATION_RANGE,
          where + ".correlation",
          name,
          covariate.correlation().toPlainString());
    }
  }
}
