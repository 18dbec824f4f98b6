package blindlap.session;

/** How a seal was opened. */
public enum OpenedWith {
  PHRASE,
  SHEET
}
