package blindlap.recording;

import blindlap.fault.Unreadable;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/** A recorder's points in order, each later than the one in front of it. */
public final class Track {
  private static final double SECOND = 1e9;

  /** Heights of the ground, in metres; what lies outside is none. */
  private static final double LOWEST = -500;

  private static final double HIGHEST = 9_000;

  /** A time that is earlier by less than a millisecond is the same one, rounded otherwise. */
  private static final double ROUNDED = 0.001;

  private final Instant start;
  private final List<Fix> fixes;
  private final int leftOut;
  private final double step;

  /** Indices of the points behind a gap, rising. */
  private final int[] gaps;

  private Track(Instant start, List<Fix> fixes, int leftOut, double step) {
    this.start = start;
    this.fixes = List.copyOf(fixes);
    this.leftOut = leftOut;
    this.step = step;
    this.gaps = IntStream.range(1, fixes.size()).filter(this::gapBefore).toArray();
  }

  /** The same, its gaps judged by another usual time from point to point, in seconds. */
  Track withStep(double usual) {
    return new Track(start, fixes, leftOut, usual);
  }

  /** Collects points as they are read. */
  static final class Builder {
    private final List<Fix> fixes = new ArrayList<>();
    private Instant start = Instant.EPOCH;
    private int points;
    private int timed;
    private int equal;
    private boolean resumes;

    /** The recorder stopped, or says so, in front of the next point. */
    void interrupted() {
      resumes = !fixes.isEmpty();
    }

    /** A point without place or time. */
    void without() {
      points++;
    }

    /**
     * @param radius95 metres
     * @param height metres; NaN, or what no trail has, where it is not known
     * @throws Unreadable if it is earlier than the one in front of it
     */
    void add(Position at, Instant time, double radius95, double height) {
      points++;
      timed++;
      if (fixes.isEmpty()) {
        start = time;
      }
      double seconds = seconds(start, time);
      if (!fixes.isEmpty()) {
        double before = fixes.get(fixes.size() - 1).seconds();
        if (seconds < before - ROUNDED) {
          throw new Unreadable(TrackFault.TIME_BACK, timed);
        }
        if (seconds <= before) {
          equal++;
          return;
        }
      }
      double known = height >= LOWEST && height <= HIGHEST ? height : Double.NaN;
      fixes.add(new Fix(at, seconds, radius95, resumes, known));
      resumes = false;
    }

    Track track() {
      if (2 * equal > timed) {
        throw new Unreadable(TrackFault.TIMES_EQUAL, equal, timed);
      }
      if (fixes.size() < 2) {
        throw new Unreadable(TrackFault.NO_POINTS, points);
      }
      return new Track(start, fixes, points - fixes.size(), median(fixes));
    }
  }

  static double seconds(Instant from, Instant to) {
    return to.getEpochSecond() - from.getEpochSecond() + (to.getNano() - from.getNano()) / SECOND;
  }

  private static double median(List<Fix> fixes) {
    double[] steps = new double[fixes.size() - 1];
    for (int i = 0; i < steps.length; i++) {
      steps[i] = fixes.get(i + 1).seconds() - fixes.get(i).seconds();
    }
    Arrays.sort(steps);
    int half = steps.length / 2;
    return steps.length % 2 == 1 ? steps[half] : (steps[half - 1] + steps[half]) / 2;
  }

  /** The points, at least two. */
  public List<Fix> fixes() {
    return fixes;
  }

  /** Points without place or time, or at the time of another. */
  public int leftOut() {
    return leftOut;
  }

  /** Usual time from point to point, in seconds: the median. */
  public double step() {
    return step;
  }

  /** True if the recorder stopped, or lost its way, between a point and the one in front of it. */
  boolean gapBefore(int fix) {
    double limit = Math.max(3, 3 * step);
    return fixes.get(fix).resumes()
        || fixes.get(fix).seconds() - fixes.get(fix - 1).seconds() > limit;
  }

  /** True if a gap lies before a point or behind the one in front of it, within so many seconds. */
  boolean gapNear(int fix, double early, double late) {
    int next = nextGap(fix);
    if (next < gaps.length && fixes.get(gaps[next] - 1).seconds() <= late) {
      return true;
    }
    int last = next < gaps.length && gaps[next] == fix ? next : next - 1;
    return last >= 0 && fixes.get(gaps[last]).seconds() >= early;
  }

  /** Which of the gaps is the first before a point or behind it. */
  private int nextGap(int fix) {
    int found = Arrays.binarySearch(gaps, fix);
    return found >= 0 ? found : -found - 1;
  }

  /** The longest gap between two times, in seconds; 0 if there is none. */
  double longestGap(double from, double to) {
    double longest = 0;
    for (int i = nextGap(firstAfter(from));
        i < gaps.length && fixes.get(gaps[i] - 1).seconds() < to;
        i++) {
      longest = Math.max(longest, fixes.get(gaps[i]).seconds() - fixes.get(gaps[i] - 1).seconds());
    }
    return longest;
  }

  /** The first point later than a time; beyond the last if none is. */
  private int firstAfter(double seconds) {
    int low = 0;
    int high = fixes.size();
    while (low < high) {
      int middle = (low + high) / 2;
      if (fixes.get(middle).seconds() > seconds) {
        high = middle;
      } else {
        low = middle + 1;
      }
    }
    return low;
  }

  /** The recorder's clock at some seconds after the first point. */
  public Instant at(double seconds) {
    return start.plusNanos(Math.round(seconds * SECOND));
  }
}
