package blindlap.stats.compare;

import blindlap.fault.StatsException;

/**
 * A watched harm (docs/method.md#watched-harm), read from the counts of the confidence curve,
 * outside the family of the other measures. One p looks both ways; a harm is shown by that p
 * adjusted for the number of watched measures, and ruled out by a one-sided 5 % test of the measure
 * alone.
 *
 * @param bAgainstA whether B does harm, compared with A
 * @param aAgainstB whether A does harm, compared with B
 * @param p of this measure alone, both ways in one
 * @param adjusted the same, adjusted for the number of watched measures
 */
public record HarmTest(Finding bAgainstA, Finding aAgainstB, double p, double adjusted) {
  /**
   * Least stints with a value on each setup for a harm to be ruled out: three and three can have
   * been placed in 20 ways, so that one of them has p = .05; two and two in only six.
   */
  public static final int LEAST_STINTS = 3;

  private static final double LEVEL = 0.05;

  /** Sums of p that are counts over K may lie this far off. */
  private static final double ROUNDING = 1e-9;

  /** What a watched harm comes to. */
  public enum Finding {
    /** The counts exclude every harm below D, whatever the other watched measures say. */
    SHOWN("harm of D or more shown"),
    /** The counts exclude a harm of D and more, for this measure alone. */
    RULED_OUT("harm of D or more ruled out"),
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
   * p of "neither setup does harm of D or more": twice the smaller of the two one-sided p, at most
   * 1.
   *
   * @param less the shift −D, below 0
   * @param more the shift D, above 0
   * @throws StatsException unless less &lt; 0 &lt; more
   */
  public static double p(ConfidenceCurve curve, double less, double more) {
    if (!(less < 0 && more > 0)) {
      throw new StatsException("worthwhile", "must be above 0.");
    }
    return Math.min(1, 2 * Math.min(curve.pGreater(more), curve.pLess(less)));
  }

  /**
   * @param curve curve of B minus A on the scale of the analysis
   * @param more the shift of B that is a harm of D if more is harm, above 0
   * @param less the shift of B that is a harm of D if less is harm, below 0
   * @param direction which way harm lies
   * @param adjusted {@link #p} of this measure, adjusted for all that are watched
   * @param fewest stints with a value on the setup that has fewer of them
   * @throws StatsException unless less &lt; 0 &lt; more
   */
  public static HarmTest of(
      ConfidenceCurve curve,
      double less,
      double more,
      Direction direction,
      double adjusted,
      int fewest) {
    double p = p(curve, less, more);
    boolean enough = fewest >= LEAST_STINTS;
    return of(
            direction,
            curve.pGreater(more) <= curve.pLess(less),
            p,
            enough && curve.fallsShortOf(more, LEVEL),
            enough && curve.exceeds(less, LEVEL))
        .adjustedTo(adjusted);
  }

  /**
   * A harm from its tests, adjusted for itself alone.
   *
   * @param upward true if the smaller one-sided p says that B is above A by more than D
   * @param p both ways in one
   * @param notMore true if B above A by D and more is ruled out
   * @param notLess true if B below A by D and more is ruled out
   */
  public static HarmTest of(
      Direction direction, boolean upward, double p, boolean notMore, boolean notLess) {
    boolean shown = p <= LEVEL + ROUNDING;
    Finding up = found(shown && upward, notMore);
    Finding down = found(shown && !upward, notLess);
    return direction == Direction.MORE_IS_HARM
        ? new HarmTest(up, down, p, p)
        : new HarmTest(down, up, p, p);
  }

  /** The same adjusted for the number of watched measures: a harm may be shown no more. */
  public HarmTest adjustedTo(double value) {
    boolean still = value <= LEVEL + ROUNDING;
    return new HarmTest(kept(bAgainstA, still), kept(aAgainstB, still), p, value);
  }

  private static Finding kept(Finding found, boolean shown) {
    return found == Finding.SHOWN && !shown ? Finding.NOT_SETTLED : found;
  }

  private static Finding found(boolean shown, boolean ruledOut) {
    if (shown) {
      return Finding.SHOWN;
    }
    return ruledOut ? Finding.RULED_OUT : Finding.NOT_SETTLED;
  }

  /** True if a harm of D or more is shown, of either setup. */
  public boolean shown() {
    return bAgainstA == Finding.SHOWN || aAgainstB == Finding.SHOWN;
  }

  /** True if a harm of D or more is ruled out of both setups. */
  public boolean ruledOut() {
    return bAgainstA == Finding.RULED_OUT && aAgainstB == Finding.RULED_OUT;
  }
}
