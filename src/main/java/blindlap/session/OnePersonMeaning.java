package blindlap.session;

import blindlap.fault.Problem;
import blindlap.plan.Plan;
import blindlap.seal.Masks;
import java.util.List;
import java.util.Optional;

/** Whether what an entry of a day without a helper says can be, given the plan. */
final class OnePersonMeaning implements OnePersonVisitor<Optional<Problem>> {
  private final Plan plan;

  OnePersonMeaning(Plan plan) {
    this.plan = plan;
  }

  @Override
  public Optional<Problem> setupShown(SetupShown fact) {
    return PlanPlaces.stint(plan, fact.stint()).or(() -> PlanPlaces.setup(plan, fact.setup()));
  }

  /** One past the last stint stands what was found out later. */
  @Override
  public Optional<Problem> stintMounted(StintMounted fact) {
    return fact.stint() == HelperEntry.closing(plan)
        ? Optional.empty()
        : PlanPlaces.stint(plan, fact.stint());
  }

  @Override
  public Optional<Problem> masksSealed(MasksSealed fact) {
    return Optional.empty();
  }

  @Override
  public Optional<Problem> masksGuessed(MasksGuessed fact) {
    return fact.setups().isEmpty() ? Optional.empty() : mapping(fact.setups());
  }

  @Override
  public Optional<Problem> masksRead(MasksRead fact) {
    return mapping(fact.setups());
  }

  @Override
  public Optional<Problem> oneStintShown(OneStintShown fact) {
    return PlanPlaces.stint(plan, fact.stint());
  }

  @Override
  public Optional<Problem> oneStintAnswered(OneStintAnswered fact) {
    return PlanPlaces.stint(plan, fact.stint());
  }

  private Optional<Problem> mapping(List<Integer> setups) {
    int count = plan.setups().size();
    return Masks.isMapping(setups, count)
        ? Optional.empty()
        : Optional.of(Problem.of(MeaningFault.NO_MAPPING, "", setups.size(), count));
  }
}
