package blindlap.plan;

import blindlap.stats.look.PlannedLooks;
import blindlap.stats.order.Drift;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What looks save, by rule, looks and drift: each is simulated once and kept, since a plan is
 * answered anew whenever anything of it changes. Safe for use from several threads.
 */
final class LooksBook {
  private static final int KEPT = 50;
  private static final int DAYS = 2000;
  private static final long SEED = 20_261_127L;

  /** A day of 24 stints settles so much more often than not before it ends. */
  private static final double TIMES = 1.5;

  private record Asked(Rule rule, List<Integer> looks, Drift drift) {}

  private final RuleBook rules;
  private final Map<Asked, LooksShow> known =
      new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Asked, LooksShow> eldest) {
          return size() > KEPT;
        }
      };

  LooksBook(RuleBook rules) {
    this.rules = rules;
  }

  /** Empty where no looks are declared, or none of them is possible. */
  synchronized Optional<LooksShow> of(Plan plan) {
    FoundProblems problems = new FoundProblems();
    new LooksCheck(plan, problems).all();
    if (plan.looks().isEmpty() || problems.count() > 0) {
      return Optional.empty();
    }
    Drift drift = plan.primary().map(Measure::drift).orElse(Drift.LINE);
    return Optional.of(
        known.computeIfAbsent(new Asked(plan.rule(), plan.looks(), drift), this::of));
  }

  private LooksShow of(Asked asked) {
    PlannedLooks looks = new PlannedLooks(rules.of(asked.rule).set(), asked.looks, asked.drift);
    return new LooksShow(
        asked.looks, looks.never(), TIMES, looks.simulate(DAYS, TIMES, SEED, () -> false));
  }
}
