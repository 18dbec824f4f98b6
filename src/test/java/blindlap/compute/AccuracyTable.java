package blindlap.compute;

import blindlap.stats.noise.OneWay;
import blindlap.stats.noise.Spread;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Prints the table of docs/accuracy.md: the log relative error of each certified value of the NIST
 * Statistical Reference Datasets that the tests hold. See there for the command.
 */
final class AccuracyTable {
  /** Digits beyond these are not in a double, nor in most certified values. */
  private static final double MOST_DIGITS = 15;

  private AccuracyTable() {}

  public static void main(String[] args) throws Exception {
    StringBuilder text = new StringBuilder();
    text.append("| set | n | mean | sd | lag-1 |\n| --- | ---: | ---: | ---: | ---: |\n");
    univariate().forEach((name, row) -> text.append(row(name, row)));
    text.append("\n| set | n | between SS | within SS | F | p | R² | residual SD |\n");
    text.append("| --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: |\n");
    oneWay().forEach((name, row) -> text.append(row(name, row)));
    System.out.write(text.toString().getBytes(StandardCharsets.UTF_8));
    System.out.flush();
  }

  /** Rows by set: n, then digits of mean, sd and lag-1 autocorrelation. */
  static SortedMap<String, double[]> univariate() throws Exception {
    SortedMap<String, double[]> rows = new TreeMap<>();
    for (CheckFile check : nist("spread")) {
      double[] y = check.request().given().numbers("values");
      rows.put(
          name(check),
          spread(y, check.expected("mean"), check.expected("sd"), check.expected("lag1")));
    }
    // NumAcc2 and NumAcc4 follow the printed rule of their sets: one middle value, then 500 times
    // 0.1 below and 0.1 above it.
    rows.put("NumAcc2", spread(alternating("1"), 1.2, 0.1, -0.999));
    rows.put("NumAcc4", spread(alternating("10000000"), 10000000.2, 0.1, -0.999));
    return rows;
  }

  /** Rows by set: n, then digits of the sums of squares, F, p, R² and residual SD. */
  static SortedMap<String, double[]> oneWay() throws Exception {
    SortedMap<String, double[]> rows = new TreeMap<>();
    for (CheckFile check : nist("one-way")) {
      OneWay found = OneWay.of(check.request().given().table("groups"));
      rows.put(
          name(check),
          new double[] {
            found.betweenDf() + found.withinDf() + 1,
            digits(found.betweenSquares(), check.expected("between_ss")),
            digits(found.withinSquares(), check.expected("within_ss")),
            digits(found.f(), check.expected("f")),
            digits(found.p(), check.expected("p")),
            digits(found.rSquared(), check.expected("r_squared")),
            digits(found.residualSd(), check.expected("residual_sd"))
          });
    }
    return rows;
  }

  /** −log₁₀|found − certified|/|certified|, at most 15; NaN without a certified value. */
  static double digits(double found, double certified) {
    double off = Math.abs(found - certified) / Math.abs(certified);
    return off == 0 ? MOST_DIGITS : Math.min(MOST_DIGITS, -Math.log10(off));
  }

  private static double[] spread(double[] y, double mean, double sd, double lag1) {
    Spread found = Spread.of(y);
    return new double[] {
      y.length, digits(found.mean(), mean), digits(found.sd(), sd), digits(found.lag1(), lag1)
    };
  }

  private static double[] alternating(String whole) {
    double[] y = new double[1001];
    for (int i = 0; i < y.length; i++) {
      y[i] = Double.parseDouble(whole + (i == 0 ? ".2" : i % 2 == 1 ? ".1" : ".3"));
    }
    return y;
  }

  private static List<CheckFile> nist(String calculation) throws Exception {
    List<CheckFile> found = new ArrayList<>();
    for (CheckFile check : CheckFilesTest.checks()) {
      if (check.request().calculation().equals(calculation) && check.source().startsWith("NIST")) {
        found.add(check);
      }
    }
    return found;
  }

  /** The set's name as the check's title has it, such as {@code SmLs04}. */
  private static String name(CheckFile check) {
    String title =
        check.title().replace("NIST StRD univariate ", "").replace("NIST StRD one-way ANOVA ", "");
    return title.substring(0, title.indexOf(':'));
  }

  private static String row(String name, double[] row) {
    StringBuilder line = new StringBuilder("| " + name + " | " + Math.round(row[0]));
    for (int i = 1; i < row.length; i++) {
      line.append(Double.isNaN(row[i]) ? " | –" : String.format(Locale.ROOT, " | %.1f", row[i]));
    }
    return line + " |\n";
  }
}
