package blindlap.wording;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.plan.Measure;
import blindlap.plan.Rule;
import blindlap.review.Analysis;
import blindlap.review.DayRecord;
import blindlap.review.Days;
import blindlap.stats.compare.Scale;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.SortedMap;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** What a finding says of a measure that it cannot compare, as its reader reads it. */
class RefusedMeasuresTest {
  private static final String TWO = "BBAAAABBBABAAABB";
  private static final String THREE = "ABCCABBCABACABC";

  private static Measure measure(String name, Measure.Kind kind, Measure.Role role) {
    return Days.measure(name, kind, role, Measure.Better.LOWER, "0.5", Scale.RAW);
  }

  private static DayRecord day(String order, Map<String, double[]> more) {
    int setups = (int) order.chars().distinct().count();
    Rule rule = Rule.blocks(setups, order.length(), order.length());
    Map<String, double[]> values = new HashMap<>(more);
    List<Measure> measures =
        new java.util.ArrayList<>(
            List.of(measure("lap time", Measure.Kind.LAP_TIME, Measure.Role.PRIMARY)));
    for (String name : more.keySet()) {
      if (!name.equals("lap time")) {
        measures.add(measure(name, Measure.Kind.SECTOR_TIME, Measure.Role.SECONDARY));
      }
    }
    Random random = new Random(3);
    values.computeIfAbsent(
        "lap time",
        name ->
            random.doubles(order.length(), 90, 95).map(v -> Math.round(v * 100) / 100.0).toArray());
    return Days.day(Days.plan(rule, measures), order, values);
  }

  private static double[] only(String order, java.util.function.IntPredicate stints) {
    double[] values = new double[order.length()];
    Arrays.fill(values, Double.NaN);
    for (int stint = 1; stint <= values.length; stint++) {
      if (stints.test(stint)) {
        values[stint - 1] = 20 + stint % 3;
      }
    }
    return values;
  }

  private static List<String> others(String order, double[] values) {
    return new FindingText(Analysis.of(day(order, Map.of("sector", values)))).others();
  }

  @Test
  void tooFewStintsWithAValueAreCountedAndSoAreThoseNeeded() {
    assertThat(others(TWO, only(TWO, stint -> stint < 4)))
        .containsExactly(
            "sector: no comparison. Stints with a value: 3; at least 4 are needed once the drift is"
                + " removed.");
    assertThat(others(THREE, only(THREE, stint -> stint < 5)))
        .contains(
            "sector: no comparison. Stints with a value: 4; at least 5 are needed once the drift is"
                + " removed.");
  }

  @Test
  void aMeasureWithoutAnyValueIsSaidToHaveNone() {
    assertThat(others(TWO, only(TWO, stint -> false)))
        .containsExactly("sector: no comparison. No stint that counts has a value.");
    assertThat(others(THREE, only(THREE, stint -> false)))
        .contains("sector: no comparison. No stint that counts has a value.");
  }

  @Test
  void oneSetupLeftIsNoComparison() {
    String sentence =
        "sector: no comparison. On the stints left a setup has no value, or cannot be told from the"
            + " drift of the day.";
    assertThat(others(TWO, only(TWO, stint -> TWO.charAt(stint - 1) == 'A')))
        .containsExactly(sentence);
    assertThat(others(THREE, only(THREE, stint -> THREE.charAt(stint - 1) != 'C')))
        .contains(sentence);
  }

  @Test
  void aPrimaryMeasureThatCannotBeComparedIsRefusedInTheSameWords() {
    DayRecord day = day(TWO, Map.of("lap time", only(TWO, stint -> stint < 4)));
    assertThat(new FindingText(Analysis.of(day)).lines())
        .contains(
            "lap time: no comparison. Stints with a value: 3; at least 4 are needed once the drift"
                + " is removed.");
  }

  @Test
  void aResultBesideThatCannotBeHadSaysWhy() {
    DayRecord day = day(TWO, Map.of());
    SortedMap<Integer, String> broken = new TreeMap<>();
    for (int stint = 1; stint <= TWO.length(); stint++) {
      if (TWO.charAt(stint - 1) == 'A') {
        broken.put(stint, "heard it");
      }
    }
    DayRecord known =
        new DayRecord(
            day.session(),
            day.plan(),
            day.key(),
            day.laps(),
            day.guesses(),
            broken,
            16,
            day.fits(),
            List.of());
    assertThat(new FindingText(Analysis.of(known)).sensitivities())
        .containsExactly(
            "Without stints 3, 4, 5, 6, 10, 12, 13 and 14, where the blind was broken: no result. On"
                + " the stints left a setup has no value, or cannot be told from the drift of the"
                + " day.");
  }
}
