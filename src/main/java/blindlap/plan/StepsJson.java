package blindlap.plan;

import java.util.Map;
import org.jspecify.annotations.Nullable;

/** One setting in a plan's tree: its levels are the plan's setups and stand there. */
final class StepsJson {
  private StepsJson() {}

  /** Since version 8, left out where the plan is none, so that other plans keep their bytes. */
  static void put(Map<String, Object> tree, @Nullable StepsDay steps) {
    if (steps != null) {
      tree.put("steps_day", fields(steps));
    }
  }

  static Map<String, Object> fields(StepsDay steps) {
    return JsonText.object(
        "setup", steps.setup(),
        "setup_id", steps.setupId(),
        "setting", steps.setting(),
        "unit", steps.unit(),
        "way", JsonText.word(steps.way()),
        "least", JsonText.number(steps.least()),
        "most", JsonText.number(steps.most()),
        "source", steps.source(),
        "low", JsonText.number(steps.low()),
        "high", JsonText.number(steps.high()));
  }
}
