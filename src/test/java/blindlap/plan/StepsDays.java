package blindlap.plan;

import java.util.List;

/** Steps days for tests: the sample's plan with one setup and levels in place of its two. */
public final class StepsDays {
  private StepsDays() {}

  /** Four clicks of rebound within typed limits, 16 stints. */
  public static Plan clicks() {
    return Plans.with(text("levels: [4, 7, 10, 13], least: 2, most: 16", 16));
  }

  /** Rebound at these levels, in blocks that hold each once. */
  public static Plan clicks(List<Integer> levels, int stints) {
    return Plans.with(text("levels: " + levels, stints));
  }

  /** The fields of a plan with what stands in steps_day, rebound unless it says otherwise. */
  public static String text(String stepsDay, int stints) {
    return """
    kind: steps day
    question: Which rebound is quickest on Quarry loop?
    setups: [{name: Shock K, component: rear shock}]
    steps_day: {setting: rebound, unit: clicks from closed, %s}
    protocol: null
    looks: null
    differences_reason: null
    stints: %d
    """
        .formatted(stepsDay, stints);
  }
}
