package blindlap.calibration;

import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.sampling.distribution.ZigguratSampler;

/**
 * The eleven kinds of noise a day is simulated with, in units of the standard deviation within a
 * setup; t = (i + ½)/N runs over the day. Unequal scatter is scaled to a mean square of 1.
 */
enum NoiseScenario {
  WHITE("white"),
  LINEAR("linear drift"),
  QUADRATIC("bent drift"),
  LEARNING("learning"),
  AR_3("AR(1) .3"),
  AR_6("AR(1) .6"),
  RANDOM_WALK("random walk"),
  T3("t, 3 df"),
  SKEW("skew"),
  OUTLIERS("outlier laps"),
  UNEQUAL("B scatters twice A");

  private final String text;

  NoiseScenario(String text) {
    this.text = text;
  }

  String text() {
    return text;
  }

  /** True if the null hypothesis of the test is strictly true without a difference. */
  boolean sharpNull() {
    return this != UNEQUAL;
  }

  /** One day of noise. */
  double[] day(int[] order, UniformRandomProvider source) {
    int n = order.length;
    ZigguratSampler.NormalizedGaussian normal = ZigguratSampler.NormalizedGaussian.of(source);
    double[] y = new double[n];
    double before = normal.sample();
    double walk = 0;
    for (int i = 0; i < n; i++) {
      double e = normal.sample();
      double t = (i + 0.5) / n;
      switch (this) {
        case WHITE -> y[i] = e;
        case LINEAR -> y[i] = e + 2 * t;
        case QUADRATIC -> y[i] = e + 2 * (2 * t - 1) * (2 * t - 1);
        case LEARNING -> y[i] = e + 3 * Math.exp(-t * n / 4);
        case AR_3, AR_6 -> {
          double rho = this == AR_3 ? 0.3 : 0.6;
          before = i == 0 ? e : rho * before + Math.sqrt(1 - rho * rho) * e;
          y[i] = before;
        }
        case RANDOM_WALK -> {
          walk += 0.35 * normal.sample();
          y[i] = 0.9 * e + walk;
        }
        case T3 -> {
          double a = normal.sample();
          double b = normal.sample();
          double c = normal.sample();
          y[i] = e / Math.sqrt((a * a + b * b + c * c) / 3) / Math.sqrt(3);
        }
        case SKEW -> y[i] = (exponential(source) + exponential(source) - 2) / Math.sqrt(2);
        case OUTLIERS -> y[i] = e + (source.nextInt(12) == 0 ? 4 * exponential(source) : 0);
        case UNEQUAL -> y[i] = e * (order[i] == 1 ? 2 : 1) / Math.sqrt(2.5);
      }
    }
    return y;
  }

  private static double exponential(UniformRandomProvider source) {
    return -Math.log1p(-source.nextDouble());
  }
}
