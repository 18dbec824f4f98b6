package blindlap.calibration;

import blindlap.stats.compare.OrderSet;
import blindlap.stats.order.Drift;
import blindlap.stats.power.DayPower;
import blindlap.stats.power.SimulatedDays;
import blindlap.stats.power.VerdictOdds;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.ToDoubleFunction;

/**
 * Simulates days of every design under every noise and writes down how often the test errs, how
 * often the interval holds the truth, and how often each verdict comes out, beside the figures of
 * the prototype. One thread; arguments: days per cell, file to write.
 */
public final class Calibration {
  private static final long SEED = 20_260_301L;
  private static final int VERDICT_DAYS = 10_000;
  private static final int SHARPER_DAYS = 250;

  private static final int WAIT_DAYS = 2_000;

  /** Days a cell of the tables of levels. */
  private static final int STEPS_DAYS = 1_500;

  private static final int TELLING_RUNS = 100_000;
  private static final int FIELD_SEASONS = 2_000;

  /** Days a row of the table of covariates. */
  private static final int COVARIATE_DAYS = 10_000;

  private final int days;
  private final Map<Design, Map<NoiseScenario, CalibrationCell>> cells =
      new EnumMap<>(Design.class);
  private final List<String> differences = new ArrayList<>();
  private final StringBuilder text = new StringBuilder();
  private int compared;

  private Calibration(int days) {
    this.days = days;
  }

  /** Runs it. */
  public static void main(String[] arguments) throws IOException {
    int days = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 2000;
    Path file = Path.of(arguments.length > 1 ? arguments[1] : "docs/calibration.md");
    PrintStream out = System.out;
    out.println("simulating " + days + " days per cell on one thread");
    Calibration calibration = new Calibration(days);
    calibration.simulate();
    Files.writeString(file, calibration.report());
    out.println(
        calibration.compared
            + " figures compared, "
            + calibration.differences.size()
            + " differ; written to "
            + file);
  }

  private void simulate() {
    for (Design design : Design.values()) {
      if (OrderSet.of(design.orders()).attainableLevel() == 0) {
        continue;
      }
      Map<NoiseScenario, CalibrationCell> row = new EnumMap<>(NoiseScenario.class);
      for (NoiseScenario scenario : NoiseScenario.values()) {
        row.put(scenario, CalibrationCell.simulate(design, scenario, days, SEED));
      }
      cells.put(design, row);
    }
  }

  private String report() {
    line("# Calibration");
    line("");
    line("Written by `blindlap.calibration.Calibration`, not by hand. After `mvn package`:");
    line("");
    line(
        "<!-- not-run: takes minutes; CalibrationTest is a small run of the same kind in every"
            + " build -->");
    line("");
    line("    java -cp \"target/test-classes:target/classes:target/lib/*\" \\");
    line("        blindlap.calibration.Calibration " + days + " docs/calibration.md");
    line("");
    line(
        "(on Windows with `;` for `:`). It runs on one thread and takes about two minutes of"
            + " processor time for 3000 days per cell, and the tables of levels about ten more"
            + " (`blindlap.calibration.StepsTable "
            + STEPS_DAYS
            + "` prints them alone). `CalibrationTest` is a small run of the same"
            + " kind.");
    line("");
    line(
        "Every cell holds "
            + days
            + " simulated days of its own (seed "
            + SEED
            + "), each with an order drawn from the rule, noise of the kind named, and a true"
            + " difference of one standard deviation. Sets of up to 4 096 orders are counted whole,"
            + " larger ones by 999 fresh draws a day. A straight trend is removed. The standard"
            + " error of a share of .05 is "
            + decimal(4, Math.sqrt(.05 * .95 / days))
            + ", of one half "
            + decimal(4, .5 / Math.sqrt(days))
            + ". Reference figures come from an independent prototype with 10 000 days per cell.");
    line("");
    line(
        "Rules under which no p of .05 or less can come out are not simulated, since they never"
            + " reject: "
            + silent()
            + ".");
    line("");
    sizes();
    coverage();
    powers();
    detectables();
    verdicts();
    SharperTables.lines(SHARPER_DAYS).forEach(this::line);
    KnownVoidsTable.lines(8 * SHARPER_DAYS).forEach(this::line);
    WaitsTable.lines(WAIT_DAYS).forEach(this::line);
    SeveralLapsTable.lines(8 * SHARPER_DAYS).forEach(this::line);
    CovariatesTable.lines(COVARIATE_DAYS).forEach(this::line);
    LooksTable.lines(WAIT_DAYS).forEach(this::line);
    StepsTable.lines(STEPS_DAYS).forEach(this::line);
    TellingTable.lines(TELLING_RUNS).forEach(this::line);
    FieldTable.lines(FIELD_SEASONS).forEach(this::line);
    closing();
    return text.toString();
  }

  private String silent() {
    List<String> names = new ArrayList<>();
    for (Design design : Design.values()) {
      if (!cells.containsKey(design)) {
        names.add(design.text());
      }
    }
    return String.join("; ", names);
  }

  private void sizes() {
    line("## How often p is .05 or less when nothing is there");
    line("");
    line(
        "The test is exact, so no share may exceed .05 by more than simulation error, except in the"
            + " last column, where the two setups scatter differently and the hypothesis of the"
            + " test is not strictly true.");
    line("");
    table(CalibrationCell::size, 3);
    for (Map.Entry<Design, Map<NoiseScenario, CalibrationCell>> row : cells.entrySet()) {
      row.getValue()
          .forEach(
              (scenario, cell) -> {
                if (scenario.sharpNull()) {
                  compared++;
                  double limit = .05 + 3 * cell.error(.05);
                  if (cell.size() > limit) {
                    differs("share of p ≤ .05", row.getKey(), scenario, cell.size(), limit, 3);
                  }
                }
                compare("share of p ≤ .05", row.getKey(), scenario, cell.size(), true);
              });
    }
  }

  private void coverage() {
    line("## How often the 95 % interval holds the true difference");
    line("");
    line("Discrete sets cannot hit 95 % exactly and err on the side of a wider interval.");
    line("");
    table(CalibrationCell::coverage, 3);
    cells.forEach(
        (design, row) ->
            row.forEach(
                (scenario, cell) -> {
                  compared++;
                  double limit = .95 - 3 * cell.error(.95);
                  if (scenario.sharpNull() && cell.coverage() < limit) {
                    differs("coverage", design, scenario, cell.coverage(), limit, 3);
                  }
                }));
  }

  private void powers() {
    line("## How often a difference of one standard deviation is seen");
    line("");
    line(
        "Compared with the prototype for white noise, linear drift, both AR(1) and t, where the"
            + " figures exist.");
    line("");
    table(CalibrationCell::power, 2);
    cells.forEach(
        (design, row) ->
            row.forEach(
                (scenario, cell) -> {
                  if (ReferenceFigures.POWER_COMPARED.contains(scenario)) {
                    compare("power", design, scenario, cell.power(), false);
                  }
                }));
  }

  private void compare(
      String what, Design design, NoiseScenario scenario, double found, boolean size) {
    double reference =
        ReferenceFigures.of(
            size ? ReferenceFigures.SIZE : ReferenceFigures.POWER, design, scenario);
    if (Double.isNaN(reference)) {
      return;
    }
    compared++;
    double rounding = size ? .0005 : .005;
    if (Math.abs(found - reference) > 3 * error(reference) + rounding) {
      differs(what, design, scenario, found, reference, size ? 3 : 2);
    }
  }

  /** Standard error of the difference of two simulated shares. */
  private double error(double share) {
    return Math.sqrt(share * (1 - share) * (1.0 / days + 1.0 / ReferenceFigures.DAYS));
  }

  private void table(ToDoubleFunction<CalibrationCell> share, int places) {
    StringBuilder head = new StringBuilder("| rule, stints |");
    StringBuilder rule = new StringBuilder("| --- |");
    for (NoiseScenario scenario : NoiseScenario.values()) {
      head.append(' ').append(scenario.text()).append(" |");
      rule.append(" ---: |");
    }
    line(head.toString());
    line(rule.toString());
    cells.forEach(
        (design, row) -> {
          StringBuilder cells = new StringBuilder("| " + design.text() + " |");
          row.values()
              .forEach(
                  cell ->
                      cells
                          .append(' ')
                          .append(decimal(places, share.applyAsDouble(cell)))
                          .append(" |"));
          line(cells.toString());
        });
    line("");
  }

  private void detectables() {
    line("## Which difference is seen on 8 of 10 days");
    line("");
    line(
        "In standard deviations of white noise, by formula; in brackets by simulation, "
            + VERDICT_DAYS
            + " days per rule and drift. From 200 orders on the two may differ by 3 %; below, the"
            + " program simulates. Last the prototype's simulated figure.");
    line("");
    DetectableTable table = DetectableTable.of(VERDICT_DAYS, SEED);
    table.lines().forEach(this::line);
    line("");
    line(table.farthest());
    line("");
    compared += table.compared();
    differences.addAll(table.differences());
  }

  private void verdicts() {
    line("## How often each verdict comes out");
    line("");
    line(
        "White noise, "
            + VERDICT_DAYS
            + " days per rule, each counted with its mirror image. In per cent: real and worthwhile"
            + " / real but small / no worthwhile difference / direction known / not settled; in"
            + " brackets the prototype's figures.");
    line("");
    line("| rule, stints | D | true 0 | .5 D | 1 D | 1.5 D | 2 D | 3 D |");
    line("| --- | ---: | --- | --- | --- | --- | --- | --- |");
    Map<Design, SimulatedDays> simulated = new EnumMap<>(Design.class);
    for (ReferenceFigures.Verdicts row : ReferenceFigures.VERDICTS) {
      SimulatedDays dayset =
          simulated.computeIfAbsent(
              row.design(),
              design ->
                  DayPower.of(design.orders(), Drift.LINE)
                      .simulate(VERDICT_DAYS, SEED, () -> false));
      StringBuilder out =
          new StringBuilder("| " + row.design().text() + " | " + row.margin() + " |");
      for (int i = 0; i < ReferenceFigures.MULTIPLES.length; i++) {
        VerdictOdds odds =
            dayset.odds(ReferenceFigures.MULTIPLES[i] * row.margin(), row.margin(), 1);
        out.append(' ').append(verdictCell(row, i, odds)).append(" |");
      }
      line(out.toString());
    }
    line("");
  }

  private String verdictCell(ReferenceFigures.Verdicts row, int i, VerdictOdds odds) {
    double[] shares = {odds.worthwhile(), odds.small(), odds.none(), odds.direction(), odds.open()};
    StringBuilder found = new StringBuilder();
    StringBuilder reference = new StringBuilder();
    for (int v = 0; v < shares.length; v++) {
      found.append(v == 0 ? "" : "/").append(Math.round(100 * shares[v]));
      reference.append(v == 0 ? "" : "/").append(row.shares()[i][v]);
      double expected = row.shares()[i][v] / 100.0;
      double error =
          Math.sqrt(
              shares[v] * (1 - shares[v]) * (1.0 / VERDICT_DAYS + 1.0 / ReferenceFigures.DAYS));
      compared++;
      if (Math.abs(shares[v] - expected) > .005 + 3 * error) {
        differences.add(
            "verdict %d at %s D, %s, D = %s: %s, prototype %s"
                .formatted(
                    v + 1,
                    ReferenceFigures.MULTIPLES[i],
                    row.design().text(),
                    row.margin(),
                    decimal(3, shares[v]),
                    decimal(2, expected)));
      }
    }
    return found + " (" + reference + ")";
  }

  private void closing() {
    line("## What differs");
    line("");
    line(
        compared
            + " figures were held against a bound or against the prototype, at three standard"
            + " errors of the simulation plus the rounding of the printed figure; about one in 400"
            + " falls outside by chance.");
    line("");
    if (differences.isEmpty()) {
      line("Nothing does.");
    }
    differences.forEach(each -> line("- " + each));
  }

  private void differs(
      String what, Design design, NoiseScenario scenario, double found, double limit, int places) {
    differences.add(
        "%s, %s, %s: %s against %s"
            .formatted(
                what,
                design.text(),
                scenario.text(),
                decimal(places, found),
                decimal(places, limit)));
  }

  private static String decimal(int places, double value) {
    return String.format(Locale.ROOT, "%." + places + "f", value);
  }

  private void line(String line) {
    text.append(line).append('\n');
  }
}
