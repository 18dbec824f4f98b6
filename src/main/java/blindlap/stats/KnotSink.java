package blindlap.stats;

/**
 * Turns the sums of an order, a = z'e, b = z'Wz_obs, c = z'Wz, into its knot and that of its mirror
 * image (METHOD 2), or counts it as "always".
 */
final class KnotSink implements PairSums {
  private static final double SAME = 1e-9;

  private final double estimate;
  private final double s;
  private final double noInformation;
  private final double snap;
  private double[] knots;
  private int size;
  private long always;

  KnotSink(int capacity, double estimate, double c, double scale) {
    this.knots = new double[capacity];
    this.estimate = estimate;
    this.s = Math.sqrt(c);
    this.noInformation = SAME * c;
    this.snap = SAME * scale;
  }

  @Override
  public void orderAndMirror(double a, double b, double c) {
    double alpha = 0;
    double beta = 0;
    if (c > noInformation) {
      double root = Math.sqrt(c);
      alpha = a / root;
      beta = b / root;
    }
    emit(-alpha, s - beta);
    emit(alpha, s + beta);
  }

  /** The observed order and its mirror image, for sampled reference sets. */
  void observedAndMirror() {
    orderAndMirror(0, s * s, s * s);
  }

  private void emit(double numerator, double denominator) {
    if (denominator <= SAME * s) {
      always++;
      return;
    }
    double offset = numerator / denominator;
    if (Math.abs(offset) <= snap) {
      offset = 0;
    }
    knots[size++] = estimate + offset;
  }

  ConfidenceCurve curve(double scale) {
    double[] exact = size == knots.length ? knots : java.util.Arrays.copyOf(knots, size);
    knots = new double[0];
    return new ConfidenceCurve(exact, always, estimate, scale);
  }
}
