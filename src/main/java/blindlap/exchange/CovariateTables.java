package blindlap.exchange;

import blindlap.exchange.PackageTables.Column;
import blindlap.fault.Unreadable;
import blindlap.plan.Covariate;
import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.review.DayRecord;
import blindlap.review.StintValues;
import blindlap.review.TakenOut;
import blindlap.session.day.CovariateAt;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;

/** What was said of covariates, and what of it was taken out, as tables of a data package. */
final class CovariateTables {
  private static final String SAID = "covariates";
  private static final String OUT = "taken_out";
  static final String FILE = SAID + ".csv";

  private CovariateTables() {}

  /** What was said; no table where no covariate is declared. */
  static void said(PackageTables tables, Plan plan, SortedMap<CovariateAt, BigDecimal> said) {
    if (plan.covariates().isEmpty()) {
      return;
    }
    List<List<String>> rows = new ArrayList<>();
    said.forEach(
        (at, value) ->
            rows.add(
                List.of(
                    at.covariate(),
                    plan.covariate(at.covariate()).map(Covariate::unit).orElse(""),
                    String.valueOf(at.stint()),
                    String.valueOf(at.lap()),
                    value.toPlainString())));
    tables.table(
        SAID,
        List.of(
            Column.of("covariate", "string", "name of the covariate"),
            Column.of("unit", "string", "its unit, or what its numbers mean"),
            Column.of("stint", "integer", "stint, from 1"),
            Column.of("lap", "integer", "lap within the stint; 0 where it is said for the stint"),
            Column.of("value", "number", "what was said")),
        rows);
  }

  /** The columns that were taken out of every measure beside its drift. */
  static void takenOut(PackageTables tables, DayRecord day) {
    if (day.plan().covariates().isEmpty()) {
      return;
    }
    List<List<String>> rows = new ArrayList<>();
    for (Measure measure : day.plan().measures()) {
      StintValues stints = StintValues.counted(day, measure);
      for (Covariate covariate : TakenOut.of(day, measure, stints).used()) {
        double[] values = TakenOut.values(day, covariate);
        for (int i = 0; i < values.length; i++) {
          rows.add(
              List.of(
                  measure.name(),
                  covariate.name(),
                  String.valueOf(i + 1),
                  Double.isNaN(values[i]) ? "" : String.valueOf(values[i])));
        }
      }
    }
    tables.table(
        OUT,
        List.of(
            Column.of("measure", "string", "name of the measure"),
            Column.of("covariate", "string", "covariate that is taken out of it"),
            Column.of("stint", "integer", "stint, from 1"),
            Column.of(
                "value",
                "number",
                "its value, the mean of the scored laps where it is said for laps; empty where it"
                    + " was not said, which masks the stint")),
        rows);
  }

  /**
   * What was said, of the rows of a table.
   *
   * @throws Unreadable if a column is missing or a cell cannot be meant
   */
  static SortedMap<CovariateAt, BigDecimal> read(List<Map<String, String>> rows, Plan plan) {
    SortedMap<CovariateAt, BigDecimal> said = new TreeMap<>();
    for (Map<String, String> row : rows) {
      String name = PackageCells.text(row, "covariate");
      Covariate covariate =
          plan.covariate(name).orElseThrow(() -> new Unreadable(PackageFault.NOT_A_VALUE, name));
      int lap = PackageCells.whole(row, "lap");
      if (lap < 0 || lap > plan.laps().perStint() || covariate.perLap() != lap > 0) {
        throw new Unreadable(PackageFault.NO_SUCH_LAP, FILE, lap);
      }
      said.put(
          new CovariateAt(name, PackageCells.stint(row, FILE, 1, plan), lap),
          PackageCells.number(PackageCells.text(row, "value"), "value"));
    }
    return said;
  }
}
