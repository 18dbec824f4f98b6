package blindlap.plan;

import blindlap.stats.distribution.Quantiles;
import blindlap.stats.order.Drift;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * The least plan that shows a declared difference on 8 of 10 days: fewest stints over all protocols
 * for as many setups, of equal numbers the plan's own rule. Every number of stints is tried from
 * the first that could do, so that nothing smaller is missed.
 */
final class LeastPlan {
  /** A little below what no t test at .05 can do with, whatever its orders. */
  private static final double SURELY_TOO_FEW = 0.99;

  /** The formula is too hopeful for few orders; beyond this it need not be simulated to refuse. */
  private static final double FORMULA_SLACK = 1.15;

  /**
   * A rule with a least trend efficiency is one for short days: its orders grow beyond counting in
   * time (463 937 nodes at 60 stints), and blocks show as much there.
   */
  private static final int SHORT_DAY = 24;

  private final DayBases bases;
  private final List<Protocol> protocols;

  LeastPlan(DayBases bases, List<Protocol> protocols) {
    this.bases = bases;
    this.protocols = List.copyOf(protocols);
  }

  /** Empty if no number of stints that anyone rides shows it. */
  Optional<DayAnswer.Least> of(Plan plan, Drift drift, DayTerms terms) {
    Compared compared = Compared.of(plan).orElse(null);
    if (compared == null || compared.setups() < 2 || !plan.kind().measured()) {
      return Optional.empty();
    }
    double wanted = terms.margin() / terms.noise().sd();
    List<Protocol> tried = new ArrayList<>(List.of(plan.protocol()));
    protocols.stream()
        .filter(plan::suits)
        .filter(p -> !p.equals(plan.protocol()))
        .forEach(tried::add);
    DayAnswer.@Nullable Least best = null;
    for (Protocol protocol : tried) {
      int most = best == null ? Rule.MOST_STINTS : best.stints() - 1;
      int stints = fewest(protocol, compared, most, drift, wanted);
      if (stints > 0) {
        double unit = bases.difference(protocol, compared, stints, drift);
        best = new DayAnswer.Least(protocol, stints, terms.shown(unit * terms.noise().sd()));
      }
    }
    return Optional.ofNullable(best);
  }

  /** Fewest stints of a protocol up to a number; 0 if none do. */
  private int fewest(Protocol protocol, Compared compared, int most, Drift drift, double wanted) {
    int setups = compared.setups();
    Integer block = protocol.block();
    int step = Math.max(1, block == null ? setups : block);
    int from = (int) Math.ceil(SURELY_TOO_FEW * bound(compared, wanted) / step);
    int last = protocol.minTrendEfficiency() == null ? most : Math.min(most, SHORT_DAY);
    for (int stints = Math.max(1, from) * step; stints <= last; stints += step) {
      DayBases.Base base = bases.of(protocol, compared, stints, drift);
      if (base != null
          && base.unitDifference() <= FORMULA_SLACK * wanted
          && bases.difference(protocol, compared, stints, drift) <= wanted) {
        return stints;
      }
    }
    return 0;
  }

  /** Stints that a test with known noise and no drift would need. */
  private static double bound(Compared compared, double wanted) {
    int setups = compared.setups();
    int tests = compared.levels() == null ? setups * (setups - 1) / 2 : 1;
    double shift = Quantiles.normal(1 - 0.025 / tests) + Quantiles.normal(DayAnswers.POWER);
    if (compared.levels() != null) {
      return shift * shift / (compared.spread() * wanted * wanted);
    }
    return 2.0 * setups * shift * shift / (wanted * wanted);
  }
}
