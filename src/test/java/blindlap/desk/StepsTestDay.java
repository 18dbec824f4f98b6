package blindlap.desk;

/** Steps days for tests: clicks of one shock at three levels, nine stints in blocks of three. */
public final class StepsTestDay {
  /** Clicks, with sag to be measured besides, scales, a guess and a timetable. */
  public static final String NINE = plan("levels: [4, 7, 10], least: 2, most: 16", 9);

  private StepsTestDay() {}

  /**
   * The day of {@link TestDay#EIGHT} with one setup and the levels of its rebound.
   *
   * @param stepsDay fields of steps_day beside setting and unit
   */
  public static String plan(String stepsDay, int stints) {
    String eight = TestDay.EIGHT;
    String setups =
        """
        setups:
          - name: Shock K
            settings:
              - {name: sag, value: 26, unit: "%%", tolerance: 1, readings: 3}
        kind: steps day
        steps_day: {setting: rebound, unit: clicks, source: p. 12, %s}
        """
            .formatted(stepsDay);
    return eight.substring(0, eight.indexOf("setups:"))
        + setups
        + eight
            .substring(eight.indexOf("bike:"))
            .replace("protocol: eight-stints\nstints: 8", "stints: " + stints)
            .replace("lap_budget: 12", "lap_budget: 40")
            .replace("16:38", "20:00");
  }
}
