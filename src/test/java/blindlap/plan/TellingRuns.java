package blindlap.plan;

/** Telling runs for tests: the sample's plan with trials in place of its comparison. */
public final class TellingRuns {
  private TellingRuns() {}

  /** Fifteen triangles. */
  public static Plan triangles() {
    return Plans.with(text("task: triangle"));
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
