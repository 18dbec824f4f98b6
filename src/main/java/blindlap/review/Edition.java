package blindlap.review;

/**
 * Editions of the method (docs/method.md#editions). Findings are computed anew each time they are
 * looked at; the edition says by which rules, so that a mended rule never changes an old finding in
 * silence. Raise {@link #CURRENT} whenever a rule changes that the figures or the verdict of a
 * primary measure hang on. Only the first edition was never recorded, see {@link RecordedFinding}.
 */
public final class Edition {
  /** Sessions unsealed before editions were recorded. */
  public static final int FIRST = 1;

  /** The edition of this program. */
  public static final int CURRENT = 3;

  private Edition() {}
}
