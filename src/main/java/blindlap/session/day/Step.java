package blindlap.session.day;

/** Where a session stands. It only moves forward, or to abandoned. */
public enum Step {
  COMMITTED,
  RIDING,
  CUT_SHORT,
  DAY_CLOSED,
  REVIEW_CLOSED,
  UNSEALED,
  REPORTED,
  ABANDONED;

  /** True while laps may be recorded. */
  public boolean day() {
    return switch (this) {
      case COMMITTED, RIDING, CUT_SHORT -> true;
      case DAY_CLOSED, REVIEW_CLOSED, UNSEALED, REPORTED, ABANDONED -> false;
    };
  }

  /** True while nobody may see the key. */
  public boolean sealed() {
    return switch (this) {
      case COMMITTED, RIDING, CUT_SHORT, DAY_CLOSED, REVIEW_CLOSED, ABANDONED -> true;
      case UNSEALED, REPORTED -> false;
    };
  }
}
