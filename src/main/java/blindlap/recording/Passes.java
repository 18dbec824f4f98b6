package blindlap.recording;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A track's passes of one gate or several in order, and the laps that they make
 * (docs/method.md#gates). With one gate a lap is from one pass to the next in the direction of the
 * first; with several it is start, splits and finish in order, each in the direction in which most
 * laps pass it.
 */
public final class Passes {
  static final double NEAR_GATE = 5;

  /** A lap that is so many times the middle one may be two: a pass may be missing. */
  private static final double LONG = 1.6;

  /**
   * From start to finish.
   *
   * @param seconds from gate to gate; one number with one gate
   * @param doubtful true if it needs a person: an end in or near a gap
   * @param known false if an end lies in a gap, so that its time is a guess
   * @param pause longest time between two points on the lap that is a gap, in seconds; 0 if none
   */
  public record Lap(double[] seconds, boolean doubtful, boolean known, double pause) {
    /** From start to finish. */
    public double total() {
      return Arrays.stream(seconds).sum();
    }
  }

  private final List<Pass> passes;
  private final List<Lap> laps;

  /** The middle lap in seconds. */
  private final double middle;

  private Passes(List<Pass> passes, List<Lap> laps) {
    this.passes = List.copyOf(passes);
    this.laps = List.copyOf(laps);
    double[] totals = laps.stream().mapToDouble(Lap::total).sorted().toArray();
    this.middle = totals.length == 0 ? Double.NaN : totals[totals.length / 2];
  }

  /**
   * Finds them.
   *
   * @param gates at least one: start, splits, finish
   */
  public static Passes of(Track track, List<Gate> gates) {
    List<Pass> passes = new ArrayList<>();
    for (int gate = 0; gate < gates.size(); gate++) {
      for (Crossing crossing : gates.get(gate).crossings(track.fixes())) {
        passes.add(pass(track, gates.get(gate), gate, crossing));
      }
    }
    // A line that is finish and start ends a lap before it begins the next.
    passes.sort(
        Comparator.comparingDouble(Pass::seconds)
            .thenComparing(Comparator.comparingInt(Pass::gate).reversed()));
    return new Passes(
        passes, gates.size() == 1 ? rounds(track, passes) : courses(track, passes, gates.size()));
  }

  private static Pass pass(Track track, Gate gate, int number, Crossing crossing) {
    return pass(track, gate, number, crossing, NEAR_GATE, NEAR_GATE);
  }

  /**
   * A pass.
   *
   * @param before seconds before it in which a gap makes it doubtful
   * @param after seconds after it in which a gap does
   */
  static Pass pass(
      Track track, Gate gate, int number, Crossing crossing, double before, double after) {
    List<Fix> fixes = track.fixes();
    Fix from = fixes.get(crossing.fix() - 1);
    Fix to = fixes.get(crossing.fix());
    double speed = gate.speed(from, to);
    double step = to.seconds() - from.seconds();
    return new Pass(
        number,
        crossing.seconds(),
        crossing.direction(),
        speed,
        PassUncertainty.of(Math.max(from.radius95(), to.radius95()), step, speed),
        track.gapNear(crossing.fix(), crossing.seconds() - before, crossing.seconds() + after),
        track.gapBefore(crossing.fix()));
  }

  private static List<Lap> rounds(Track track, List<Pass> passes) {
    List<Lap> laps = new ArrayList<>();
    Pass last = null;
    for (Pass pass : passes) {
      if (pass.direction() != passes.get(0).direction()) {
        continue;
      }
      if (last != null) {
        laps.add(lap(track, List.of(last, pass)));
      }
      last = pass;
    }
    return laps;
  }

  private static Lap lap(Track track, List<Pass> on) {
    double[] seconds = new double[on.size() - 1];
    for (int i = 0; i < seconds.length; i++) {
      seconds[i] = on.get(i + 1).seconds() - on.get(i).seconds();
    }
    return new Lap(
        seconds,
        on.stream().anyMatch(Pass::gap),
        on.stream().noneMatch(Pass::within),
        track.longestGap(on.get(0).seconds(), on.get(on.size() - 1).seconds()));
  }

  private static List<Lap> courses(Track track, List<Pass> passes, int gates) {
    Map<List<Integer>, Integer> ways = new LinkedHashMap<>();
    for (List<Pass> course : inOrder(passes, gates, false)) {
      ways.merge(course.stream().map(Pass::direction).toList(), 1, Integer::sum);
    }
    if (ways.isEmpty()) {
      return List.of();
    }
    // A recording may begin with the way back up, which passes gates the other way.
    List<Integer> usual = Collections.max(ways.entrySet(), Map.Entry.comparingByValue()).getKey();
    List<Pass> forth =
        passes.stream().filter(pass -> pass.direction() == usual.get(pass.gate())).toList();
    return inOrder(forth, gates, true).stream().map(course -> lap(track, course)).toList();
  }

  /**
   * Passes of all gates in their order; whoever passes the start again begins again, and whoever
   * comes to the finish without a split has no lap: the next one's must not complete it.
   *
   * @param forth true if all are in their usual direction
   */
  private static List<List<Pass>> inOrder(List<Pass> passes, int gates, boolean forth) {
    List<List<Pass>> courses = new ArrayList<>();
    List<Pass> on = new ArrayList<>();
    for (Pass pass : passes) {
      if (pass.gate() == on.size() && !on.isEmpty()) {
        on.add(pass);
        if (on.size() == gates) {
          courses.add(List.copyOf(on));
          on.clear();
        }
      } else if (pass.gate() == 0) {
        on.clear();
        on.add(pass);
      } else if (forth && pass.gate() == gates - 1) {
        on.clear();
      }
    }
    return courses;
  }

  /** In time order. */
  public List<Pass> passes() {
    return passes;
  }

  /** In time order; a lap that misses a gate is none. */
  public List<Lap> laps() {
    return laps;
  }

  /** True if a lap is so long that it may be two, a pass being missing; of three laps and more. */
  public boolean mayBeTwo(int lap) {
    return laps.size() >= 3 && laps.get(lap).total() > LONG * middle;
  }
}
