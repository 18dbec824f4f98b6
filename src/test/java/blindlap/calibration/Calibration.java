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
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * Simulates days of every design under every noise and writes down how often the test errs, how
 * often the interval holds the truth, and how often each verdict comes out, beside what formulas
 * give. One thread; arguments: days per cell, file to write.
 */
public final class Calibration {
  private static final long SEED = 20_260_301L;
  private static final int VERDICT_DAYS = 10_000;

  /**
   * How far simulated verdicts and those by formula may be apart, beside the simulation's error.
   */
  private static final double FORMULA_OFF = 0.03;

  /** True differences in D, as columns of the verdict table. */
  private static final double[] MULTIPLES = {0, 0.5, 1, 1.5, 2, 3};

  /** Rules and the D of each as rows of the verdict table. */
  private static final Map<Design, List<Double>> MARGINS =
      new EnumMap<>(
          Map.of(
              Design.SHORT_8,
              List.of(1.0, 2.0),
              Design.BLOCK4_12,
              List.of(1.0, 1.5, 2.0),
              Design.BLOCK4_16,
              List.of(1.0, 1.5, 2.0),
              Design.BLOCK4_24,
              List.of(1.0, 1.5, 2.0)));

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
            + " difference of one standard deviation. Sets of up to 4,096 orders are counted whole,"
            + " larger ones by 999 fresh draws a day. A straight trend is removed. The standard"
            + " error of a share of .05 is "
            + decimal(4, Math.sqrt(.05 * .95 / days))
            + ", of one half "
            + decimal(4, .5 / Math.sqrt(days))
            + ".");
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
    table(CalibrationCell::power, 2);
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
            + " program simulates.");
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
            + " brackets by formula, from 200 orders on. The two may be three per cent apart.");
    line("");
    line("| rule, stints | D | true 0 | .5 D | 1 D | 1.5 D | 2 D | 3 D |");
    line("| --- | ---: | --- | --- | --- | --- | --- | --- |");
    MARGINS.forEach(
        (design, margins) -> {
          DayPower day = DayPower.of(design.orders(), Drift.LINE);
          SimulatedDays simulated = day.simulate(VERDICT_DAYS, SEED, () -> false);
          for (double margin : margins) {
            StringBuilder row = new StringBuilder("| " + design.text() + " | " + margin + " |");
            for (double multiple : MULTIPLES) {
              String where = "%s D, %s, D = %s".formatted(multiple, design.text(), margin);
              VerdictOdds found = simulated.odds(multiple * margin, margin, 1);
              row.append(' ').append(percent(found));
              if (day.formula().formulaHolds()) {
                VerdictOdds formula = day.odds(multiple * margin, margin, 1);
                row.append(" (").append(percent(formula)).append(')');
                compareVerdicts(where, found, formula);
              }
              row.append(" |");
            }
            line(row.toString());
          }
        });
    line("");
  }

  private static double[] shares(VerdictOdds odds) {
    return new double[] {
      odds.worthwhile(), odds.small(), odds.none(), odds.direction(), odds.open()
    };
  }

  private static String percent(VerdictOdds odds) {
    return Arrays.stream(shares(odds))
        .mapToObj(share -> String.valueOf(Math.round(100 * share)))
        .collect(Collectors.joining("/"));
  }

  private void compareVerdicts(String where, VerdictOdds found, VerdictOdds formula) {
    double[] simulated = shares(found);
    double[] expected = shares(formula);
    for (int v = 0; v < simulated.length; v++) {
      compared++;
      double error = Math.sqrt(simulated[v] * (1 - simulated[v]) / VERDICT_DAYS);
      if (Math.abs(simulated[v] - expected[v]) > FORMULA_OFF + 3 * error) {
        differences.add(
            "verdict %d at %s: %s, by formula %s"
                .formatted(v + 1, where, decimal(3, simulated[v]), decimal(3, expected[v])));
      }
    }
  }

  private void closing() {
    line("## What differs");
    line("");
    line(
        compared
            + " figures were held against a bound or against a formula, at three standard errors of"
            + " the simulation; about one in 400 falls outside by chance.");
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
    boolean typed = line.startsWith("    ");
    text.append(typed ? line : withCommas(line)).append('\n');
  }

  /** Thousands of what is counted, in sentences and in cells of their own. */
  private static String withCommas(String line) {
    return Pattern.compile("(?<![\\d.,`])\\d{4,}(?= (?:simulated )?(?:days|orders)\\b| \\|)")
        .matcher(line)
        .replaceAll(found -> String.format(Locale.ROOT, "%,d", Long.parseLong(found.group())));
  }
}
