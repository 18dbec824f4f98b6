package blindlap.session.day;

/** Kinds of departures from the plan that anyone may note. */
public enum DeviationKind {
  COVER_OFF,
  TIMEKEEPER_KNOWS_KEY,
  HELPER_CHANGED,
  /** One more lap than was agreed to, with the reason. */
  LAP_CAP,
  OTHER,
  /** Whoever scored a measure knows the key; what is said is the measure. Since version 4. */
  SCORER_KNOWS_KEY,
  /**
   * The rider rode without the helper's hand-over on a day on which the helper uses the page. Since
   * version 4.
   */
  WITHOUT_HAND_OVER,
  /** The bike was handed over before a handling's time had passed. Since version 4. */
  EARLY_HAND_OVER
}
