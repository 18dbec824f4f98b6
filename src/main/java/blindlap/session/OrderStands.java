package blindlap.session;

/** What keeps the order of a session from being seen, in one word. */
public enum OrderStands {
  /** An open noise run has no order. */
  NONE,
  /** On the rider's own machine, hidden from accidental sight and never called sealed. */
  COVERED,
  /** Under the helper's or the friend's phrase. */
  SEALED,
  /** The review is closed, and the key was opened. */
  OPENED;

  /** How the order of a session stands. */
  public static OrderStands of(SessionState state) {
    if (!state.hasKey()) {
      return NONE;
    }
    if (state.unsealed()) {
      return OPENED;
    }
    return state.covered() ? COVERED : SEALED;
  }
}
