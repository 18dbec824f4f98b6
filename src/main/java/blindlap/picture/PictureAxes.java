package blindlap.picture;

import blindlap.plan.Measure;
import blindlap.plot.Axis;
import blindlap.plot.Band;
import blindlap.review.DayRecord;
import blindlap.review.StintValues;
import blindlap.stats.compare.Scale;
import blindlap.wording.day.Figures;
import blindlap.wording.day.Words;
import java.util.List;

/**
 * Axes of a measure. Values and differences share one length a pixel, so on the ratio scale both
 * are drawn in hundredths of a logarithm, with zero at the mean of the first setup.
 */
final class PictureAxes {
  private static final Words WORDS = Words.of("pictures");

  private final Measure measure;
  private final double zero;

  private PictureAxes(Measure measure, double zero) {
    this.measure = measure;
    this.zero = zero;
  }

  /** Axes whose ratio scale is anchored at a value on the scale of the analysis. */
  static PictureAxes of(Measure measure, double zero) {
    return new PictureAxes(measure, zero);
  }

  private boolean ratio() {
    return measure.scale() == Scale.RATIO;
  }

  /** Where a value on the scale of the analysis is drawn. */
  double at(double value) {
    return ratio() ? 100 * (value - zero) : value;
  }

  /** How long a shift on the scale of the analysis is drawn. */
  double length(double shift) {
    return ratio() ? 100 * shift : shift;
  }

  /** Axis of the stints. */
  Axis values() {
    if (ratio()) {
      return new Axis(
          WORDS.say("axis.time", measure.name()),
          Axis.Counting.DECIMAL,
          (v, step) -> {
            double time = Math.exp(zero + v / 100);
            return Figures.time(time, decimals(time * step / 100)); // so far the next tick is off
          });
    }
    return plainValues();
  }

  /** Axis of values as recorded, whatever the scale of the analysis. */
  Axis plainValues() {
    return measure.kind().timed()
        ? new Axis(
            WORDS.say("axis.time", measure.name()),
            Axis.Counting.CLOCK,
            (v, step) -> Figures.time(v, decimals(step)))
        : new Axis(
            WORDS.say("axis.value", measure.name(), measure.unit()),
            Axis.Counting.DECIMAL,
            (v, step) -> Figures.number(v, decimals(step)));
  }

  private static int decimals(double step) {
    return step >= 1 ? 0 : (int) Math.ceil(-Math.log10(step) - 1e-9);
  }

  /** Axis of a difference. */
  Axis difference() {
    return new Axis(
        ratio() ? WORDS.say("axis.percent") : WORDS.say("axis.difference", unit()),
        Axis.Counting.DECIMAL,
        this::signed);
  }

  private String unit() {
    return switch (measure.kind()) {
      case LAP_TIME -> WORDS.say("axis.seconds", measure.unit());
      case SECTOR_TIME, LINE_SCALE, CATEGORY_SCALE, COUNT -> measure.unit();
    };
  }

  private String signed(double value, double step) {
    double said = ratio() ? 100 * Math.expm1(value / 100) : value;
    return Figures.signed(said, decimals(step));
  }

  /** Axis of the supposed difference. */
  Axis supposed(String of, String less) {
    return new Axis(
        WORDS.say("axis.supposed", ratio() ? "%" : unit(), of, less),
        Axis.Counting.DECIMAL,
        this::signed);
  }

  /** Axis of the share of orders. */
  static Axis share(String orders) {
    return new Axis(
        WORDS.say("axis.share", orders),
        Axis.Counting.DECIMAL,
        (v, step) -> {
          String text = Figures.number(v, decimals(step));
          return text.startsWith("0.") ? text.substring(1) : text;
        });
  }

  /** The worthwhile band. */
  static Band band(Measure measure, double halfWidth) {
    String declared = String.valueOf(measure.worthwhile());
    String unit = measure.scale() == Scale.RATIO ? "%" : measure.unit();
    return new Band(halfWidth, List.of(WORDS.say("band.1", declared, unit), WORDS.say("band.2")));
  }

  /**
   * Means of the setups with drift removed, on the scale of the analysis, so placed that their
   * distances are exactly the estimates.
   *
   * @param above estimate of each setup less the first
   */
  static double[] means(DayRecord day, StintValues stints, double[] above) {
    double sum = 0;
    double shift = 0;
    int n = 0;
    double[] values = stints.values();
    for (int i = 0; i < values.length; i++) {
      if (!Double.isNaN(values[i])) {
        sum += values[i];
        shift += above[day.setup(i + 1)];
        n++;
      }
    }
    double first = n == 0 ? 0 : (sum - shift) / n;
    double[] means = new double[above.length];
    for (int i = 0; i < means.length; i++) {
      means[i] = first + above[i];
    }
    return means;
  }
}
