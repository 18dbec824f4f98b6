package blindlap.plan;

import blindlap.stats.power.VerdictOdds;
import java.util.ArrayList;
import java.util.List;

/** How days end by formula and by simulation, for each true difference that is gone through. */
final class DayEndings {
  private DayEndings() {}

  static List<DayAnswer.Ending> byFormula(DayBases.Base base, DayTerms terms) {
    List<DayAnswer.Ending> odds = new ArrayList<>();
    if (base.power() != null && terms.comparable() && base.orders().attainableLevel() > 0) {
      double sd = terms.noise().sd();
      for (double truth : terms.truths()) {
        odds.add(
            new DayAnswer.Ending(
                terms.shown(truth * sd), base.power().odds(truth * sd, terms.margin(), sd)));
      }
    }
    return odds;
  }

  static List<DayAnswer.Ending> of(DaySimulation simulation, DayTerms terms) {
    List<DayAnswer.Ending> odds = new ArrayList<>();
    if (simulation instanceof DaySimulation.Two two) {
      double sd = terms.noise().sd();
      for (double truth : terms.truths()) {
        VerdictOdds each = two.simulated().odds(truth * sd, terms.margin(), sd);
        odds.add(new DayAnswer.Ending(terms.shown(truth * sd), each));
      }
    }
    return odds;
  }

  static List<DayDetail.PairEnding> ofPairs(DaySimulation simulation, DayTerms terms) {
    List<DayDetail.PairEnding> odds = new ArrayList<>();
    if (simulation instanceof DaySimulation.Many many) {
      double[] truths = terms.truths();
      for (int i = 0; i < truths.length; i++) {
        odds.add(
            new DayDetail.PairEnding(
                terms.shown(truths[i] * terms.noise().sd()), many.simulated().odds(i)));
      }
    }
    return odds;
  }
}
