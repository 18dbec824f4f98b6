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
  SCORER_KNOWS_KEY
}
