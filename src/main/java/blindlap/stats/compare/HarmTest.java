package blindlap.stats.compare;

import blindlap.fault.StatsException;

/**
 * A watched harm (docs/method.md#watched-harm): two one-sided 5 % tests against the smallest harm D
 * that matters, read from the counts of the confidence curve, outside the family of the other
 * measures.
 *
 * @param bAgainstA whether B does harm, compared with A
 * @param aAgainstB whether A does harm, compared with B
 */
public record HarmTest(Finding bAgainstA, Finding aAgainstB) {
  private static final double LEVEL = 0.05;

  /** What a watched harm comes to. */
  public enum Finding {
    /** The counts exclude every harm below D. */
    SHOWN("harm of D or more shown"),
    /** The counts exclude a harm of D and more. */
    ABSENT("no harm of D or more shown"),
    NOT_SETTLED("not settled");

    private final String text;

    Finding(String text) {
      this.text = text;
    }

    /** The fixed string of files and requests, never translated. */
    public String text() {
      return text;
    }
  }

  /** Which way a measure does harm. */
  public enum Direction {
    MORE_IS_HARM,
    LESS_IS_HARM
  }

  /**
   * @param curve curve of B minus A on the scale of the analysis
   * @param more the shift of B that is a harm of D if more is harm, above 0
   * @param less the shift of B that is a harm of D if less is harm, below 0
   * @param direction which way harm lies
   * @throws StatsException unless less &lt; 0 &lt; more
   */
  public static HarmTest of(ConfidenceCurve curve, double less, double more, Direction direction) {
    if (!(less < 0 && more > 0)) {
      throw new StatsException("worthwhile", "must be above 0.");
    }
    Finding up = upwards(curve, more);
    Finding down = downwards(curve, less);
    return direction == Direction.MORE_IS_HARM ? new HarmTest(up, down) : new HarmTest(down, up);
  }

  /** Is B − A at least {@code shift}, above 0? */
  private static Finding upwards(ConfidenceCurve curve, double shift) {
    if (curve.exceeds(shift, LEVEL)) {
      return Finding.SHOWN;
    }
    return curve.fallsShortOf(shift, LEVEL) ? Finding.ABSENT : Finding.NOT_SETTLED;
  }

  /** Is B − A at most {@code shift}, below 0? */
  private static Finding downwards(ConfidenceCurve curve, double shift) {
    if (curve.fallsShortOf(shift, LEVEL)) {
      return Finding.SHOWN;
    }
    return curve.exceeds(shift, LEVEL) ? Finding.ABSENT : Finding.NOT_SETTLED;
  }
}
