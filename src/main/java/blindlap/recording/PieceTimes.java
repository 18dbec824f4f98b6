package blindlap.recording;

import blindlap.fault.StatsException;
import java.util.List;

/**
 * How long a lap took for each piece of a reference line (docs/method.md#along). The lap's points
 * are mapped to the line by the nearest point, never running backwards; times between points are
 * interpolated. The pieces of a lap add up to the lap.
 */
public final class PieceTimes {
  /** Most pieces of a picture of the trail. */
  public static final int MOST_PIECES = 40;

  /** Metres beyond what the rider can have covered in which the nearest point is sought. */
  private static final double SLACK = 30;

  /** How much of the way on the ground the way along the line may be, corners cut. */
  private static final double CORNERS = 3;

  private PieceTimes() {}

  /**
   * Borders of pieces of one length.
   *
   * @param from metres from the beginning of the line
   * @param to metres from the beginning
   * @param pieces 1 to {@link #MOST_PIECES}
   * @return one more number than pieces
   * @throws StatsException naming {@code pieces} or {@code distance}
   */
  public static double[] equal(double from, double to, int pieces) {
    if (pieces < 1 || pieces > MOST_PIECES) {
      throw new StatsException(
          "pieces", "must be 1 to " + MOST_PIECES + " in number, not " + pieces + ".");
    }
    if (!(to > from)) {
      throw new StatsException("distance", "of the end must be beyond that of the beginning.");
    }
    double[] borders = new double[pieces + 1];
    for (int i = 0; i <= pieces; i++) {
      borders[i] = from + i * (to - from) / pieces;
    }
    return borders;
  }

  /**
   * Times of the pieces of one lap.
   *
   * @param line the way
   * @param borders metres from its beginning, rising: start, …, finish
   * @param track what was recorded
   * @param start seconds at which the lap went through the start, on the track's clock
   * @param finish seconds at which it went through the finish
   * @return seconds, one per piece; NaN where a border was passed inside a gap of the recording
   * @throws StatsException naming {@code distance} if the borders do not rise on the line
   */
  public static double[] of(
      ReferenceLine line, double[] borders, Track track, double start, double finish) {
    double[] at = new double[borders.length];
    at[0] = start;
    at[borders.length - 1] = finish;
    for (int i = 0; i < borders.length; i++) {
      if (borders[i] > line.length() || i > 0 && !(borders[i] > borders[i - 1])) {
        throw new StatsException("distance", "of the pieces must rise along the line.");
      }
    }
    inner(line, borders, track, at);
    double[] seconds = new double[borders.length - 1];
    for (int i = 0; i < seconds.length; i++) {
      seconds[i] = at[i + 1] - at[i];
    }
    return seconds;
  }

  /** Fills in when the borders between start and finish were passed. */
  private static void inner(ReferenceLine line, double[] borders, Track track, double[] at) {
    int last = borders.length - 1;
    double progress = borders[0];
    double clock = at[0];
    int next = 1;
    List<Fix> fixes = track.fixes();
    for (int i = 1; i < fixes.size() && next < last; i++) {
      Fix fix = fixes.get(i);
      if (fix.seconds() <= at[0]) {
        continue;
      }
      boolean over = fix.seconds() >= at[last];
      double moved = over ? borders[last] : advance(line, fixes.get(i - 1), fix, progress, borders);
      double now = over ? at[last] : fix.seconds();
      while (next < last && moved >= borders[next]) {
        // Nothing is interpolated across a gap: where the rider was in it nobody knows.
        at[next] =
            track.gapBefore(i) || moved <= progress
                ? Double.NaN
                : clock + (borders[next] - progress) / (moved - progress) * (now - clock);
        next++;
      }
      progress = moved;
      clock = now;
      if (over) {
        return;
      }
    }
  }

  private static double advance(
      ReferenceLine line, Fix before, Fix fix, double progress, double[] borders) {
    double way = before.at().to(fix.at()).metres();
    double most = Math.min(borders[borders.length - 1], progress + CORNERS * way + SLACK);
    return line.nearest(fix.at(), progress, most);
  }
}
