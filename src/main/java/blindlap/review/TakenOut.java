package blindlap.review;

import blindlap.plan.Covariate;
import blindlap.plan.Measure;
import blindlap.session.day.CovariateAt;
import blindlap.stats.compare.Residuals;
import blindlap.stats.order.Nuisance;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What is taken out of a measure of a day before setups are compared: its drift, and the declared
 * covariates as far as they hold something of their own (docs/method.md#covariates).
 *
 * @param nuisance the drift and the covariates that are used
 * @param stints the values, those of stints without a covariate masked
 * @param used the covariates that are taken out
 * @param leftOut the others, each with the reason
 */
public record TakenOut(
    Nuisance nuisance, StintValues stints, List<Covariate> used, Map<Covariate, Why> leftOut) {
  /** Why a declared covariate is not used. */
  public enum Why {
    /** It was never said on a stint that counts. */
    NEVER_SAID,
    /** It is the same on all stints that count. */
    CONSTANT,
    /** Drift, or the covariate before it, explains it. */
    EXPLAINED
  }

  public TakenOut {
    used = List.copyOf(used);
    leftOut = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(leftOut));
  }

  /** Of a measure, all covariates that the plan declares. */
  public static TakenOut of(DayRecord day, Measure measure, StintValues stints) {
    List<Covariate> candidates = new ArrayList<>();
    Map<Covariate, Why> leftOut = new LinkedHashMap<>();
    for (Covariate covariate : day.plan().covariates()) {
      if (said(values(day, covariate), stints.valid())) {
        candidates.add(covariate);
      } else {
        leftOut.put(covariate, Why.NEVER_SAID);
      }
    }
    while (true) {
      Nuisance nuisance = nuisance(day, measure, candidates);
      boolean[] use = nuisance.known(stints.valid());
      List<Integer> usable = Residuals.usable(use, nuisance);
      if (usable.size() == candidates.size()) {
        return new TakenOut(
            nuisance, stints.masked(nuisance.known(all(stints))), candidates, leftOut);
      }
      List<Covariate> kept = new ArrayList<>();
      for (int i = 0; i < candidates.size(); i++) {
        Covariate each = candidates.get(i);
        if (usable.contains(i)) {
          kept.add(each);
        } else {
          leftOut.put(each, constant(nuisance.covariate(i), use) ? Why.CONSTANT : Why.EXPLAINED);
        }
      }
      candidates = kept;
    }
  }

  /** Of a measure, its drift alone. */
  public static TakenOut driftAlone(Measure measure, StintValues stints) {
    return new TakenOut(Nuisance.of(measure.drift()), stints, List.of(), Map.of());
  }

  private static boolean[] all(StintValues stints) {
    boolean[] all = new boolean[stints.stints()];
    Arrays.fill(all, true);
    return all;
  }

  private static Nuisance nuisance(DayRecord day, Measure measure, List<Covariate> covariates) {
    return Nuisance.of(
        measure.drift(), covariates.stream().map(covariate -> values(day, covariate)).toList());
  }

  /**
   * A covariate as it is taken out: per stint, NaN where it was not said. Of one that is said for
   * every lap the mean over the stint's scored laps, void ones included, so that no void changes
   * it.
   */
  public static double[] values(DayRecord day, Covariate covariate) {
    double[] values = new double[day.plan().stints()];
    Arrays.fill(values, Double.NaN);
    for (int stint = 1; stint <= values.length; stint++) {
      int first = covariate.perLap() ? day.plan().laps().settling() + 1 : 0;
      int last = covariate.perLap() ? day.plan().laps().perStint() : 0;
      double sum = 0;
      int said = 0;
      for (int lap = first; lap <= last; lap++) {
        BigDecimal value = day.covariates().get(new CovariateAt(covariate.name(), stint, lap));
        if (value != null) {
          sum += value.doubleValue();
          said++;
        }
      }
      values[stint - 1] = said == 0 ? Double.NaN : sum / said;
    }
    return values;
  }

  private static boolean said(double[] values, boolean[] valid) {
    for (int i = 0; i < values.length; i++) {
      if (valid[i] && !Double.isNaN(values[i])) {
        return true;
      }
    }
    return false;
  }

  private static boolean constant(double[] values, boolean[] use) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < values.length; i++) {
      if (use[i]) {
        low = Math.min(low, values[i]);
        high = Math.max(high, values[i]);
      }
    }
    return !(high - low > 1e-12 * Math.max(Math.abs(low), Math.abs(high)));
  }
}
