package blindlap.stats.tell;

/** What right answers in a run of trials allow to say (docs/method.md#telling-runs). */
public enum TellingVerdict {
  /** Guessing gives as many right answers in at most one run of twenty. */
  CAN_TELL,
  /** Guessing explains the answers, and telling as often as would matter does not. */
  CANNOT_AS_OFTEN,
  /** Neither. */
  NOT_SETTLED,
  /** Not even right answers in all trials would have been too many for guessing. */
  COULD_NOT_SHOW;

  /** How often a rider who can tell does so, against what was declared to matter. */
  public enum Often {
    /** More often than would matter. */
    MORE,
    /** Less often than would matter. */
    LESS,
    /** Either is possible. */
    OPEN
  }
}
