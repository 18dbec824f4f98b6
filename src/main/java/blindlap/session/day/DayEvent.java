package blindlap.session.day;

/** Events of the day on which words may be sealed where a helper seals them. */
public enum DayEvent {
  HELPER_CHANGED,
  COVER_OFF,
  BLIND_BROKEN
}
