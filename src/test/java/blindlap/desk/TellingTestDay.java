package blindlap.desk;

import blindlap.plan.TellingTask;
import java.util.Locale;

/** Telling runs for tests: two clicks of one shock's rebound, or two shocks. */
public final class TellingTestDay {
  /** Five triangles. */
  public static final String TRIANGLES = plan("task: triangle, trials: 5");

  /** Six duo-trios. */
  public static final String DUO_TRIOS = plan("task: duo-trio, trials: 6");

  /** Six two-choices. */
  public static final String TWO_CHOICES =
      plan("task: two-choice, trials: 6, attribute: grip in corners, more: 6 clicks");

  private TellingTestDay() {}

  /**
   * The day of {@link TestDay#EIGHT} with trials between two settings of one shock.
   *
   * @param run fields of telling_run
   */
  public static String plan(String run) {
    String eight = TestDay.EIGHT;
    String setups =
        """
        question: Can R. Lind feel three clicks?
        setups:
          - name: 9 clicks
            settings:
              - {name: compression, value: 9, unit: clicks, tolerance: 0}
          - name: 6 clicks
            settings:
              - {name: compression, value: 6, unit: clicks, tolerance: 0}
        kind: telling run
        telling_run: {%s}
        laps: {warm_up: 1, settling: 0, scored: 1}
        """
            .formatted(run);
    String rider = eight.substring(eight.indexOf("rider:"), eight.indexOf("setups:"));
    String bike = eight.substring(eight.indexOf("bike:"), eight.indexOf("measures:"));
    return setups + rider + bike + "blinding: {helper: M. Oster, cover: Cloth over the shock}\n";
  }

  /** Trials between 9 and 11 clicks of one shock, counted out at every handling. */
  public static String levels(TellingTask task, int trials) {
    return plan(
        task,
        trials,
        "9 clicks",
        "one_setting: {setting: rebound, unit: clicks, levels: [9, 11], least: 2, most: 16, source:"
            + " p. 12}",
        """
        setups:
          - name: Shock K
            settings:
              - {name: sag, value: 26, unit: "%", tolerance: 1, readings: 3}
        """);
  }

  /** Trials between two shocks. */
  public static String shocks(TellingTask task, int trials) {
    String eight = TestDay.EIGHT;
    return plan(
        task,
        trials,
        "Shock K",
        "",
        eight.substring(eight.indexOf("setups:"), eight.indexOf("bike:")));
  }

  /** A run with a timetable, and with a lap time and two scales of every lap besides. */
  public static String scored(String plan) {
    return plan
        + """
        measures:
          - {name: lap time, kind: lap time, unit: s, role: secondary}
          - {name: harshness, kind: line scale, unit: points, role: secondary, low_words: none at all, high_words: unbearable}
          - {name: trust, kind: category scale, unit: points, role: secondary, low_words: none, high_words: complete}
        timetable: {zone: Europe/Vienna, start: "06:00", daylight_end: "23:00", lap: 1, climb: 1, swap: 2, scoring: 1, lap_budget: 90}
        """;
  }

  private static String plan(
      TellingTask task, int trials, String more, String setting, String setups) {
    String words = task.name().toLowerCase(Locale.ROOT).replace('_', '-');
    String attribute =
        task == TellingTask.TWO_CHOICE
            ? ", attribute: grip in the rocks, more: %s".formatted(more)
            : "";
    String one = setting.isEmpty() ? "" : ", " + setting;
    return """
    question: Can R. Lind tell them apart on Quarry loop?
    rider: R. Lind
    trail: Quarry loop
    day: 2026-11-14
    kind: telling run
    telling_run: {task: %s, trials: %d%s%s}
    override: the paper is looked at
    %slaps: {warm_up: 1}
    blinding: {helper: M. Oster, cover: Cloth over the shock}
    """
        .formatted(words, trials, attribute, one, setups);
  }
}
