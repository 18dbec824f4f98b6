package blindlap.review;

import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.session.day.LapId;
import blindlap.stats.compare.StintSummary;
import java.math.BigDecimal;
import java.util.Arrays;
import java.util.Optional;
import java.util.Set;

/**
 * The analysed units of one measure: per stint the mean of its scored laps (of their logarithms on
 * the ratio scale). A void or missing lap, or one with a void sector where a recording times it,
 * leaves the mean of the stint's other scored laps; a stint with none left is masked
 * (docs/method.md#stint). Where the measure declares the median, a stint that lacks any scored lap
 * is masked (docs/method.md#stint-summary).
 */
public final class StintValues {
  /** Which laps enter. */
  public enum Laps {
    /** Laps that are not void. */
    NOT_VOID,
    /** All ridden laps, void ones included. */
    ALL_RIDDEN;

    /**
     * Which carry the result of a plan: all ridden laps where whoever voids one knows what is on
     * (docs/method.md#known-voids), else those that are not void.
     */
    static Laps counting(Plan plan) {
      return plan.level().blind() ? NOT_VOID : ALL_RIDDEN;
    }
  }

  private final double[] values;
  private final boolean[] ridden;
  private final boolean[] voided;
  private final int[] voidLaps;

  /** True where a median lacks laps though not all. */
  private final boolean[] incomplete;

  private final double[][] byLap;

  /** True where a value is masked for want of a covariate. */
  private final boolean[] uncovered;

  /** True where void laps enter. */
  private final boolean voidsCount;

  private int lapsUsed;
  private int nearEnd;

  private StintValues(int stints, boolean voidsCount) {
    this.voidsCount = voidsCount;
    this.values = new double[stints];
    Arrays.fill(values, Double.NaN);
    this.ridden = new boolean[stints];
    this.voided = new boolean[stints];
    this.voidLaps = new int[stints];
    this.incomplete = new boolean[stints];
    this.byLap = new double[stints][];
    this.uncovered = new boolean[stints];
  }

  private StintValues(StintValues all, boolean[] known) {
    this.voidsCount = all.voidsCount;
    this.values = all.values.clone();
    this.ridden = all.ridden;
    this.voided = all.voided;
    this.voidLaps = all.voidLaps;
    this.incomplete = all.incomplete;
    this.byLap = all.byLap;
    this.lapsUsed = all.lapsUsed;
    this.nearEnd = all.nearEnd;
    this.uncovered = all.uncovered.clone();
    for (int i = 0; i < values.length; i++) {
      if (!known[i] && !Double.isNaN(values[i])) {
        values[i] = Double.NaN;
        uncovered[i] = true;
      }
    }
  }

  /** The same, only these stints left, as where a covariate is not known on the others. */
  StintValues masked(boolean[] known) {
    return new StintValues(this, known);
  }

  /** Where laps are looked up. */
  interface LapsOfDay {
    Optional<DayRecord.Lap> lap(LapId id);
  }

  /** Collects a measure. */
  public static StintValues of(DayRecord day, Measure measure, Laps which) {
    return of(day.plan(), day::lap, measure, which);
  }

  /** The values that carry the result of a measure (docs/method.md#known-voids). */
  public static StintValues counted(DayRecord day, Measure measure) {
    return of(day, measure, Laps.counting(day.plan()));
  }

  /**
   * Collects a measure with the values that were set aside (docs/method.md#two-values).
   *
   * @param which from 1: the first one set aside, the second, …; the last where there are fewer
   */
  public static StintValues others(DayRecord day, Measure measure, int which) {
    return of(
        day.plan(),
        id -> day.lap(id).map(lap -> lap.with(measure.name(), which)),
        measure,
        Laps.counting(day.plan()));
  }

  static StintValues of(Plan plan, LapsOfDay laps, Measure measure, Laps which) {
    StintValues result = new StintValues(plan.stints(), which == Laps.ALL_RIDDEN);
    for (int stint = 1; stint <= plan.stints(); stint++) {
      result.collect(plan, laps, measure, which, stint);
    }
    return result;
  }

  private void collect(Plan plan, LapsOfDay laps, Measure measure, Laps which, int stint) {
    double[] scoredLaps = new double[plan.laps().scored()];
    Arrays.fill(scoredLaps, Double.NaN);
    int scored = 0;
    for (int at = plan.laps().settling() + 1; at <= plan.laps().perStint(); at++) {
      DayRecord.Lap lap = laps.lap(new LapId(stint, at)).orElse(null);
      if (lap == null || !lap.ridden()) {
        continue;
      }
      scored++;
      boolean isVoid = lap.isVoid(measure);
      voidLaps[stint - 1] += isVoid ? 1 : 0;
      BigDecimal value = lap.values().get(measure.name());
      if (value != null && (which == Laps.ALL_RIDDEN || !isVoid)) {
        scoredLaps[at - plan.laps().settling() - 1] = measure.scale().forward(value.doubleValue());
        lapsUsed++;
        nearEnd += atEnd(measure, value.doubleValue()) ? 1 : 0;
      }
    }
    ridden[stint - 1] = scored > 0;
    voided[stint - 1] = scored > 0 && voidLaps[stint - 1] == scored;
    byLap[stint - 1] = scoredLaps;
    values[stint - 1] = measure.summary().of(scoredLaps);
    incomplete[stint - 1] =
        Double.isNaN(values[stint - 1]) && !Double.isNaN(StintSummary.MEAN.of(scoredLaps));
  }

  /** Within 5 of the ends of a line scale, or on an end category (docs/method.md#scale-ends). */
  private static boolean atEnd(Measure measure, double value) {
    return switch (measure.kind()) {
      case LINE_SCALE -> value <= 5 || value >= 95;
      case CATEGORY_SCALE -> value <= 1 || value >= 9;
      case LAP_TIME, SECTOR_TIME, COUNT -> false;
    };
  }

  /** One value per stint on the scale of the analysis; NaN where masked. */
  public double[] values() {
    return values.clone();
  }

  /**
   * Values by stint and scored lap of the plan, on the scale of the analysis; NaN where a lap has
   * none or does not enter.
   */
  public double[][] laps() {
    double[][] copy = new double[byLap.length][];
    for (int i = 0; i < copy.length; i++) {
      copy[i] = byLap[i].clone();
    }
    return copy;
  }

  /** The value of a stint as it is said: on the ratio scale the geometric mean. */
  public double said(int stint, Measure measure) {
    return measure.scale().back(values[stint - 1]);
  }

  /** True where a value enters. */
  public boolean[] valid() {
    boolean[] valid = new boolean[values.length];
    for (int i = 0; i < valid.length; i++) {
      valid[i] = !Double.isNaN(values[i]);
    }
    return valid;
  }

  /** True where a value enters and the stint, from 1, is not one of these. */
  public boolean[] validWithout(Set<Integer> stints) {
    boolean[] valid = valid();
    stints.forEach(stint -> valid[stint - 1] = false);
    return valid;
  }

  /** The same, those stints masked, from 1. */
  public StintValues without(Set<Integer> stints) {
    return masked(validWithout(stints));
  }

  /** True if any scored lap of the stint was ridden. */
  public boolean ridden(int stint) {
    return ridden[stint - 1];
  }

  /** True if every scored lap of the stint is void. */
  public boolean voided(int stint) {
    return voided[stint - 1];
  }

  /** Number of void scored laps of the stint. */
  public int voidLaps(int stint) {
    return voidLaps[stint - 1];
  }

  /** True where void laps enter like all others. */
  public boolean voidsCount() {
    return voidsCount;
  }

  /** Number of stints of the plan. */
  public int stints() {
    return values.length;
  }

  /** Number of stints with a value. */
  public int used() {
    int used = 0;
    for (boolean valid : valid()) {
      used += valid ? 1 : 0;
    }
    return used;
  }

  /** Number of stints of which any scored lap was ridden. */
  public int riddenStints() {
    int count = 0;
    for (boolean each : ridden) {
      count += each ? 1 : 0;
    }
    return count;
  }

  /** Number of stints all of whose scored laps are void. */
  public int voids() {
    int count = 0;
    for (boolean each : voided) {
      count += each ? 1 : 0;
    }
    return count;
  }

  /** Number of stints without a value that have values, but too few for a median. */
  public int incomplete() {
    int count = 0;
    for (boolean each : incomplete) {
      count += each ? 1 : 0;
    }
    return count;
  }

  /** Number of stints with a value that are masked for want of a covariate. */
  public int uncovered() {
    int count = 0;
    for (boolean each : uncovered) {
      count += each ? 1 : 0;
    }
    return count;
  }

  /** Number of void scored laps of all stints, those of stints that keep a value included. */
  public int voidLaps() {
    return Arrays.stream(voidLaps).sum();
  }

  /** Share of rated laps near an end of the scale; 0 for what is no rating. */
  public double endShare() {
    return lapsUsed == 0 ? 0 : (double) nearEnd / lapsUsed;
  }

  /** Share of stints that were ridden and not masked by voids or covariates but lack a value. */
  public double missingShare() {
    int open = 0;
    int missing = 0;
    for (int i = 0; i < values.length; i++) {
      if (ridden[i] && !voided[i] && !uncovered[i] && !(incomplete[i] && voidLaps[i] > 0)) {
        open++;
        missing += Double.isNaN(values[i]) ? 1 : 0;
      }
    }
    return open == 0 ? 0 : (double) missing / open;
  }
}
