package blindlap.sample;

import blindlap.recording.Position;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * A recorder that nobody owns: how often it writes a place down, how far off its places are, how
 * its clock goes, and where it loses its way.
 *
 * @param step seconds from point to point, on its clock
 * @param radius95 metres within which a place lies with 95 %, equal in all directions
 * @param hangs seconds over which errors hang together (an autoregression of first order); 0 if
 *     they are independent from point to point
 * @param offset seconds by which its clock is ahead
 * @param rate share by which its clock goes fast
 * @param losses when it writes nothing down
 */
public record InventedRecorder(
    double step, double radius95, double hangs, double offset, double rate, List<Loss> losses) {
  /** A radius of 95 % is that many standard deviations of one axis. */
  private static final double RADIUS_IN_SD = 2.45;

  /**
   * A time in which nothing is written down.
   *
   * @param from seconds of the day, true time
   * @param to seconds of the day
   */
  public record Loss(double from, double to) {
    boolean holds(double second) {
      return second >= from && second < to;
    }
  }

  /** One point a second, 95 % of places within 3 m, errors independent, a true clock. */
  public static final InventedRecorder PLAIN = new InventedRecorder(1, 3, 0, 0, 0, List.of());

  public InventedRecorder {
    losses = List.copyOf(losses);
  }

  /** The same with errors that hang together over so many seconds. */
  public InventedRecorder hanging(double seconds) {
    return new InventedRecorder(step, radius95, seconds, offset, rate, losses);
  }

  /** The same with a clock that is ahead, and goes fast by a share. */
  public InventedRecorder clock(double ahead, double fast) {
    return new InventedRecorder(step, radius95, hangs, ahead, fast, losses);
  }

  /** The same with so many seconds from point to point. */
  public InventedRecorder every(double seconds) {
    return new InventedRecorder(seconds, radius95, hangs, offset, rate, losses);
  }

  /** The same, but it loses its way. */
  public InventedRecorder losing(List<Loss> when) {
    return new InventedRecorder(step, radius95, hangs, offset, rate, when);
  }

  /** The same with places so far off. */
  public InventedRecorder within(double metres) {
    return new InventedRecorder(step, metres, hangs, offset, rate, losses);
  }

  /**
   * What its clock shows.
   *
   * @param second of the day, true time
   * @return seconds after the beginning of the day, on its clock
   */
  public double shows(double second) {
    return offset + second * (1 + rate);
  }

  /**
   * Records a day. Errors begin anew with each leg of the day, from a stream of its own, so that
   * what lies between laps changes nothing of how a lap is recorded but the clock.
   *
   * @param seed of the errors
   * @param morning true time of the day's beginning
   */
  public InventedRecording record(InventedDay day, long seed, Instant morning) {
    List<InventedRecording.Point> points = new ArrayList<>();
    Drifting error = new Drifting(Streams.of(seed, -1));
    int leg = -1;
    for (long i = 0; ; i++) {
      double second = i * step / (1 + rate);
      if (second >= day.end()) {
        return new InventedRecording(morning, points, radius95);
      }
      int now = day.leg(second, Math.max(0, leg));
      if (now != leg) {
        error = new Drifting(Streams.of(seed, now));
        leg = now;
      }
      error.step();
      if (losses.stream().noneMatch(loss -> loss.holds(second))) {
        InventedDay.Spot spot = day.spot(leg, second);
        points.add(
            new InventedRecording.Point(
                shows(second), moved(spot.at(), error.north, error.east), spot.height()));
      }
    }
  }

  private static Position moved(Position at, double north, double east) {
    double perDegree = 110_600;
    return new Position(
        at.latitude() + north / perDegree,
        at.longitude() + east / (perDegree * Math.cos(Math.toRadians(at.latitude()))));
  }

  /** An error that is as large at any time, and keeps a share of itself from point to point. */
  private final class Drifting {
    private final Random random;
    private final double kept = hangs == 0 ? 0 : Math.exp(-step / hangs);
    private double north;
    private double east;
    private boolean begun;

    Drifting(Random random) {
      this.random = random;
    }

    void step() {
      double fresh = radius95 / RADIUS_IN_SD * (begun ? Math.sqrt(1 - kept * kept) : 1);
      north = (begun ? kept * north : 0) + fresh * random.nextGaussian();
      east = (begun ? kept * east : 0) + fresh * random.nextGaussian();
      begun = true;
    }
  }
}
