package blindlap.desk;

/** Telling runs for tests: two clicks of one shock, with a helper and a timetable. */
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
}
