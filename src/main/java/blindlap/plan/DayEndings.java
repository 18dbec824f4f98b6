package blindlap.plan;

import blindlap.stats.power.DayPower;
import blindlap.stats.power.VerdictOdds;
import java.util.ArrayList;
import java.util.List;

/** How days end by formula and by simulation, for each true difference that is gone through. */
final class DayEndings {
  private DayEndings() {}

  static List<DayAnswer.Ending> byFormula(DayBases.Base base, DayTerms terms) {
    DayPower power = base.power();
    return power != null && terms.comparable() && base.orders().attainableLevel() > 0
        ? each(terms, (truth, sd) -> power.odds(truth, terms.margin(), sd))
        : List.of();
  }

  static List<DayAnswer.Ending> of(DaySimulation simulation, DayTerms terms) {
    return simulation instanceof DaySimulation.Two two
        ? each(terms, (truth, sd) -> two.simulated().odds(truth, terms.margin(), sd))
        : List.of();
  }

  @FunctionalInterface
  private interface Odds {
    VerdictOdds of(double truth, double sd);
  }

  /** At the most that the noise may be, and at the least. */
  private static List<DayAnswer.Ending> each(DayTerms terms, Odds odds) {
    List<DayAnswer.Ending> endings = new ArrayList<>();
    NoiseKnown noise = terms.noise();
    for (double units : terms.truths()) {
      double truth = units * noise.sd();
      VerdictOdds most = odds.of(truth, noise.sd());
      VerdictOdds least = noise.split() ? odds.of(truth, noise.least()) : most;
      endings.add(new DayAnswer.Ending(terms.shown(truth), most, least));
    }
    return endings;
  }

  static List<DayDetail.PairEnding> ofPairs(DaySimulation simulation, DayTerms terms) {
    List<DayDetail.PairEnding> odds = new ArrayList<>();
    if (simulation instanceof DaySimulation.Many many) {
      double[] truths = terms.truths();
      int least = terms.truthsAtLeast().length;
      for (int i = 0; i < truths.length; i++) {
        odds.add(
            new DayDetail.PairEnding(
                terms.shown(truths[i] * terms.noise().sd()),
                many.simulated().odds(i),
                many.simulated().odds(i + least)));
      }
    }
    return odds;
  }
}
