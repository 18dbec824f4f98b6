package blindlap.review;

import blindlap.plan.BlindLevel;
import blindlap.plan.Blinding;
import blindlap.plan.ChangeMethod;
import blindlap.plan.Covariate;
import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plan.Preparation;
import blindlap.plan.Protocol;
import blindlap.plan.Rule;
import blindlap.plan.Setup;
import blindlap.seal.OpenKey;
import blindlap.session.day.LapId;
import blindlap.session.day.LapState;
import blindlap.session.day.VoidEvent;
import blindlap.stats.compare.Scale;
import blindlap.stats.order.Drift;
import blindlap.stats.order.Orders;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** Invented days for tests, made in memory: any rule, any measures, any values. */
public final class Days {
  private Days() {}

  /** A measure of a kind, primary unless said otherwise. */
  public static Measure measure(
      String name,
      Measure.Kind kind,
      Measure.Role role,
      Measure.Better better,
      @Nullable String worthwhile,
      Scale scale) {
    String unit = kind.timed() ? "s" : kind == Measure.Kind.COUNT ? "a lap" : "points";
    return new Measure(
        name,
        kind,
        unit,
        kind.rating() ? "none" : "",
        kind.rating() ? "all" : "",
        role,
        better,
        worthwhile == null ? null : new BigDecimal(worthwhile),
        Drift.LINE,
        scale);
  }

  /** The usual primary measure: a lap time that matters from 0.5 s. */
  public static Measure lapTime() {
    return measure(
        "lap time",
        Measure.Kind.LAP_TIME,
        Measure.Role.PRIMARY,
        Measure.Better.LOWER,
        "0.5",
        Scale.RAW);
  }

  /** A plan of these measures with one scored lap a stint. */
  public static Plan plan(Rule rule, List<Measure> measures) {
    return plan(rule, measures, 1);
  }

  /** A plan of these measures with so many scored laps a stint. */
  public static Plan plan(Rule rule, List<Measure> measures, int scored) {
    List<Setup> setups = new ArrayList<>();
    for (int i = 0; i < rule.setups(); i++) {
      setups.add(Setup.named("Shock " + (char) ('K' + i)));
    }
    return new Plan(
        Plan.Kind.COMPARISON,
        "Which is better?",
        Plan.Expectations.NONE,
        "R. Lind",
        "Quarry loop",
        LocalDate.of(2026, 11, 14),
        "",
        setups,
        ChangeMethod.REFIT,
        null,
        "",
        List.of(),
        measures,
        Protocol.unnamed(rule),
        rule.stints(),
        new Plan.Laps(2, 0, scored),
        Blinding.BLIND,
        null,
        null,
        "",
        null,
        null,
        List.of(),
        List.of(),
        null,
        null,
        null);
  }

  /** The same plan with these covariates. */
  public static Plan with(Plan plan, List<Covariate> covariates) {
    return with(plan, plan.blinding(), covariates);
  }

  /** The same plan at a blind level; a friend is named where one is needed. */
  public static Plan at(BlindLevel level, Plan plan) {
    Preparation friend =
        new Preparation("Mo", LocalDate.of(2026, 11, 12), Preparation.Masks.FRIEND, null, true);
    Blinding blinding = Blinding.at(level, level == BlindLevel.HELPER ? Preparation.NONE : friend);
    return with(plan, blinding, plan.covariates());
  }

  private static Plan with(Plan plan, Blinding blinding, List<Covariate> covariates) {
    return new Plan(
        plan.kind(),
        plan.question(),
        plan.expectations(),
        plan.rider(),
        plan.trail(),
        plan.day(),
        plan.conditions(),
        plan.setups(),
        plan.change(),
        plan.bikes(),
        plan.differencesReason(),
        plan.bike(),
        plan.measures(),
        plan.protocol(),
        plan.stints(),
        plan.laps(),
        blinding,
        plan.timetable(),
        plan.noise(),
        plan.override(),
        plan.series(),
        plan.seriesSessions(),
        covariates,
        plan.looks(),
        null,
        null,
        null);
  }

  /**
   * A day of this order.
   *
   * @param values one value a stint by measure; NaN where none
   */
  public static DayRecord day(Plan plan, String order, Map<String, double[]> values) {
    List<DayRecord.Lap> laps = new ArrayList<>();
    List<Integer> codes = new ArrayList<>();
    for (int stint = 1; stint <= plan.stints(); stint++) {
      Map<String, BigDecimal> lap = new HashMap<>();
      for (Map.Entry<String, double[]> each : values.entrySet()) {
        double value = each.getValue()[stint - 1];
        if (!Double.isNaN(value)) {
          lap.put(each.getKey(), BigDecimal.valueOf(value));
        }
      }
      laps.add(new DayRecord.Lap(new LapId(stint, 1), true, lap, Optional.empty(), ""));
      codes.add(100 + stint);
    }
    return new DayRecord(
        "0123456789abcdef",
        plan,
        OpenKey.opened("test", order, codes, "0".repeat(64), "0".repeat(64), 0, Optional.empty()),
        laps,
        new TreeMap<>(),
        new TreeMap<>(),
        plan.stints(),
        new TreeMap<>(),
        List.of());
  }

  /**
   * A day with several scored laps a stint, some of them void.
   *
   * @param laps by measure and stint, one value a lap; NaN where none
   * @param voids true where a lap is void
   */
  public static DayRecord laps(
      Plan plan, String order, Map<String, double[][]> laps, boolean[][] voids) {
    List<DayRecord.Lap> all = new ArrayList<>();
    for (int stint = 0; stint < plan.stints(); stint++) {
      for (int lap = 0; lap < plan.laps().scored(); lap++) {
        Map<String, BigDecimal> values = new HashMap<>();
        for (Map.Entry<String, double[][]> each : laps.entrySet()) {
          double value = each.getValue()[stint][lap];
          if (!Double.isNaN(value)) {
            values.put(each.getKey(), BigDecimal.valueOf(value));
          }
        }
        Optional<LapState.Voided> isVoid =
            voids[stint][lap]
                ? Optional.of(new LapState.Voided(VoidEvent.TRAFFIC, "", false))
                : Optional.empty();
        all.add(new DayRecord.Lap(new LapId(stint + 1, lap + 1), true, values, isVoid, ""));
      }
    }
    DayRecord empty = day(plan, order, Map.of());
    return new DayRecord(
        empty.session(),
        plan,
        empty.key(),
        all,
        empty.guesses(),
        empty.blindBroken(),
        plan.stints(),
        empty.fits(),
        List.of());
  }

  /** A random day of a rule: base, effects per setup, noise; rounded to the digits of a sheet. */
  public static double[] values(
      int[] order, double base, double[] effects, double noise, int decimals, Random random) {
    double[] values = new double[order.length];
    for (int i = 0; i < values.length; i++) {
      double value = base + effects[order[i]] + noise * random.nextGaussian();
      values[i] =
          BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_EVEN).doubleValue();
    }
    return values;
  }

  /** A random admissible order of a rule, as letters. */
  public static String order(Rule rule, Random random) {
    var set = rule.assignments();
    int index = random.nextInt(set.count().intValueExact());
    return Orders.letters(set.order(java.math.BigInteger.valueOf(index)));
  }
}
