package blindlap.session;

/** What a reason must be given for. */
public enum ReasonFor {
  CORRECTION,
  VOID_WITHDRAWN,
  CUT_SHORT,
  BLIND_BROKEN,
  ABANDONING,
  AMENDMENT,
  LAP_BEYOND_CAP,
  FINGERPRINT_GIVEN,
  SERIES_ENDED
}
