package blindlap.review;

/** What a reader must know beside the numbers of a measure (docs/method.md#who-gets-what). */
public enum Caveat {
  /** More than 30 % of the values are missing: estimate and interval only. */
  MISSING,
  /**
   * Whoever ended the day early knew what was on, and it was neither dark nor injury nor damage:
   * estimate and interval only.
   */
  ENDED_FREELY,
  /** Fewer than one count per stint: only very large ratios can be seen. */
  FEW_COUNTS,
  /** More than 30 % of the ratings lie near an end of the scale: the shift model fails there. */
  SCALE_END,
  /** Ratings lean on the lap before: differences are likely understated. */
  ANCHORED,
  /** A rating given by a rider who knew what was fitted. */
  UNBLINDED_RATING,
  /** A rating given by a rider who knew the label that was on. */
  LABELLED_RATING,
  /** Judged by someone who knew the key. */
  SCORER_KNEW,
  /** The day was stopped early by a look at the primary measure: estimate and interval only. */
  STOPPED_EARLY,
  /** A rating given by a rider who knew that no large difference had been found. */
  KNEW_NOTHING_LARGE,
  /** A rating given by a rider who knew that the setups differ. */
  KNEW_THEY_DIFFER
}
