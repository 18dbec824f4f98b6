package blindlap.plan;

import blindlap.stats.compare.CutShort;
import blindlap.stats.order.Drift;
import blindlap.stats.power.DayPower;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.BooleanSupplier;

/** Works out what is left of a day that is cut short or loses stints. */
final class DayCuts {
  private static final double LEVEL = 0.05 + 1e-12;

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
    int most = Math.min(lost, base.set().stints());
    return base.steps() == null
        ? CutShort.losing(base.set(), most, drift, cancelled)
        : CutShort.losingOfTrend(base.set(), most, drift, cancelled);
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
      CutShort left =
          base.steps() == null
              ? CutShort.after(base.set(), after, drift)
              : CutShort.afterOfTrend(base.set(), after, drift);
      boolean possible = left.smallestP() <= LEVEL;
      double unit = Double.NaN;
      if (base.pairs() != null) {
        unit = ofPairs(bases, after);
      } else if (possible) {
        unit = base.steps() == null ? ofTwo(after) : ofLevels(bases, after);
      }
      // Some orders have ridden one setup only by then: no formula tells what the rest can show.
      double known = Double.isInfinite(unit) ? Double.NaN : unit;
      cuts.add(new DayLeft.Cut(after, left, terms.shown(known * terms.noise().sd())));
    }
    return cuts;
  }

  private double ofTwo(int after) {
    return DayPower.of(base.set(), ridden(base.set().stints(), after), drift)
        .formula()
        .difference(1, DayAnswers.POWER);
  }

  /** Blocks are drawn each for itself, so that whole ones are a shorter day of the same rule. */
  private double ofPairs(DayBases bases, int after) {
    if (!plan.protocol().wholeBlocks(after)) {
      return Double.NaN;
    }
    DayBases.Base shorter =
        bases.of(plan.protocol(), Compared.of(plan.setups().size()), after, drift);
    return shorter == null ? Double.NaN : shorter.unitDifference();
  }

  /**
   * Of levels the blocks not yet begun need not be gone through. Within a block it is left open
   * where the formula does not hold: so few stints show hardly anything.
   */
  private double ofLevels(DayBases bases, int after) {
    Compared compared = Compared.of(plan).orElseThrow();
    Protocol protocol = plan.protocol();
    if (protocol.wholeBlocks(after)) {
      return bases.difference(protocol, compared, after, drift);
    }
    Integer block = protocol.block();
    int whole = block == null ? plan.stints() : (after + block - 1) / block * block;
    DayBases.Base begun =
        protocol.wholeBlocks(whole) ? bases.of(protocol, compared, whole, drift) : base;
    if (begun == null) {
      return Double.NaN;
    }
    DayPower power =
        DayPower.ofLevels(
            begun.set(), compared.numbers(), ridden(begun.set().stints(), after), drift);
    return power.formulaHolds() ? power.formula().difference(1, DayAnswers.POWER) : Double.NaN;
  }

  private static boolean[] ridden(int stints, int after) {
    boolean[] ridden = new boolean[stints];
    Arrays.fill(ridden, 0, after, true);
    return ridden;
  }
}
