package blindlap.desk;

import blindlap.exchange.PlanReader;
import blindlap.exchange.Protocols;
import blindlap.plan.Plan;
import blindlap.plan.PlanCheck;
import blindlap.plan.Problem;
import blindlap.stats.Assignments;
import blindlap.stats.OrderSet;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * A plan file as read, with everything that is wrong with it and what its orders are worth. Commits
 * nothing.
 *
 * @param plan the plan; empty if the file cannot be read
 * @param problems mistakes of the file and of the plan
 * @param orders what the set of orders is worth; empty where there is no valid rule
 */
public record PlanPreview(Optional<Plan> plan, List<Problem> problems, Optional<OrderSet> orders) {
  public PlanPreview {
    problems = List.copyOf(problems);
  }

  /** Reads a plan file's text. */
  public static PlanPreview of(String text, Protocols protocols) {
    PlanReader.Reading reading = PlanReader.read(text, protocols);
    Plan plan = reading.plan();
    List<Problem> problems = new ArrayList<>(reading.problems());
    if (plan == null) {
      return new PlanPreview(Optional.empty(), problems, Optional.empty());
    }
    if (problems.isEmpty()) {
      problems.addAll(PlanCheck.problems(plan));
    }
    return new PlanPreview(Optional.of(plan), problems, Optional.ofNullable(orders(plan)));
  }

  private static @Nullable OrderSet orders(Plan plan) {
    if (plan.kind() == Plan.Kind.NOISE_RUN) {
      return null;
    }
    try {
      Assignments set = plan.rule().assignments();
      return set.count().signum() == 0 ? null : OrderSet.of(set);
    } catch (IllegalArgumentException contradiction) {
      // PlanCheck has already said so in words.
      return null;
    }
  }
}
