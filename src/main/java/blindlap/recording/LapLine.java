package blindlap.recording;

import blindlap.fault.Unreadable;
import java.util.ArrayList;
import java.util.List;

/**
 * The way of one lap out of a track, as a line: rests at both ends cut off, and points left out
 * that say nothing of the way.
 *
 * @param fixes the points of the line, each with its time and height as recorded
 * @param within metres within which every point that was left out lies beside the line
 */
public record LapLine(List<Fix> fixes, double within) {
  /** Points nearer to the line than that, in metres, are left out. */
  private static final double WITHIN = 0.2;

  /**
   * Neighbours on the line are no farther apart than that, in metres, where points were left out.
   */
  private static final double SPACING = 10;

  /** Who stays within so many metres for so many seconds rests. */
  private static final double REST_METRES = 20;

  private static final double REST_SECONDS = 60;

  /** At both ends shorter stays are cut off. */
  private static final double WAIT_METRES = 8;

  private static final double WAIT_SECONDS = 5;

  public LapLine {
    fixes = List.copyOf(fixes);
  }

  /**
   * Takes a lap out of a track. What was in between laps is not told, nor when or how long.
   *
   * @param from seconds after the first point of the track
   * @param to seconds after the first point of the track
   * @throws Unreadable with a {@link TrackFault} if no way lies between them, or more than a lap
   */
  public static LapLine of(Track track, double from, double to) {
    List<Fix> all = track.fixes();
    List<Fix> chosen =
        all.stream().filter(fix -> fix.seconds() >= from && fix.seconds() <= to).toList();
    int first = 0;
    while (first < chosen.size() && stays(chosen, first, WAIT_METRES, WAIT_SECONDS, true)) {
      first++;
    }
    List<Fix> back = reversed(chosen.subList(first, chosen.size()));
    int last = 0;
    while (last < back.size() && stays(back, last, WAIT_METRES, WAIT_SECONDS, true)) {
      last++;
    }
    List<Fix> lap = reversed(back.subList(last, back.size()));
    if (lap.size() < 2) {
      throw new Unreadable(
          TrackFault.NO_STRETCH, from, to, Math.floor(all.get(all.size() - 1).seconds()));
    }
    for (int i = 0; i < lap.size(); i++) {
      if (stays(lap, i, REST_METRES, REST_SECONDS, false)) {
        throw new Unreadable(TrackFault.RESTS);
      }
    }
    return thinned(lap);
  }

  private static List<Fix> reversed(List<Fix> fixes) {
    List<Fix> back = new ArrayList<>(fixes);
    java.util.Collections.reverse(back);
    return back;
  }

  /**
   * True if for so long after a point, or before it in a track read backwards, none is far off.
   *
   * @param atEnd the answer where the points end before that
   */
  private static boolean stays(
      List<Fix> fixes, int at, double metres, double seconds, boolean atEnd) {
    Fix from = fixes.get(at);
    GroundPlane plane = GroundPlane.about(from.at());
    for (int i = at + 1; i < fixes.size(); i++) {
      Fix to = fixes.get(i);
      if (Math.hypot(plane.east(to.at()), plane.north(to.at())) > metres) {
        return false;
      }
      if (Math.abs(to.seconds() - from.seconds()) >= seconds) {
        return true;
      }
    }
    return atEnd;
  }

  private static LapLine thinned(List<Fix> lap) {
    double within = WITHIN;
    double spacing = SPACING;
    List<Fix> kept = thinned(lap, within, spacing);
    while (kept.size() > ReferenceLine.MOST_PLACES) {
      within *= 2;
      spacing *= 2;
      kept = thinned(lap, within, spacing);
    }
    return new LapLine(kept, within);
  }

  /** From a point the line goes as far as all points between lie near it. */
  private static List<Fix> thinned(List<Fix> lap, double within, double spacing) {
    List<Fix> kept = new ArrayList<>(List.of(lap.get(0)));
    int at = 0;
    while (at < lap.size() - 1) {
      int to = at + 1;
      while (to + 1 < lap.size() && straight(lap, at, to + 1, within, spacing)) {
        to++;
      }
      kept.add(lap.get(to));
      at = to;
    }
    return kept;
  }

  private static boolean straight(List<Fix> lap, int from, int to, double within, double spacing) {
    GroundPlane plane = GroundPlane.about(lap.get(from).at());
    double east = plane.east(lap.get(to).at());
    double north = plane.north(lap.get(to).at());
    double long2 = east * east + north * north;
    if (long2 > spacing * spacing) {
      return false;
    }
    for (int i = from + 1; i < to; i++) {
      double x = plane.east(lap.get(i).at());
      double y = plane.north(lap.get(i).at());
      double share = long2 == 0 ? 0 : Math.max(0, Math.min(1, (x * east + y * north) / long2));
      if (Math.hypot(x - share * east, y - share * north) > within) {
        return false;
      }
    }
    return true;
  }
}
