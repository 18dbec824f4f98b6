package blindlap.paper;

/** The plan that strains a page most: four setups with long names and as many stints as wanted. */
public final class FourSetups {
  private static final String LONG = "Shock with the longest name that fits on a strip of tape ";

  private static final String FOUR =
      """
      question: Which of four is quickest?
      rider: R. Lind-Oberhauser von der langen Strecke
      trail: Quarry loop from the upper car park to the lower bridge
      day: 2026-11-14
      setups:
        - {name: "%1$sA", steps: [Fit it, Measure it]}
        - {name: "%1$sB", steps: [Fit it, Measure it]}
        - {name: "%1$sC", cautions: ["%1$s"]}
        - {name: "%1$sD", limits: [{what: bolts, value: 12 N.m, source: "%1$s"}]}
      measures:
        - {name: lap time, kind: lap time, unit: s, role: primary, worthwhile: 0.5}
        - {name: "grip in the loose rocks after the second gate", kind: line scale, unit: points, low_words: none at all, high_words: all I could ask for on such a trail as this}
        - {name: harshness, kind: line scale, unit: points, low_words: none, high_words: unbearable}
        - {name: trust, kind: category scale, unit: points, low_words: none, high_words: complete}
        - {name: dabs, kind: count, unit: a lap}
      protocol: four-setups
      stints: %2$d
      """;

  private FourSetups() {}

  /** The plan file of so many stints. */
  public static String plan(int stints) {
    return FOUR.formatted(LONG, stints);
  }
}
