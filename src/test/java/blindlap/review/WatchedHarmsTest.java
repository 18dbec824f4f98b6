package blindlap.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plan.Rule;
import blindlap.stats.compare.HarmTest;
import blindlap.stats.compare.Scale;
import blindlap.stats.order.Orders;
import blindlap.wording.FindingText;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** Watched harms of a whole day: their number counts, and the headline says no more than holds. */
class WatchedHarmsTest {
  private static final Rule RULE = Rule.blocks(2, 16, 4);
  private static final String ORDER = "ABBABABAABBABAAB";

  private static Measure measure(String name, Measure.Role role) {
    return Days.measure(name, Measure.Kind.SECTOR_TIME, role, Measure.Better.LOWER, "1", Scale.RAW);
  }

  /** Sectors with these effects of B, noise .3; a gap from which stint on. */
  private static Finding day(int[] masked, double... effects) {
    List<Measure> measures = new ArrayList<>();
    measures.add(measure("lap", Measure.Role.PRIMARY));
    Map<String, double[]> values = new TreeMap<>();
    Random random = new Random(7);
    int[] order = Orders.parse(ORDER);
    values.put("lap", Days.values(order, 60, new double[] {0, 3}, 0.3, 2, random));
    for (int i = 0; i < effects.length; i++) {
      String name = "sector " + (i + 1);
      measures.add(measure(name, Measure.Role.WATCH_FOR_HARM));
      double[] y = Days.values(order, 20, new double[] {0, effects[i]}, 0.3, 2, random);
      for (int stint : masked) {
        y[stint - 1] = Double.NaN;
      }
      values.put(name, y);
    }
    Plan plan = Days.plan(RULE, measures);
    return Analysis.of(Days.day(plan, ORDER, values));
  }

  @Test
  void theNumberOfWatchedMeasuresMultipliesThePOfTheSmallest() {
    HarmTest alone = day(new int[0], 2).others().get(0).harm().orElseThrow();
    HarmTest among = day(new int[0], 2, 0, 0, 0, 0).others().get(0).harm().orElseThrow();
    assertThat(among.p()).isEqualTo(alone.p());
    assertThat(alone.adjusted()).isEqualTo(alone.p());
    assertThat(among.adjusted()).isCloseTo(5 * alone.p(), within(1e-12));
  }

  @Test
  void aShownHarmStandsInTheHeadlineAndTheRestIsSaidForEachMeasureAlone() {
    FindingText text = new FindingText(day(new int[0], 2, 0));
    assertThat(text.headline().text())
        .endsWith(", but Shock L did harm in sector 1: higher by 1 s or more.");
    assertThat(text.watchedHarms())
        .anyMatch(
            l ->
                l.startsWith("Shock L against Shock K, sector 1: harm of 1 s or more shown (p = ")
                    && l.endsWith(", adjusted for the number of watched measures)."))
        .filteredOn(l -> l.contains("ruled out"))
        .hasSize(3)
        .allMatch(l -> l.endsWith("for this measure alone."));
  }

  @Test
  void everyWatchedHarmIsRuledOutOnlyIfEachOneIsOfBothSetups() {
    String all = "; every watched harm is ruled out.";
    assertThat(new FindingText(day(new int[0], 0, 0.1)).headline().text()).endsWith(all);
    Finding open = day(new int[0], 0, 1.1);
    assertThat(open.harms()).isEmpty();
    assertThat(new FindingText(open).headline().text()).doesNotContain("ruled out");
  }

  @Test
  void withTwoStintsOfASetupLeftNothingIsRuledOut() {
    List<Integer> ofA = new ArrayList<>();
    for (int stint = 1; stint <= 16; stint++) {
      if (ORDER.charAt(stint - 1) == 'A') {
        ofA.add(stint);
      }
    }
    // Lost and void alike: void stints do not count as missing, so the measure is still tested.
    int[] two = ofA.subList(0, 6).stream().mapToInt(i -> i).toArray();
    int[] three = Arrays.copyOf(two, 5);
    assertThat(voided(three).others().get(0).harm().orElseThrow().ruledOut()).isTrue();
    Finding few = voided(two);
    assertThat(few.others().get(0).tested()).isTrue();
    assertThat(few.others().get(0).harm().orElseThrow().ruledOut()).isFalse();
    assertThat(new FindingText(few).headline().text()).doesNotContain("ruled out");
  }

  private static Finding voided(int[] stints) {
    DayRecord day = day(new int[0], 0).day();
    List<DayRecord.Lap> laps = new ArrayList<>(day.laps());
    for (int stint : stints) {
      DayRecord.Lap lap = laps.get(stint - 1);
      laps.set(
          stint - 1,
          new DayRecord.Lap(
              lap.id(),
              true,
              lap.values(),
              java.util.Optional.of(
                  new blindlap.session.day.LapState.Voided(
                      blindlap.session.day.VoidEvent.TRAFFIC, "", false)),
              ""));
    }
    return Analysis.of(
        new DayRecord(
            day.session(),
            day.plan(),
            day.key(),
            laps,
            day.guesses(),
            day.blindBroken(),
            day.lastStint(),
            day.fits(),
            List.of()));
  }

  @Test
  void aWatchedMeasureThatCannotBeTestedCountsAndKeepsTheHeadlineFromSayingEvery() {
    List<Measure> measures =
        List.of(
            measure("lap", Measure.Role.PRIMARY),
            measure("sector 1", Measure.Role.WATCH_FOR_HARM),
            measure("sector 2", Measure.Role.WATCH_FOR_HARM));
    int[] order = Orders.parse(ORDER);
    Random random = new Random(9);
    double[] sparse = Days.values(order, 20, new double[] {0, 0}, 0.3, 2, random);
    Arrays.fill(sparse, 0, 6, Double.NaN);
    Finding finding =
        Analysis.of(
            Days.day(
                Days.plan(RULE, measures),
                ORDER,
                Map.of(
                    "lap", Days.values(order, 60, new double[] {0, 3}, 0.3, 2, random),
                    "sector 1", Days.values(order, 20, new double[] {0, 2}, 0.3, 2, random),
                    "sector 2", sparse)));
    HarmTest test = finding.others().get(0).harm().orElseThrow();
    assertThat(finding.others().get(1).harm()).isEmpty();
    assertThat(test.adjusted()).isCloseTo(2 * test.p(), within(1e-12));
    assertThat(new FindingText(finding).headline().text()).doesNotContain("ruled out");
  }
}
