package blindlap.desk;

import blindlap.recording.LapMatching;
import blindlap.recording.Pass;
import blindlap.recording.Run;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Which ride of a recording is which of the day, whole ones first by order and clock; one that
 * misses a gate only where a ride of the day between its neighbours has none.
 */
final class RideMatching {
  /** Nobody said anything. */
  static final int FREE = LapMatching.FREE;

  /** A person said that it is none. */
  static final int NONE = -2;

  /** Seconds by which an entry may come earlier or later than usual. */
  private static final double TOLERANCE = 300;

  private final List<Run> runs;
  private final double clock;
  private final double[] entered;
  private final int[] said;
  private final int[] ofDay;
  private final boolean[] open;
  private final boolean[] aside;

  /** Matched by order and clock; the others only where one between two of these is left. */
  private final boolean[] placed;

  private double offset = Double.NaN;

  private RideMatching(List<Run> runs, double clock, double[] entered, int[] said) {
    this.runs = runs;
    this.clock = clock;
    this.entered = entered;
    this.said = said;
    this.ofDay = new int[runs.size()];
    this.open = new boolean[runs.size()];
    this.aside = new boolean[runs.size()];
    this.placed = new boolean[runs.size()];
    Arrays.fill(ofDay, -1);
  }

  /**
   * Matches them.
   *
   * @param clock the recorder's at its first point, in seconds
   * @param entered of each ride of the day, as for {@link LapMatching}
   * @param said which of them each run is; {@link #FREE} or {@link #NONE}
   */
  static RideMatching of(List<Run> runs, double clock, double[] entered, int[] said) {
    RideMatching matching = new RideMatching(runs, clock, entered, said);
    matching.whole();
    for (int run = 0; run < runs.size(); run++) {
      if (matching.unplaced(run)) {
        matching.incomplete(run);
      }
    }
    return matching;
  }

  private void whole() {
    // Without a clock one that misses a gate cannot be told from one that is no lap: all count.
    boolean clock = Arrays.stream(entered).anyMatch(at -> !Double.isNaN(at));
    for (int run = 0; run < runs.size(); run++) {
      boolean whole = !clock || runs.get(run).whole() || said[run] != FREE;
      placed[run] = said[run] != NONE && whole;
    }
    List<Integer> which = new ArrayList<>();
    for (int run = 0; run < runs.size(); run++) {
      if (placed[run]) {
        which.add(run);
      }
    }
    double[] finished = which.stream().mapToDouble(this::finished).toArray();
    int[] pinned = which.stream().mapToInt(run -> said[run]).toArray();
    LapMatching found = LapMatching.of(finished, entered, pinned);
    for (int i = 0; i < pinned.length; i++) {
      ofDay[which.get(i)] = found.lap(i);
      open[which.get(i)] = found.open(i);
    }
    offset = found.offset();
  }

  /** When it ended; of one that misses the finish, when it would have. */
  private double finished(int run) {
    List<Pass> passes = new ArrayList<>(runs.get(run).passes());
    Pass finish = passes.get(passes.size() - 1);
    if (finish != null) {
      return clock + finish.seconds();
    }
    int gate = passes.size() - 1;
    while (gate > 0 && passes.get(gate) == null) {
      gate--;
    }
    Pass last = passes.get(gate);
    return clock + (last == null ? 0 : last.seconds()) + rest(gate);
  }

  /** What usually passes from a gate to the finish. */
  private double rest(int gate) {
    double[] rests =
        runs.stream()
            .filter(Run::whole)
            .mapToDouble(run -> at(run, run.passes().size() - 1) - at(run, gate))
            .sorted()
            .toArray();
    return rests.length == 0 ? 0 : rests[rests.length / 2];
  }

  private static double at(Run run, int gate) {
    Pass pass = run.passes().get(gate);
    return pass == null ? Double.NaN : pass.seconds();
  }

  private void incomplete(int run) {
    int early = -1;
    int late = entered.length;
    int others = 0;
    for (int other = 0; other < runs.size(); other++) {
      if (placed[other] && ofDay[other] >= 0) {
        early = other < run ? Math.max(early, ofDay[other]) : early;
        late = other > run ? Math.min(late, ofDay[other]) : late;
      }
      others += other != run && unplaced(other) && between(run, other) ? 1 : 0;
    }
    int left = late - early - 1;
    if (left <= 0) {
      aside[run] = true;
    } else if (left == 1 && others == 0 && near(run, early + 1)) {
      ofDay[run] = early + 1;
    } else {
      open[run] = true;
    }
  }

  private boolean unplaced(int run) {
    return !placed[run] && said[run] == FREE;
  }

  /** True if no ride that has its place lies between two. */
  private boolean between(int one, int other) {
    for (int run = Math.min(one, other) + 1; run < Math.max(one, other); run++) {
      if (placed[run] && ofDay[run] >= 0) {
        return false;
      }
    }
    return true;
  }

  private boolean near(int run, int ride) {
    double off = entered[ride] - finished(run) - offset;
    return Double.isNaN(off) || Math.abs(off) <= TOLERANCE;
  }

  /** Which ride of the day it is, from 0; −1 for none. */
  int ofDay(int run) {
    return ofDay[run];
  }

  /** True if a person must say which it is. */
  boolean open(int run) {
    return open[run];
  }

  /** True if it misses a gate where every ride of the day has its own: nobody asks for it. */
  boolean aside(int run) {
    return aside[run];
  }

  /** Seconds by which the day's clock is ahead; NaN if no clock tells. */
  double offset() {
    return offset;
  }
}
