package blindlap.plan;

import blindlap.stats.compare.CutShort;
import blindlap.stats.order.Drift;
import blindlap.stats.power.DayPower;
import blindlap.stats.power.Detectable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.BooleanSupplier;

/** Works out what is left of a day that is cut short or loses stints. */
final class DayCuts {
  private final Plan plan;
  private final DayBases.Base base;
  private final Drift drift;
  private final BooleanSupplier cancelled;

  DayCuts(Plan plan, DayBases.Base base, Drift drift, BooleanSupplier cancelled) {
    this.plan = plan;
    this.base = base;
    this.drift = drift;
    this.cancelled = cancelled;
  }

  DayLeft left(DayBases bases) {
    return new DayLeft(cuts(bases), losing(1), losing(2));
  }

  private CutShort losing(int lost) {
    stopIfCancelled();
    return CutShort.losing(base.set(), Math.min(lost, base.set().stints()), drift, cancelled);
  }

  private void stopIfCancelled() {
    if (cancelled.getAsBoolean() || Thread.currentThread().isInterrupted()) {
      throw new java.util.concurrent.CancellationException("the knobs were turned again");
    }
  }

  private List<DayLeft.Cut> cuts(DayBases bases) {
    DayTerms terms = DayTerms.of(plan);
    List<DayLeft.Cut> cuts = new ArrayList<>();
    int stints = base.set().stints();
    for (int after = 1; after <= stints; after++) {
      stopIfCancelled();
      CutShort left = CutShort.after(base.set(), after, drift);
      double difference = Double.NaN;
      if (base.power() != null && left.smallestP() <= 0.05 + 1e-12) {
        boolean[] ridden = new boolean[stints];
        Arrays.fill(ridden, 0, after, true);
        Detectable formula = DayPower.of(base.set(), ridden, drift).formula();
        difference = terms.shown(formula.difference(terms.noise().sd(), DayAnswers.POWER));
        // Some orders have ridden one setup only by then: no formula tells what the rest can show.
        difference = Double.isInfinite(difference) ? Double.NaN : difference;
      } else if (base.pairs() != null && plan.protocol().wholeBlocks(after)) {
        // Blocks are drawn each for itself, so that whole ones are a shorter day of the same rule.
        DayBases.Base shorter = bases.of(plan.protocol(), plan.setups().size(), after, drift);
        difference =
            shorter == null
                ? Double.NaN
                : terms.shown(shorter.unitDifference() * terms.noise().sd());
      }
      cuts.add(new DayLeft.Cut(after, left, difference));
    }
    return cuts;
  }
}
