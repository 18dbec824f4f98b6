package blindlap.compute;

import blindlap.plan.Plan;
import blindlap.plan.PlanJson;
import blindlap.plan.TellingRun;
import blindlap.stats.tell.TrialsPower;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;

/** What numbers of trials of a telling run can show, as JSON (docs/method.md#trials-planned). */
public final class TrialsJson {
  private static final ObjectMapper JSON = new ObjectMapper();

  private TrialsJson() {}

  /** The plan's own trials and others, rising; {@code least} is null where none reaches p = .05. */
  public static String write(Plan plan, TellingRun run) {
    ObjectNode root = JSON.createObjectNode();
    root.put("engine", Engine.version());
    root.put("plan", plan.title());
    root.put("task", PlanJson.word(run.task()));
    root.put("laps_a_trial", run.task().laps());
    root.put("chance", run.task().discrimination().chance());
    root.put("matters", run.matters());
    root.put("level", TrialsPower.LEVEL);
    ArrayNode trials = root.putArray("trials");
    for (TrialsPower row : run.table()) {
      ObjectNode node = trials.addObject();
      node.put("trials", row.trials()).put("laps", row.trials() * run.task().laps());
      node.put("least", row.least().isPresent() ? (Integer) row.least().getAsInt() : null);
      node.put("smallest_p", row.smallestP());
      node.put("power", row.power()).put("shows_nothing_felt", row.cannot());
      node.put("planned", row.trials() == run.trials());
    }
    try {
      return JSON.writerWithDefaultPrettyPrinter().writeValueAsString(root);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("trials are always JSON", e);
    }
  }
}
