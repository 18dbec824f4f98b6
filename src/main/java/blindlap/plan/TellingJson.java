package blindlap.plan;

import java.util.Map;
import org.jspecify.annotations.Nullable;

/** A telling run in a plan's tree. */
final class TellingJson {
  private TellingJson() {}

  /** Left out where the plan is none, so that other plans keep their bytes. */
  static void put(Map<String, Object> tree, @Nullable TellingRun run) {
    if (run != null) {
      Map<String, Object> fields =
          JsonText.object(
              "task", JsonText.word(run.task()),
              "trials", JsonText.number(run.trials()),
              "matters", JsonText.number(run.matters()),
              "attribute", run.attribute(),
              "more", run.more());
      StepsDay setting = run.oneSetting();
      if (setting != null) {
        fields.put("one_setting", StepsJson.fields(setting));
      }
      tree.put("telling_run", fields);
    }
  }
}
