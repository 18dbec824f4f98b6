package blindlap.calibration;

import blindlap.stats.compare.OrderSet;
import blindlap.stats.order.Drift;
import blindlap.stats.power.DayPower;
import blindlap.stats.power.Detectable;
import blindlap.stats.power.SimulatedDays;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** The difference seen on 8 of 10 days, by formula beside simulation, for every rule and drift. */
final class DetectableTable {
  private static final double POWER = 0.8;
  private static final double WITHIN = 0.03;

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
    for (Design design : Design.values()) {
      if (OrderSet.of(design.orders()).attainableLevel() > 0) {
        table.row(design);
      }
    }
    return table;
  }

  List<String> lines() {
    List<String> all = new ArrayList<>();
    all.add("| rule, stints | orders | nothing removed | a line | a curve |");
    all.add("| --- | ---: | --- | --- | --- |");
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
    lines.add(row.append(" |").toString());
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
        differences.add(said(design, drift, found, expected));
      }
    }
    return decimal(found) + " (" + decimal(expected) + ")";
  }

  private static String said(Design design, Drift drift, double found, double expected) {
    return "difference seen on 8 of 10 days, formula and simulation, %s, %s: %s against %s"
        .formatted(design.text(), drift, decimal(found), decimal(expected));
  }

  private static String decimal(double value) {
    return String.format(Locale.ROOT, "%.2f", value);
  }
}
