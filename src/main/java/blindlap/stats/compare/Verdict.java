package blindlap.stats.compare;

/**
 * What a day says about its primary measure (docs/method.md#verdict): is there a difference, and is
 * it at least as large as the worthwhile difference D? Read from counts of the confidence curve: a
 * two-sided test at 5 % against 0 and one-sided 5 % tests against +D and −D (Schuirmann 1987, J.
 * Pharmacokinetics and Biopharmaceutics 15:657).
 */
public enum Verdict {
  REAL_AND_WORTHWHILE("real and worthwhile"),
  REAL_BUT_SMALL("real but small"),
  NO_WORTHWHILE_DIFFERENCE("no worthwhile difference"),
  DIRECTION_KNOWN("not settled: direction known"),
  NOT_SETTLED("not settled"),
  NO_VARIATION("no variation"),
  COULD_NOT_SHOW("this plan could not show anything");

  private static final double LEVEL = 0.05;

  private final String text;

  Verdict(String text) {
    this.text = text;
  }

  /** The fixed string of files and requests, never translated. */
  public String text() {
    return text;
  }

  /** The fixed string where the verdict is one of a trend over levels, never translated. */
  public String textOfTrend() {
    return this == NO_WORTHWHILE_DIFFERENCE ? "no worthwhile trend" : text;
  }

  /** False where more days could still change what is known. */
  public boolean settled() {
    return switch (this) {
      case DIRECTION_KNOWN, NOT_SETTLED -> false;
      case REAL_AND_WORTHWHILE,
          REAL_BUT_SMALL,
          NO_WORTHWHILE_DIFFERENCE,
          NO_VARIATION,
          COULD_NOT_SHOW ->
          true;
    };
  }

  /**
   * Reads the verdict from a curve.
   *
   * @param curve the curve of B minus A
   * @param worthwhileLow the shift −D, below 0
   * @param worthwhileHigh the shift +D, above 0
   * @throws IllegalArgumentException unless low &lt; 0 &lt; high
   */
  public static Verdict of(ConfidenceCurve curve, double worthwhileLow, double worthwhileHigh) {
    boolean real = curve.exceeds(0, LEVEL / 2) || curve.fallsShortOf(0, LEVEL / 2);
    return of(curve, worthwhileLow, worthwhileHigh, real);
  }

  /**
   * The same where another test than the curve's says whether there is a difference.
   *
   * @param real true if it is shown
   */
  public static Verdict of(
      ConfidenceCurve curve, double worthwhileLow, double worthwhileHigh, boolean real) {
    if (!(worthwhileLow < 0 && worthwhileHigh > 0)) {
      throw new IllegalArgumentException("a worthwhile difference must be above 0");
    }
    boolean big =
        curve.estimate() > 0
            ? curve.exceeds(worthwhileHigh, LEVEL)
            : curve.estimate() < 0 && curve.fallsShortOf(worthwhileLow, LEVEL);
    boolean within =
        curve.fallsShortOf(worthwhileHigh, LEVEL) && curve.exceeds(worthwhileLow, LEVEL);
    if (real && big) {
      return REAL_AND_WORTHWHILE;
    }
    if (within) {
      return real ? REAL_BUT_SMALL : NO_WORTHWHILE_DIFFERENCE;
    }
    return real ? DIRECTION_KNOWN : NOT_SETTLED;
  }

  /** Finds the verdict of a fixed string, of setups or of a trend. */
  public static Verdict parse(String text) {
    for (Verdict verdict : values()) {
      if (verdict.text.equals(text) || verdict.textOfTrend().equals(text)) {
        return verdict;
      }
    }
    throw new IllegalArgumentException("no verdict is called \"" + text + "\"");
  }
}
