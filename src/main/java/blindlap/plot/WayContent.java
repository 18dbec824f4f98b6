package blindlap.plot;

import blindlap.plot.surface.Spoken;
import java.util.List;

/**
 * What a running sum along a way is drawn from.
 *
 * @param way metres from the start: 0, …, the finish; rising
 * @param sums the running sum at these; 0 at the start
 * @param halves half the band's height at these; NaN where there is none
 * @param gates what stands across the way, start and finish included
 * @param notes what is written at stretches
 * @param upright axis of the sums
 * @param across words under the axis of metres
 * @param bandWords what the band is; empty without a band
 * @param zero the setup that the level line is
 * @param end the setup that the sum is of
 * @param spoken the picture in words
 */
public record WayContent(
    double[] way,
    double[] sums,
    double[] halves,
    List<Gate> gates,
    List<Note> notes,
    Axis upright,
    String across,
    String bandWords,
    Named zero,
    Named end,
    Spoken spoken) {

  /**
   * A gate.
   *
   * @param name what it is called
   * @param metres from the start
   * @param number its metres as written
   */
  public record Gate(String name, double metres, String number) {}

  /**
   * Words at the stretch between two gates.
   *
   * @param from metres from the start
   * @param to metres from the start
   * @param words what is written
   */
  public record Note(double from, double to, String words) {}

  /**
   * A setup at the right end of its line.
   *
   * @param mark its mark
   * @param name its name
   * @param words what stands under the name; may be empty
   */
  public record Named(SetupMark mark, String name, String words) {}

  /** Checks that the lengths fit and the numbers can be drawn. */
  public WayContent {
    gates = List.copyOf(gates);
    notes = List.copyOf(notes);
    if (way.length < 2 || sums.length != way.length || halves.length != way.length) {
      throw new IllegalArgumentException("A way needs two places and a sum at each");
    }
    for (int i = 0; i < way.length; i++) {
      if (!Double.isFinite(way[i]) || !Double.isFinite(sums[i]) || i > 0 && way[i] <= way[i - 1]) {
        throw new IllegalArgumentException("A way cannot be drawn at " + way[i]);
      }
    }
  }

  /** Metres from start to finish. */
  double length() {
    return way[way.length - 1];
  }

  /** True if there is a band anywhere. */
  boolean banded() {
    return java.util.Arrays.stream(halves).anyMatch(half -> half > 0);
  }

  /** Half the band's height at a place; none where it is not known. */
  double half(int place) {
    return halves[place] > 0 ? halves[place] : 0;
  }

  /** The sum so many metres from the start, between places on a straight line. */
  double at(double metres) {
    for (int i = 1; i < way.length; i++) {
      if (metres <= way[i]) {
        double share = Math.max(0, metres - way[i - 1]) / (way[i] - way[i - 1]);
        return sums[i - 1] + share * (sums[i] - sums[i - 1]);
      }
    }
    return sums[sums.length - 1];
  }
}
