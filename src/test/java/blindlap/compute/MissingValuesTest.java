package blindlap.compute;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.picture.FindingPictures;
import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plan.Rule;
import blindlap.plot.surface.Drawing;
import blindlap.plot.surface.Palette;
import blindlap.plot.surface.SvgSurface;
import blindlap.review.Analysis;
import blindlap.review.Caveat;
import blindlap.review.DayRecord;
import blindlap.review.Days;
import blindlap.review.Finding;
import blindlap.stats.compare.Scale;
import blindlap.stats.order.Orders;
import blindlap.wording.FindingText;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** More than 30 % missing: no p on any surface; and what an unadjusted interval is called. */
class MissingValuesTest {
  private static Measure measure(String name, Measure.Role role) {
    return Days.measure(name, Measure.Kind.LAP_TIME, role, Measure.Better.LOWER, "0.5", Scale.RAW);
  }

  /** A strong difference, a third of the values missing, and one stint where the blind broke. */
  private static Finding sparse(Rule rule, String order) {
    Plan plan = Days.plan(rule, List.of(measure("lap time", Measure.Role.PRIMARY)));
    int[] setups = Orders.parse(order);
    double[] values = Days.values(setups, 90, new double[] {0, 3, 6}, 0.3, 2, new Random(3));
    for (int stint = 1; stint < values.length; stint += 3) {
      values[stint] = Double.NaN;
    }
    DayRecord day = Days.day(plan, order, Map.of("lap time", values));
    return Analysis.of(
        new DayRecord(
            day.session(),
            plan,
            day.key(),
            day.laps(),
            day.guesses(),
            new TreeMap<>(Map.of(1, "The cover slipped.")),
            day.lastStint(),
            day.fits(),
            List.of()));
  }

  private static List<Finding> sparse() {
    return List.of(
        sparse(Rule.blocks(2, 16, 4), "ABBABABAABBABAAB"),
        sparse(Rule.blocks(3, 18, 3), "ABCBACCABACBBCACAB"));
  }

  @Test
  void noSentenceGivesAPEvidenceAndResultsBesideIncluded() {
    for (Finding finding : sparse()) {
      assertThat(finding.comparisons().allMatch(c -> c.caveats().contains(Caveat.MISSING)))
          .isTrue();
      List<String> lines = new FindingText(finding).lines();
      assertThat(lines).anyMatch(l -> l.startsWith("Without stint 1, where the blind was broken"));
      assertThat(lines).noneMatch(l -> l.contains("p = ") || l.contains("p below"));
    }
  }

  @Test
  void noNumberOfTheFindingIsAPOfTheMeasure() throws IOException {
    for (Finding finding : sparse()) {
      JsonNode json = new ObjectMapper().readTree(FindingJson.write(finding));
      assertThat(json.get("measures").findValues("p")).isNotEmpty().allMatch(JsonNode::isNull);
      assertThat(json.get("measures").findValues("p_adjusted")).allMatch(JsonNode::isNull);
      assertThat(json.get("sensitivity").findValues("p")).isNotEmpty().allMatch(JsonNode::isNull);
    }
  }

  @Test
  void noPictureWritesAP() {
    for (Finding finding : sparse()) {
      Drawing drawing = new FindingPictures(finding).difference().orElseThrow();
      assertThat(SvgSurface.svg(drawing, 800, 1, Palette.PRINT, "stints"))
          .contains("Shock L less Shock K")
          .doesNotContain("p = ")
          .doesNotContain("p below")
          .doesNotContain("not told apart");
    }
  }

  @Test
  void anIntervalBesideAnAdjustedPIsCalledOneOfItsMeasureAlone() {
    String order = "ABBABABAABBABAAB";
    int[] setups = Orders.parse(order);
    Random random = new Random(5);
    List<Measure> measures =
        List.of(
            measure("lap time", Measure.Role.PRIMARY),
            measure("top", Measure.Role.SECONDARY),
            measure("foot", Measure.Role.SECONDARY));
    Map<String, double[]> values = new TreeMap<>();
    for (Measure each : measures) {
      values.put(each.name(), Days.values(setups, 90, new double[] {0, 0.4}, 0.3, 2, random));
    }
    Finding finding =
        Analysis.of(Days.day(Days.plan(Rule.blocks(2, 16, 4), measures), order, values));
    List<String> others = new FindingText(finding).others();
    assertThat(others)
        .filteredOn(l -> l.contains("adjusted for the number of secondary measures"))
        .hasSize(2)
        .allMatch(l -> l.contains(", for this measure alone; p"))
        .allMatch(l -> l.matches(".* Its 90 % limits, [^,]*, for this measure alone, .*"));
    assertThat(new FindingText(finding).evidence()).noneMatch(l -> l.contains("alone"));
  }
}
