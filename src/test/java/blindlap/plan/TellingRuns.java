package blindlap.plan;

/** Telling runs for tests: the sample's plan with trials in place of its comparison. */
public final class TellingRuns {
  private TellingRuns() {}

  /** Fifteen triangles. */
  public static Plan triangles() {
    return Plans.with(text("task: triangle"));
  }

  /** Fifteen triangles at 9 and 13 clicks of one setup's compression, within typed limits. */
  public static Plan levels() {
    return Plans.with(levels("task: triangle", "levels: [9, 13], least: 2, most: 16"));
  }

  /** The fields of a plan between two levels, compression in clicks unless it says otherwise. */
  public static String levels(String run, String setting) {
    String one = "one_setting: {setting: compression, unit: clicks from closed, %s}";
    return text(run + (run.isBlank() ? "" : ", ") + one.formatted(setting))
        .replaceFirst(
            "(?s)setups: .*?}\\]\n", "setups: [{name: Shock K, component: rear shock}]\n");
  }

  /** The fields of a plan with what stands in telling_run. */
  public static String text(String run) {
    return """
    kind: telling run
    question: Can R. Lind feel two clicks on Quarry loop?
    setups: [{name: 9 clicks, settings: [{name: rebound, value: 9, unit: clicks}]},
      {name: 11 clicks, settings: [{name: rebound, value: 11, unit: clicks}]}]
    telling_run: {%s}
    measures: null
    timetable: null
    noise: null
    looks: null
    covariates: null
    protocol: null
    stints: null
    laps: null
    differences_reason: null
    """
        .formatted(run);
  }
}
