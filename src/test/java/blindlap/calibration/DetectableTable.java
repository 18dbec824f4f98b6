package blindlap.calibration;

import blindlap.stats.distribution.Interval;
import blindlap.stats.order.Drift;
import blindlap.stats.power.DayPower;
import blindlap.stats.power.Detectable;
import blindlap.stats.power.SimulatedDays;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * The difference seen on 8 of 10 days, by formula beside simulation, for every rule and drift, and
 * beside the prototype's where it has one.
 */
final class DetectableTable {
  private static final double POWER = 0.8;
  private static final double WITHIN = 0.03;

  /** docs/method.md#prototype-designs: white noise, a straight line removed. */
  private static final Map<Design, Double> PROTOTYPE = new EnumMap<>(Design.class);

  static {
    PROTOTYPE.put(Design.SHORT_8, 2.94);
    PROTOTYPE.put(Design.COMPLETE_8, 3.40);
    PROTOTYPE.put(Design.PAIRS_12, 2.53);
    PROTOTYPE.put(Design.BLOCK4_12, 1.91);
    PROTOTYPE.put(Design.RUN2_12, 1.98);
    PROTOTYPE.put(Design.COMPLETE_12, 1.91);
    PROTOTYPE.put(Design.PAIRS_16, 1.68);
    PROTOTYPE.put(Design.BLOCK4_16, 1.54);
    PROTOTYPE.put(Design.RUN2_16, 1.58);
    PROTOTYPE.put(Design.COMPLETE_16, 1.57);
    PROTOTYPE.put(Design.PAIRS_20, 1.43);
    PROTOTYPE.put(Design.BLOCK4_20, 1.35);
    PROTOTYPE.put(Design.PAIRS_24, 1.26);
    PROTOTYPE.put(Design.ABBA_24, 1.79);
    PROTOTYPE.put(Design.BLOCK4_24, 1.21);
    PROTOTYPE.put(Design.RUN2_24, 1.24);
    PROTOTYPE.put(Design.COMPLETE_24, 1.23);
  }

  private final int days;
  private final long seed;
  private final List<String> lines = new ArrayList<>();
  private final List<String> differences = new ArrayList<>();
  private int compared;
  private double farthest;
  private double farthestOnResiduals;
  private int large;

  private DetectableTable(int days, long seed) {
    this.days = days;
    this.seed = seed;
  }

  /**
   * Simulates all rules of {@link Design} that can reach 5 %.
   *
   * @param days per rule and drift
   */
  static DetectableTable of(int days, long seed) {
    DetectableTable table = new DetectableTable(days, seed);
    for (Design design : PROTOTYPE.keySet()) {
      table.row(design);
    }
    return table;
  }

  List<String> lines() {
    List<String> all = new ArrayList<>();
    all.add("| rule, stints | orders | nothing removed | a line | a curve | prototype, a line |");
    all.add("| --- | ---: | --- | --- | --- | ---: |");
    all.addAll(lines);
    return all;
  }

  /** How far formula and simulation are apart at most. */
  String farthest() {
    return String.format(
        Locale.ROOT,
        "In the %d cells of 200 orders and more the two differ by %.1f %% at most; a formula on all"
            + " degrees of freedom of the residuals would differ by %.1f %%.",
        large,
        100 * farthest,
        100 * farthestOnResiduals);
  }

  /** Figures outside their bound, in words. */
  List<String> differences() {
    return differences;
  }

  int compared() {
    return compared;
  }

  private void row(Design design) {
    StringBuilder row = new StringBuilder("| " + design.text());
    row.append(" | ").append(design.orders().count());
    for (Drift drift : Drift.values()) {
      row.append(" | ").append(cell(design, drift));
    }
    row.append(" | ").append(decimal(PROTOTYPE.get(design))).append(" |");
    lines.add(row.toString());
  }

  private String cell(Design design, Drift drift) {
    DayPower day = DayPower.of(design.orders(), drift);
    Detectable formula = day.formula();
    double found = formula.difference(1, POWER);
    SimulatedDays simulated = day.simulate(days, seed, () -> false);
    double expected = simulated.difference(1, POWER);
    if (formula.formulaHolds()) {
      compared++;
      large++;
      farthest = Math.max(farthest, Math.abs(found / expected - 1));
      double onResiduals = formula.onResidualDf().difference(1, POWER);
      farthestOnResiduals = Math.max(farthestOnResiduals, Math.abs(onResiduals / expected - 1));
      if (Math.abs(found / expected - 1) > WITHIN) {
        differences.add(said("formula and simulation", design, drift, found, expected));
      }
    }
    if (drift == Drift.LINE) {
      prototype(design, simulated);
    }
    return decimal(found) + " (" + decimal(expected) + ")";
  }

  private void prototype(Design design, SimulatedDays simulated) {
    double prototype = PROTOTYPE.get(design);
    double found = simulated.difference(1, POWER);
    Interval error = simulated.differenceError95(1, POWER);
    double own = error.halfWidth() / 1.96;
    double its = own * Math.sqrt((double) days / ReferenceFigures.DAYS);
    compared++;
    if (Math.abs(found - prototype) > .005 + 3 * Math.hypot(own, its)) {
      differences.add(said("simulation and prototype", design, Drift.LINE, found, prototype));
    }
  }

  private static String said(
      String what, Design design, Drift drift, double found, double expected) {
    return "difference seen on 8 of 10 days, %s, %s, %s: %s against %s"
        .formatted(what, design.text(), drift, decimal(found), decimal(expected));
  }

  private static String decimal(double value) {
    return String.format(Locale.ROOT, "%.2f", value);
  }
}
