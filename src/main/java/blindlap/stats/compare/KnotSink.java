package blindlap.stats.compare;

/**
 * Turns the sums of an order, a = z'e, b = z'Wz_obs, c = z'Wz, into its knot and that of its mirror
 * image (docs/method.md#confidence-curve), or counts it as "always".
 */
public final class KnotSink implements PairSums {
  private static final double SAME = 1e-9;

  private final double estimate;
  private final double s;
  private final double noInformation;
  private final double snap;

  /** Knots less the estimate. */
  private double[] offsets;

  private int size;
  private long always;

  public KnotSink(int capacity, double estimate, double c, double scale) {
    this.offsets = new double[capacity];
    this.estimate = estimate;
    this.s = Math.sqrt(c);
    this.noInformation = SAME * c;
    this.snap = SAME * scale;
  }

  /** α/(s − β) with α = a/√c and β = b/√c is a/(s√c − b). */
  @Override
  public void orderAndMirror(double a, double b, double c) {
    if (c > noInformation) {
      double reach = s * Math.sqrt(c);
      emit(-a, reach - b, reach);
      emit(a, reach + b, reach);
    } else {
      emit(0, s, s);
      emit(0, s, s);
    }
  }

  /** One order of a set whose mirror images are walked themselves, or do not belong to it. */
  void order(double a, double b, double c) {
    if (c > noInformation) {
      double reach = s * Math.sqrt(c);
      emit(-a, reach - b, reach);
    } else {
      emit(0, s, s);
    }
  }

  /** The observed order and its mirror image, for sampled reference sets. */
  public void observedAndMirror() {
    orderAndMirror(0, s * s, s * s);
  }

  private void emit(double numerator, double denominator, double reach) {
    if (denominator <= SAME * reach) {
      always++;
      return;
    }
    double offset = numerator / denominator;
    offsets[size++] = Math.abs(offset) <= snap ? 0 : offset;
  }

  public ConfidenceCurve curve(double scale) {
    double[] knots = KnotSort.sorted(offsets, size);
    offsets = new double[0];
    for (int i = 0; i < knots.length; i++) {
      knots[i] += estimate;
    }
    return new ConfidenceCurve(knots, always, estimate, scale);
  }
}
