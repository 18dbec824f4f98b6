package blindlap.sample;

import blindlap.recording.Position;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;

/** One lap of an invented trail: when the rider was where is known to the millisecond. */
public final class InventedRide {
  /**
   * What a recorder wrote down.
   *
   * @param seconds after the beginning of the ride, true time
   */
  public record Point(double seconds, Position at) {}

  private final InventedTrail trail;
  private final double[] seconds;

  /**
   * Rides a lap.
   *
   * @param slower share of the time by which a metre of the trail takes longer than its ground
   *     allows, by metres from the beginning of the line: what a setup, a tired rider or a good lap
   *     does
   */
  public InventedRide(InventedTrail trail, DoubleUnaryOperator slower) {
    this.trail = trail;
    this.seconds = new double[(int) Math.floor(trail.line().length()) + 1];
    for (int metre = 1; metre < seconds.length; metre++) {
      double middle = metre - 0.5;
      seconds[metre] = seconds[metre - 1] + (1 + slower.applyAsDouble(middle)) / trail.pace(middle);
    }
  }

  /** The truth: seconds from the beginning of the line to so many metres on it. */
  public double secondsTo(double metres) {
    int whole = Math.min((int) Math.floor(metres), seconds.length - 2);
    return seconds[whole] + (metres - whole) * (seconds[whole + 1] - seconds[whole]);
  }

  /** The truth: seconds from the start gate to the finish gate. */
  public double lap() {
    return secondsTo(trail.finish()) - secondsTo(trail.start());
  }

  /** When the end of the line is reached. */
  double end() {
    return seconds[seconds.length - 1];
  }

  double metresAt(double second) {
    int found = Arrays.binarySearch(seconds, second);
    int after = found >= 0 ? found + 1 : -found - 1;
    int whole = Math.max(0, Math.min(after - 1, seconds.length - 2));
    return whole + (second - seconds[whole]) / (seconds[whole + 1] - seconds[whole]);
  }

  /**
   * What a recorder writes down of it, its errors independent from point to point and equal in all
   * directions.
   *
   * @param random of the errors, and of when within a step the recorder begins
   * @param step seconds from point to point
   * @param error standard deviation of a place along each axis, in metres
   */
  public List<Point> recorded(Random random, double step, double error) {
    List<Point> points = new ArrayList<>();
    for (double second = step * random.nextDouble(); second < end(); second += step) {
      Position where = trail.line().at(Math.min(metresAt(second), trail.line().length()));
      points.add(new Point(second, moved(where, random, error)));
    }
    return points;
  }

  private static Position moved(Position at, Random random, double error) {
    double north = error * random.nextGaussian();
    double east = error * random.nextGaussian();
    double perDegree = 110_600;
    return new Position(
        at.latitude() + north / perDegree,
        at.longitude() + east / (perDegree * Math.cos(Math.toRadians(at.latitude()))));
  }
}
