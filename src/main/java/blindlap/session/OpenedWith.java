package blindlap.session;

/** How a seal was opened. */
public enum OpenedWith {
  PHRASE,
  SHEET,
  /** By the notebook itself, from a covered order; since version 5. */
  COVER
}
