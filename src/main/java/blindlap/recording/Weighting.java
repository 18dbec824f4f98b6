package blindlap.recording;

import blindlap.fault.StatsException;
import org.apache.commons.math3.complex.Complex;

/**
 * How strongly a person feels a vibration of a frequency: magnitude of the transfer function that a
 * standard fixes (docs/method.md#vibration). Seat and feet: ISO 2631-1:1997, annex A; hands: ISO
 * 5349-1:2001, annex A. The constants are from memory; the printed tables agree to rounding.
 */
public enum Weighting {
  /** Up and down, seat and feet. */
  WK(0.4, 100, 12.5, 0.63, new Step(2.37, 0.91, 3.35, 0.91)),
  /** Forth and sideways, seat and feet. */
  WD(0.4, 100, 2, 0.63, Step.NONE),
  /** Hands, every direction. */
  WH(6.31, 1258.9, 15.915, 0.64, Step.NONE);

  private record Step(double from, double fromQuality, double to, double toQuality) {
    static final Step NONE = new Step(1, 1, 1, 1);
  }

  private final double low;
  private final double high;
  private final double transition;
  private final double quality;
  private final Step step;

  Weighting(double low, double high, double transition, double quality, Step step) {
    this.low = low;
    this.high = high;
    this.transition = transition;
    this.quality = quality;
    this.step = step;
  }

  /**
   * The factor at exactly one frequency.
   *
   * @param hertz above 0
   * @throws StatsException if it is not
   */
  public double factor(double hertz) {
    if (!(hertz > 0)) {
      throw new StatsException("hz", "must be above 0, but is " + hertz + ".");
    }
    Complex s = new Complex(0, hertz);
    Complex band =
        s.multiply(s)
            .divide(secondOrder(s, low))
            .multiply(high * high)
            .divide(secondOrder(s, high));
    Complex sinking = s.divide(transition).add(1).divide(resonance(s, transition, quality));
    Complex rising =
        resonance(s, step.from, step.fromQuality)
            .divide(resonance(s, step.to, step.toQuality))
            .multiply(step.from * step.from / (step.to * step.to));
    return band.multiply(sinking).multiply(rising).abs();
  }

  /** s² + √2·f·s + f². */
  private static Complex secondOrder(Complex s, double f) {
    return s.multiply(s).add(s.multiply(Math.sqrt(2) * f)).add(f * f);
  }

  /** 1 + s/(Q·f) + (s/f)². */
  private static Complex resonance(Complex s, double f, double q) {
    return s.divide(f).pow(2).add(s.divide(q * f)).add(1);
  }
}
