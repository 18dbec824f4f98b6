package blindlap.screen.plan;

import blindlap.plan.Plan;
import blindlap.wording.TrialsWords;
import java.util.List;

/**
 * What numbers of trials can show.
 *
 * @param heads heads of the columns
 * @param rows a row for each number, the plan's own among them; none of other plans
 * @param lines the same in sentences, where there is no room for a table
 */
record PlanTrials(List<String> heads, List<TrialsWords.Row> rows, List<String> lines) {
  static final PlanTrials NONE = new PlanTrials(List.of(), List.of(), List.of());

  PlanTrials {
    heads = List.copyOf(heads);
    rows = List.copyOf(rows);
    lines = List.copyOf(lines);
  }

  static PlanTrials of(Plan plan) {
    return TrialsWords.of(plan)
        .map(words -> new PlanTrials(words.heads(), words.rows(), words.table()))
        .orElse(NONE);
  }
}
