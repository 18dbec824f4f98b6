package blindlap.wording;

import blindlap.plan.Measure;
import blindlap.stats.compare.Scale;
import blindlap.stats.distribution.Interval;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Reads sentences like someone who believes none of them: takes what they claim out of their words
 * and holds it against the numbers, without the program's own arithmetic of words.
 */
final class Sceptic {
  /**
   * What may be claimed of a pair of setups.
   *
   * @param measure which measure
   * @param first name of the setup that the other is compared with
   * @param second name of the other
   * @param estimate second less first, on the scale of the analysis
   * @param p that decides: adjusted where it is adjusted; NaN where nothing was tested
   * @param alone p of the pair alone; NaN where nothing was tested
   * @param wide its 95 % interval, on the scale of the analysis
   */
  record Truth(
      Measure measure,
      String first,
      String second,
      double estimate,
      double p,
      double alone,
      Optional<Interval> wide) {}

  /** A setup, or a level, which is said without its unit where another stood before. */
  private static final String SETUP = "(Shock [K-N]|(?<![.\\d])\\d+(?: clicks)?(?![.\\d]))";

  private static final String NUMBER = "(\\d+(?:\\.\\d+)?)";
  private static final Pattern CLAIM =
      Pattern.compile(
          SETUP
              + " (?:was rated|was|took|had) "
              + NUMBER
              + "( %| s| points| point|) (?:a lap )?"
              + "(faster|longer|lower|higher|fewer|more)(?: [a-z ]+?)? than "
              + SETUP);
  private static final Pattern ONE_SIDE =
      Pattern.compile("95 % interval " + NUMBER + " to " + NUMBER);
  private static final Pattern P = Pattern.compile("p = (1|\\.\\d+)");
  private static final double REAL = 0.05;

  private Sceptic() {}

  /** What is wrong with a text; empty if nothing is. */
  static List<String> complaints(String text, List<Truth> truths) {
    List<String> wrong = new ArrayList<>();
    for (String clause : text.split("(?<=[.]) (?=[A-Z])|; (?=Shock)")) {
      Matcher claim = CLAIM.matcher(clause);
      while (claim.find()) {
        claim(clause, claim, truths, wrong);
      }
      apart(clause, truths, wrong);
      interval(clause, truths, wrong);
      p(clause, truths, wrong);
    }
    return wrong.stream().map(w -> w + ": " + text).toList();
  }

  private static Optional<Truth> of(List<Truth> truths, String one, String other) {
    return truths.stream()
        .filter(
            t ->
                same(t.first(), one) && same(t.second(), other)
                    || same(t.first(), other) && same(t.second(), one))
        .findFirst();
  }

  private static boolean same(String name, String said) {
    return name.replace(" clicks", "").equals(said.replace(" clicks", ""));
  }

  private static void claim(String clause, Matcher claim, List<Truth> truths, List<String> wrong) {
    Optional<Truth> found = of(truths, claim.group(1), claim.group(5));
    if (found.isEmpty()) {
      wrong.add("no such pair");
      return;
    }
    Truth truth = found.get();
    boolean less = List.of("faster", "lower", "fewer").contains(claim.group(4));
    String larger = truth.estimate() > 0 ? truth.second() : truth.first();
    if (same(larger, claim.group(1)) == less) {
      wrong.add("direction");
    }
    BigDecimal said = new BigDecimal(claim.group(2));
    double half = 0.5 * Math.pow(10, -said.scale());
    if (Math.abs(said.doubleValue() - size(truth)) > half * (1 + 1e-6) || said.signum() == 0) {
      wrong.add("size");
    }
    if (!claim.group(3).equals(unit(truth.measure(), claim.group(2)))) {
      wrong.add("unit");
    }
    if (!clause.contains("best estimate") && !(truth.p() <= REAL)) {
      wrong.add("certainty");
    }
  }

  private static double size(Truth truth) {
    double shift = Math.abs(truth.estimate());
    return truth.measure().scale() == Scale.RATIO ? 100 * (Math.exp(shift) - 1) : shift;
  }

  private static String unit(Measure measure, String number) {
    if (measure.scale() == Scale.RATIO) {
      return " %";
    }
    return switch (measure.kind()) {
      case LAP_TIME, SECTOR_TIME -> " s";
      case LINE_SCALE, CATEGORY_SCALE -> number.equals("1") ? " point" : " points";
      case COUNT -> "";
    };
  }

  private static void apart(String clause, List<Truth> truths, List<String> wrong) {
    Matcher apart =
        Pattern.compile(SETUP + " and " + SETUP + " are not told apart").matcher(clause);
    while (apart.find()) {
      if (of(truths, apart.group(1), apart.group(2)).filter(t -> t.p() <= REAL).isPresent()) {
        wrong.add("not told apart, though it is");
      }
    }
  }

  /** An interval of one side leaves out "no difference", and its ends are the limits. */
  private static void interval(String clause, List<Truth> truths, List<String> wrong) {
    Matcher said = ONE_SIDE.matcher(clause);
    while (said.find() && truths.size() == 1) {
      Truth truth = truths.get(0);
      if (truth.wide().isEmpty() || truth.alone() > REAL) {
        wrong.add("interval");
        continue;
      }
      Interval wide = truth.wide().get();
      double near = Math.min(Math.abs(wide.low()), Math.abs(wide.high()));
      double far = Math.max(Math.abs(wide.low()), Math.abs(wide.high()));
      end(said.group(1), near, truth.measure(), wrong);
      end(said.group(2), far, truth.measure(), wrong);
    }
  }

  /** A limit may be rounded outward, so by less than one of its last digit. */
  private static void end(String said, double shift, Measure measure, List<String> wrong) {
    double size = measure.scale() == Scale.RATIO ? 100 * (Math.exp(shift) - 1) : shift;
    BigDecimal number = new BigDecimal(said);
    if (Math.abs(number.doubleValue() - size) > Math.pow(10, -number.scale()) + 1e-9) {
      wrong.add("limit");
    }
  }

  private static void p(String clause, List<Truth> truths, List<String> wrong) {
    Matcher said = P.matcher(clause);
    while (said.find() && truths.size() == 1) {
      double number = Double.parseDouble(said.group(1));
      double p = clause.contains("adjusted") ? truths.get(0).p() : truths.get(0).alone();
      // The fourth decimal is the last that is printed.
      boolean near = Math.abs(number - p) <= Math.max(0.05 * p, 0.00005) + 1e-9;
      if (!near || number <= REAL != p <= REAL) {
        wrong.add("p");
      }
    }
  }
}
