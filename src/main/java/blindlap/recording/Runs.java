package blindlap.recording;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * Every ride down a trail that a track holds, those that miss a gate too (docs/recordings.md). What
 * lies between a finish and the next start says nothing here: not by its length, its place, its
 * gaps or how often the recorder wrote.
 */
public final class Runs {
  /** A ride that is so many times the middle one may be two. */
  private static final double LONG = 1.6;

  /** So many rides must agree before a way back through a gate is the course and no mistake. */
  private static final int ENOUGH = 3;

  private final Track track;
  private final List<Run> runs;

  private Runs(Track track, List<Run> runs) {
    this.track = track;
    this.runs = List.copyOf(runs);
  }

  private record Found(int gate, Crossing crossing) {
    double seconds() {
      return crossing.seconds();
    }
  }

  /** Gates as they are passed, and those passed the wrong way meanwhile. */
  private static final class Ride {
    private final @Nullable Found[] on;
    private final boolean[] back;
    private int reached = -1;

    Ride(int gates) {
      this.on = new Found[gates];
      this.back = new boolean[gates];
    }

    void pass(Found found) {
      on[found.gate()] = found;
      reached = found.gate();
    }

    /** Through fewer than two gates nobody rode anywhere. */
    boolean somewhere() {
      return Arrays.stream(on).filter(Objects::nonNull).count() >= 2;
    }

    boolean whole() {
      return Arrays.stream(on).allMatch(Objects::nonNull);
    }

    double begun() {
      return Arrays.stream(on).filter(Objects::nonNull).mapToDouble(Found::seconds).min().orElse(0);
    }

    double ended() {
      return Arrays.stream(on).filter(Objects::nonNull).mapToDouble(Found::seconds).max().orElse(0);
    }
  }

  /**
   * Finds them.
   *
   * @param gates start, splits, finish: at least two
   */
  public static Runs of(Track track, List<CourseGate> gates) {
    List<Ride> rides = rides(crossings(track, gates), gates);
    Track judged = track.withStep(step(track, rides));
    double middle = middle(rides);
    List<Run> runs = new ArrayList<>();
    for (Ride ride : rides) {
      List<@Nullable Pass> passes = new ArrayList<>();
      for (int gate = 0; gate < gates.size(); gate++) {
        Found found = ride.on[gate];
        passes.add(found == null ? null : pass(judged, gates, found));
      }
      boolean tooLong = ride.whole() && ride.ended() - ride.begun() > LONG * middle;
      runs.add(new Run(passes, wrongWay(ride, rides), tooLong));
    }
    return new Runs(judged, runs);
  }

  /** A gap in front of the start or behind the finish is none of the ride. */
  private static Pass pass(Track track, List<CourseGate> gates, Found found) {
    int gate = found.gate();
    double before = gate == 0 ? 0 : Passes.NEAR_GATE;
    double after = gate == gates.size() - 1 ? 0 : Passes.NEAR_GATE;
    return Passes.pass(track, gates.get(gate).gate(), gate, found.crossing(), before, after);
  }

  private static List<Found> crossings(Track track, List<CourseGate> gates) {
    List<Found> found = new ArrayList<>();
    for (int gate = 0; gate < gates.size(); gate++) {
      for (Crossing crossing : gates.get(gate).gate().crossings(track.fixes())) {
        found.add(new Found(gate, crossing));
      }
    }
    // A line that is finish and start ends a ride before it begins the next.
    found.sort(
        Comparator.comparingDouble(Found::seconds)
            .thenComparing(Comparator.comparingInt(Found::gate).reversed()));
    return found;
  }

  private static List<Ride> rides(List<Found> crossings, List<CourseGate> gates) {
    List<Ride> rides = new ArrayList<>();
    Ride ride = null;
    for (Found found : crossings) {
      if (found.crossing().direction() != gates.get(found.gate()).direction()) {
        if (ride != null) {
          ride.back[found.gate()] = true;
        }
        continue;
      }
      // Who rolls back over the start, or waits about it, starts with the last time through.
      if (ride == null || found.gate() == 0) {
        keep(ride, rides);
        ride = new Ride(gates.size());
      }
      // Of a gate that is passed again, such as after a fall, the first time counts.
      if (found.gate() > ride.reached) {
        ride.pass(found);
      }
      if (ride.reached == gates.size() - 1) {
        keep(ride, rides);
        ride = null;
      }
    }
    keep(ride, rides);
    return rides;
  }

  private static void keep(@Nullable Ride ride, List<Ride> rides) {
    if (ride != null && ride.somewhere()) {
      rides.add(ride);
    }
  }

  /** The way back through a gate is part of the course where most rides take it. */
  private static boolean wrongWay(Ride ride, List<Ride> rides) {
    List<Ride> whole = rides.stream().filter(Ride::whole).toList();
    for (int gate = 0; gate < ride.back.length; gate++) {
      int at = gate;
      long others = whole.stream().filter(one -> one.back[at]).count();
      boolean course = whole.size() >= ENOUGH && 2 * others > whole.size();
      if (ride.back[gate] && !course) {
        return true;
      }
    }
    return false;
  }

  private static double middle(List<Ride> rides) {
    double[] seconds =
        rides.stream().filter(Ride::whole).mapToDouble(r -> r.ended() - r.begun()).toArray();
    return seconds.length < ENOUGH ? Double.POSITIVE_INFINITY : median(seconds);
  }

  /** Median step while riding: a recorder that rests writes when it likes. */
  private static double step(Track track, List<Ride> rides) {
    List<Fix> fixes = track.fixes();
    double[] steps = new double[fixes.size()];
    int count = 0;
    int fix = 1;
    for (Ride ride : rides) {
      for (; fix < fixes.size() && fixes.get(fix - 1).seconds() < ride.ended(); fix++) {
        if (fixes.get(fix - 1).seconds() >= ride.begun()) {
          steps[count++] = fixes.get(fix).seconds() - fixes.get(fix - 1).seconds();
        }
      }
    }
    return count == 0 ? track.step() : median(Arrays.copyOf(steps, count));
  }

  private static double median(double[] values) {
    Arrays.sort(values);
    int half = values.length / 2;
    return values.length % 2 == 1 ? values[half] : (values[half - 1] + values[half]) / 2;
  }

  /** In time order. */
  public List<Run> runs() {
    return runs;
  }

  /** The track, its gaps judged by how often the recorder wrote while it was ridden. */
  public Track track() {
    return track;
  }
}
