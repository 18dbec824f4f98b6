package blindlap.review;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.plan.Plan;
import blindlap.plan.Plans;
import blindlap.plan.Rule;
import blindlap.stats.tell.WaitTest;
import blindlap.wording.FindingText;
import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.SortedMap;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

class WaitsTest {
  private static final String ORDER = "ABBABAABBBAA";

  private static final Plan TWELVE = Days.plan(Rule.blocks(2, 12, 4), List.of(Days.lapTime()));

  private static DayRecord day(Plan plan, SortedMap<Integer, Handling> handlings) {
    double[] values = new double[plan.stints()];
    Random random = new Random(3);
    for (int i = 0; i < values.length; i++) {
      values[i] = 90 + random.nextInt(100) / 100.0;
    }
    String order = plan.stints() == 12 ? ORDER : "ABBABAABBBAAABBA";
    return Days.day(plan, order, Map.of("lap time", values)).with(handlings);
  }

  private static boolean real(int stint) {
    return stint > 1 && ORDER.charAt(stint - 1) != ORDER.charAt(stint - 2);
  }

  /** Waits of 7 min and a bit, real swaps so much longer. */
  private static SortedMap<Integer, Handling> handlings(int stints, int longer) {
    SortedMap<Integer, Handling> all = new TreeMap<>();
    for (int stint = 1; stint <= stints; stint++) {
      int wait = 450 + stint * 7 % 5 + (stint <= 12 && real(stint) ? longer : 0);
      all.put(stint, handling(stint, wait, 430, null));
    }
    return all;
  }

  private static Handling handling(
      int stint, int wait, int took, @org.jspecify.annotations.Nullable String mishap) {
    return new Handling(
        stint, BigDecimal.valueOf(wait), BigDecimal.valueOf(took), BigDecimal.valueOf(420), mishap);
  }

  private static List<String> said(DayRecord day) {
    return new FindingText(Analysis.of(day)).waits();
  }

  @Test
  void realSwapsThatTookLongerAreSaidWithTheirSecondsBesideTheGuesses() {
    DayRecord day = day(TWELVE, handlings(12, 40));
    WaitTest test = Analysis.of(day).waits().test().orElseThrow();
    assertThat(test.waits()).isEqualTo(11);
    assertThat(test.kind().flagged()).isTrue();
    assertThat(said(day)).hasSize(1);
    assertThat(said(day).get(0))
        .startsWith(
            "The waits may have told: real swaps took 40 s longer than dummy swaps (p = .00")
        .endsWith("Who feels how long a handling takes needs no look at the bike.");
    List<String> lines = new FindingText(Analysis.of(day)).lines();
    int guesses = lines.indexOf(new FindingText(Analysis.of(day)).guesses());
    assertThat(lines.get(guesses + 1)).isEqualTo(said(day).get(0));
  }

  @Test
  void waitsThatDoNotDifferAreNeverCalledProof() {
    assertThat(said(day(TWELVE, handlings(12, 0))))
        .singleElement()
        .asString()
        .startsWith("No sign that the waits told: ")
        .endsWith("over 11 waits. It is no proof that the blind held.");
  }

  @Test
  void aMishapIsLeftOutAndEveryOverrunIsListedAsACue() {
    SortedMap<Integer, Handling> all = handlings(12, 0);
    all.put(5, handling(5, 700, 660, "a stripped bolt"));
    all.put(7, handling(7, 560, 505, null));
    all.put(8, handling(8, 470, 450, null)); // within the half minute that nobody calls an overrun
    DayRecord day = day(TWELVE, all);
    Waits waits = Analysis.of(day).waits();
    assertThat(waits.counted()).isEqualTo(10);
    assertThat(waits.overruns()).extracting(o -> o.handling().stint()).containsExactly(5, 7);
    assertThat(said(day))
        .contains(
            "Waits left out for a mishap: stint 5.",
            "A cue to the rider: the handling before stint 5 took 11:00 instead of 7:00 (a real"
                + " swap; a mishap: a stripped bolt).",
            "A cue to the rider: the handling before stint 7 took 8:25 instead of 7:00 (a dummy"
                + " swap; no mishap declared).");
  }

  @Test
  void plannedRestsAreLeftOutWhateverTheOrder() {
    Plan rests =
        Plans.with(
            "timetable: {zone: Europe/Vienna, start: \"09:00\", daylight_end: \"21:00\", lap: 2,"
                + " swap: 7, rest_every: 4, rest: 20}");
    DayRecord day = day(rests, handlings(rests.stints(), 0));
    Waits waits = Waits.of(day, rests.rule().assignments());
    assertThat(waits.leftOut())
        .filteredOn(each -> each.left().orElseThrow() == Waits.Left.REST)
        .extracting(each -> each.handling().stint())
        .containsExactly(5, 9, 13);
    assertThat(waits.counted()).isEqualTo(rests.stints() - 4);
  }

  @Test
  void tooFewWaitsAreNotTestedAndNoneAtAllAreNotMentioned() {
    SortedMap<Integer, Handling> few = new TreeMap<>(handlings(12, 40).headMap(8));
    assertThat(said(day(TWELVE, few)))
        .containsExactly("Whether the waits told is not tested: 6 waits count, and 8 are needed.");
    assertThat(said(day(TWELVE, new TreeMap<>()))).isEmpty();
  }
}
