package blindlap.plot;

import blindlap.plot.surface.Face;
import java.util.ArrayList;
import java.util.List;

/**
 * Round values on an axis, as many as fit without their words touching.
 *
 * @param values the values, rising
 * @param step their distance
 */
record Ticks(List<Double> values, double step) {
  private static final double[] CLOCK_STEPS = {10, 15, 30, 60, 120, 300, 600, 900, 1800, 3600};

  Ticks {
    values = List.copyOf(values);
  }

  /** Ticks whose words, set in this face, stay apart along a horizontal axis. */
  static Ticks across(Scale scale, Axis axis, Face face) {
    double length = Math.abs(scale.to() - scale.from());
    for (int count = (int) Math.max(2, length / (2.6 * face.size())); count > 2; count--) {
      Ticks ticks = of(scale.low(), scale.high(), count, axis.kind());
      if (ticks.fit(scale, axis, face)) {
        return ticks;
      }
    }
    return of(scale.low(), scale.high(), 2, axis.kind());
  }

  /** Ticks for an upright axis with this least distance in pixels. */
  static Ticks upright(Scale scale, Axis axis, double distance) {
    double length = Math.abs(scale.to() - scale.from());
    int count = (int) Math.max(2, Math.floor(length / distance));
    return of(scale.low(), scale.high(), count, axis.kind());
  }

  /** At most {@code count} or so round values from low to high. */
  static Ticks of(double low, double high, int count, Axis.Counting kind) {
    double step = roundStep((high - low) / count, kind);
    List<Double> values = new ArrayList<>();
    long first = (long) Math.ceil(low / step - 1e-9);
    long last = (long) Math.floor(high / step + 1e-9);
    for (long i = first; i <= last; i++) {
      values.add(i * step + 0.0);
    }
    return new Ticks(values, step);
  }

  private boolean fit(Scale scale, Axis axis, Face face) {
    double edge = Double.NEGATIVE_INFINITY;
    for (double value : values) {
      double half = face.room(axis.number().say(value, step)) / 2;
      if (scale.at(value) - half < edge + 2 * face.size()) {
        return false;
      }
      edge = scale.at(value) + half;
    }
    return true;
  }

  private static double roundStep(double least, Axis.Counting kind) {
    if (kind == Axis.Counting.CLOCK && least > 5) {
      for (double step : CLOCK_STEPS) {
        if (step >= least) {
          return step;
        }
      }
    }
    if (kind == Axis.Counting.WHOLE && least <= 1) {
      return 1;
    }
    double power = Math.pow(10, Math.floor(Math.log10(least)));
    for (double factor : new double[] {1, 2, 5}) {
      if (factor * power >= least * (1 - 1e-9)) {
        return factor * power;
      }
    }
    return 10 * power;
  }
}
