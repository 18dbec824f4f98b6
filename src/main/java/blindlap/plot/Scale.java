package blindlap.plot;

/**
 * Where values stand on an axis.
 *
 * @param low value at {@code from}
 * @param high value at {@code to}, above {@code low}
 * @param from pixel of the low end
 * @param to pixel of the high end; below {@code from} for an axis that points up
 */
record Scale(double low, double high, double from, double to) {
  Scale {
    if (!(low < high) || !Double.isFinite(high - low)) {
      throw new IllegalArgumentException("An axis cannot go from " + low + " to " + high);
    }
  }

  /** A scale whose ends leave a margin round the values, at least a little when all are equal. */
  static Scale around(double low, double high, double margin, double from, double to) {
    double span = high - low;
    double room = span > 0 ? span * margin : Math.max(Math.abs(high) * 0.01, 1e-6);
    return new Scale(low - room, high + room, from, to);
  }

  double at(double value) {
    return from + (value - low) * pixelsPerUnit();
  }

  /** As {@link #at} but kept on the axis. */
  double clampedAt(double value) {
    return at(Math.max(low, Math.min(high, value)));
  }

  boolean holds(double value) {
    return value >= low && value <= high;
  }

  double pixelsPerUnit() {
    return (to - from) / (high - low);
  }
}
