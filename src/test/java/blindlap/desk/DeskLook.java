package blindlap.desk;

import blindlap.session.SessionState;

/** Looks into the helper's records of a test's day. */
public final class DeskLook {
  private DeskLook() {}

  /** How many corrections the record of a stint carries. */
  public static int corrections(HelperDay day, SessionState state, int stint) {
    return day.records().of(state).stream()
        .filter(entry -> entry.stint() == stint)
        .mapToInt(entry -> entry.corrections().size())
        .sum();
  }
}
