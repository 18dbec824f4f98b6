package blindlap.session.day;

/** Where values came from. */
public enum Source {
  SCREEN,
  PAPER,
  FILE
}
