package blindlap.review;

import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.session.LapId;
import blindlap.session.LapState;
import blindlap.session.SessionState;
import java.math.BigDecimal;
import java.util.Arrays;

/**
 * The analysed units of one measure: per stint the mean of its scored laps (of their logarithms on
 * the ratio scale). A void or missing lap leaves the mean of the stint's other scored laps; a stint
 * with none left is masked (METHOD 13).
 */
public final class StintValues {
  /** Which laps enter. */
  public enum Laps {
    /** Laps that are not void. */
    NOT_VOID,
    /** All ridden laps, void ones included. */
    ALL_RIDDEN
  }

  private final double[] values;
  private final boolean[] ridden;
  private final boolean[] voided;

  private StintValues(int stints) {
    this.values = new double[stints];
    Arrays.fill(values, Double.NaN);
    this.ridden = new boolean[stints];
    this.voided = new boolean[stints];
  }

  /** Collects a measure. */
  public static StintValues of(SessionState state, Measure measure, Laps which) {
    Plan plan = state.plan();
    StintValues result = new StintValues(plan.stints());
    for (int stint = 1; stint <= plan.stints(); stint++) {
      result.collect(state, measure, which, stint);
    }
    return result;
  }

  private void collect(SessionState state, Measure measure, Laps which, int stint) {
    Plan plan = state.plan();
    double sum = 0;
    int n = 0;
    int scored = 0;
    int voids = 0;
    for (int lap = plan.laps().settling() + 1; lap <= plan.laps().perStint(); lap++) {
      LapState known = state.lap(new LapId(stint, lap)).orElse(null);
      if (known == null || !known.ridden()) {
        continue;
      }
      scored++;
      boolean isVoid = known.voided().isPresent();
      voids += isVoid ? 1 : 0;
      BigDecimal value = known.values().get(measure.name());
      if (value != null && (which == Laps.ALL_RIDDEN || !isVoid)) {
        sum += measure.scale().forward(value.doubleValue());
        n++;
      }
    }
    ridden[stint - 1] = scored > 0;
    voided[stint - 1] = scored > 0 && voids == scored;
    values[stint - 1] = n == 0 ? Double.NaN : sum / n;
  }

  /** One value per stint on the scale of the analysis; NaN where masked. */
  public double[] values() {
    return values.clone();
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

  /** True if any scored lap of the stint was ridden. */
  public boolean ridden(int stint) {
    return ridden[stint - 1];
  }

  /** True if every scored lap of the stint is void. */
  public boolean voided(int stint) {
    return voided[stint - 1];
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

  /** Share of stints that were ridden and not void but lack a value. */
  public double missingShare() {
    int open = 0;
    int missing = 0;
    for (int i = 0; i < values.length; i++) {
      if (ridden[i] && !voided[i]) {
        open++;
        missing += Double.isNaN(values[i]) ? 1 : 0;
      }
    }
    return open == 0 ? 0 : (double) missing / open;
  }
}
