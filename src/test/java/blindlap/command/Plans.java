package blindlap.command;

/** Small invented plans for tests, with places to break them. */
final class Plans {
  private Plans() {}

  static final String SMALL =
      """
      question: Is Shock L quicker than Shock K?
      rider: R. Lind
      trail: Quarry loop
      day: 2026-11-14
      setups:
        - name: Shock K
        - name: Shock L
      measures:
        - {name: lap time, kind: lap time, unit: s, role: primary, worthwhile: 0.5}
        - {name: grip, kind: line scale, unit: points, low_words: none, high_words: full}
      protocol: eight-stints
      stints: 8
      """;

  /** A day of 24 stints with looks after the 12th and the 16th. */
  static final String LOOKS =
      SMALL.replace("protocol: eight-stints\nstints: 8\n", "stints: 24\nlooks: [12, 16]\n");

  /** Laps that fit {@link #SMALL}, whatever the order. */
  static String laps(int count) {
    StringBuilder csv = new StringBuilder("lap;lap time;grip\n");
    for (int lap = 1; lap <= count; lap++) {
      csv.append(lap).append(";1:3").append(lap % 5).append(".").append(lap).append(";");
      csv.append(40 + 3 * lap % 7).append("\n");
    }
    return csv.toString();
  }
}
