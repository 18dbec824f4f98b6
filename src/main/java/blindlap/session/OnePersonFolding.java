package blindlap.session;

import blindlap.plan.Plan;

/**
 * Applies the facts of a day without a helper. Of two entries of one kind, of one stint where they
 * have one, the first counts; but what was found out later of what was mounted grows.
 */
final class OnePersonFolding implements OnePersonVisitor<Boolean> {
  private final Folded folded;
  private final boolean reviewOpen;

  OnePersonFolding(Folded folded, boolean reviewOpen) {
    this.folded = folded;
    this.reviewOpen = reviewOpen;
  }

  @Override
  public Boolean setupShown(SetupShown fact) {
    return reviewOpen && folded.shown.putIfAbsent(fact.stint(), fact.setup()) == null;
  }

  @Override
  public Boolean stintMounted(StintMounted fact) {
    if (reviewOpen && later(fact.stint())) {
      folded.mounted.put(fact.stint(), fact.text());
      return true;
    }
    return reviewOpen && folded.mounted.putIfAbsent(fact.stint(), fact.text()) == null;
  }

  private boolean later(int stint) {
    Fact.PlanCommitted committed = folded.committed;
    Plan plan = committed == null ? null : committed.plan();
    return plan != null && stint == HelperEntry.closing(plan);
  }

  @Override
  public Boolean masksSealed(MasksSealed fact) {
    if (folded.masks != null) {
      return false;
    }
    folded.masks = fact.key();
    return true;
  }

  @Override
  public Boolean masksGuessed(MasksGuessed fact) {
    if (folded.masksGuessed != null || folded.masksRead != null) {
      return false;
    }
    folded.masksGuessed = fact;
    return true;
  }

  @Override
  public Boolean masksRead(MasksRead fact) {
    if (reviewOpen || folded.masksRead != null) {
      return false;
    }
    folded.masksRead = fact;
    return true;
  }

  @Override
  public Boolean oneStintShown(OneStintShown fact) {
    return reviewOpen
        && folded.oneStint.putIfAbsent(fact.stint(), new OneStint(fact.name(), null)) == null;
  }

  @Override
  public Boolean oneStintAnswered(OneStintAnswered fact) {
    OneStint shown = folded.oneStint.get(fact.stint());
    if (!reviewOpen || shown == null || !shown.open()) {
      return false;
    }
    folded.oneStint.put(fact.stint(), new OneStint(shown.name(), fact.riderSaw()));
    return true;
  }
}
