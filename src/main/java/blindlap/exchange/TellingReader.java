package blindlap.exchange;

import blindlap.plan.TellingRun;
import blindlap.plan.TellingTask;
import java.util.LinkedHashMap;
import java.util.Map;

/** Reads and writes what a telling run adds to a plan. */
final class TellingReader {
  private TellingReader() {}

  static TellingRun run(FieldReader f) {
    TellingTask task = f.option("task", TellingTask.class, TellingTask.TRIANGLE);
    return new TellingRun(
        task,
        f.integer("trials", task.usualTrials()),
        f.decimal("matters", "0.5"),
        f.text("attribute", ""),
        f.text("more", ""));
  }

  /** Leaves out of a committed plan's fields what follows from task and trials: rule and stints. */
  static void once(Map<String, Object> plan) {
    if (plan.get("telling_run") instanceof Map<?, ?> run
        && plan.get("protocol") instanceof Map<?, ?>) {
      plan.remove("protocol");
      plan.remove("stints");
      Map<String, Object> fields = new LinkedHashMap<>();
      run.forEach((name, value) -> fields.put(String.valueOf(name), value));
      plan.put("telling_run", fields);
    }
  }
}
