package blindlap.review;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plan.Rule;
import blindlap.session.day.Guess;
import blindlap.session.day.LapState;
import blindlap.session.day.VoidEvent;
import blindlap.stats.compare.Verdict;
import blindlap.stats.order.Orders;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.SortedMap;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

class FindingTest {
  /** Own vector 01 of src/test/resources/blindlap/checks/own, confirmed there in R. */
  private static final String ORDER = "BBAAAABBBABAAABB";

  private static final double[] LAPS = {
    93.42, 91.43, 96.14, 95.39, 94.5, 94.42, 93.11, 92.54, 92.52, 95.11, 93.06, 94.28, 94.2, 94.36,
    91.81, 91.94
  };
  private static final Rule RULE = Rule.blocks(2, 16, 4);
  private static final Measure TIME = Days.lapTime();

  private static DayRecord vector(Measure... more) {
    List<Measure> measures = new ArrayList<>(List.of(TIME));
    measures.addAll(Arrays.asList(more));
    return Days.day(Days.plan(RULE, measures), ORDER, Map.of("lap time", LAPS));
  }

  @Test
  void theFindingOfTheReferenceDayIsTheReferenceResult() {
    Comparison primary = Analysis.of(vector()).primary().orElseThrow();
    assertThat(primary.estimate()).isCloseTo(-2.30459529065490, within(1e-11));
    assertThat(primary.result().noiseSd()).isCloseTo(0.635818877780136, within(1e-11));
    assertThat(primary.p()).isEqualTo(2 / 1296.0);
    assertThat(primary.verdict()).contains(Verdict.REAL_AND_WORTHWHILE);
  }

  private static org.assertj.core.data.Offset<Double> within(double offset) {
    return org.assertj.core.data.Offset.offset(offset);
  }

  @Test
  void aWrongFitIsAnalysedAsPlannedWithBothOtherResultsBeside() {
    DayRecord day = vector();
    SortedMap<Integer, HelperFit> fits = new TreeMap<>();
    fits.put(3, new HelperFit(3, 1, Map.of(), ""));
    fits.put(4, new HelperFit(4, 0, Map.of(), ""));
    DayRecord wrong = copy(day, day.laps(), new TreeMap<>(), fits, 16);
    Finding finding = Analysis.of(wrong);
    assertThat(wrong.wrongFits()).containsExactly(3);
    assertThat(finding.primary().orElseThrow().estimate())
        .isEqualTo(Analysis.of(day).primary().orElseThrow().estimate());
    assertThat(finding.sensitivities())
        .extracting(Sensitivity::kind)
        .containsExactly(Sensitivity.Kind.WRONG_FITS_MASKED, Sensitivity.Kind.AS_FITTED);
    Sensitivity masked = finding.sensitivities().get(0);
    assertThat(masked.result().orElseThrow().used()).isEqualTo(15);
    assertThat(finding.sensitivities().get(1).estimateOnly()).isTrue();
  }

  @Test
  void blindBrokenKeepsTheLapsAndMasksThemBeside() {
    DayRecord day = vector();
    SortedMap<Integer, String> broken = new TreeMap<>(Map.of(2, "saw the spring"));
    Finding finding = Analysis.of(copy(day, day.laps(), broken, new TreeMap<>(), 16));
    assertThat(finding.primary().orElseThrow().result().used()).isEqualTo(16);
    assertThat(finding.sensitivities().get(0).result().orElseThrow().used()).isEqualTo(15);
  }

  @Test
  void aVoidStintIsMaskedAndAllRiddenLapsStandBeside() {
    DayRecord day = vector();
    List<DayRecord.Lap> laps = new ArrayList<>(day.laps());
    DayRecord.Lap third = laps.get(2);
    laps.set(
        2,
        new DayRecord.Lap(
            third.id(),
            true,
            third.values(),
            Optional.of(new LapState.Voided(VoidEvent.TRAFFIC, "", false)),
            ""));
    Finding finding = Analysis.of(copy(day, laps, new TreeMap<>(), new TreeMap<>(), 16));
    assertThat(finding.primary().orElseThrow().result().used()).isEqualTo(15);
    assertThat(finding.voids().voids()).containsExactly(1, 0);
    Sensitivity all = finding.sensitivities().get(0);
    assertThat(all.kind()).isEqualTo(Sensitivity.Kind.ALL_RIDDEN);
    assertThat(all.result().orElseThrow().estimate()).isCloseTo(-2.3045952906549, within(1e-10));
  }

  @Test
  void aDayCutShortKeepsItsOrdersAndSaysWhatWasLeft() {
    DayRecord day = vector();
    Finding finding =
        Analysis.of(copy(day, day.laps().subList(0, 9), new TreeMap<>(), new TreeMap<>(), 9));
    // docs/method.md#days-cut-short: blocks of four, 16 stints, .028 after stint 9.
    assertThat(finding.left().orElseThrow().smallestP()).isCloseTo(0.0278, within(1e-4));
    assertThat(finding.orders().count().intValueExact()).isEqualTo(1296);
  }

  @Test
  void moreThanThirtyPerCentMissingLeavesEstimateAndIntervalOnly() {
    double[] sparse = LAPS.clone();
    for (int i = 0; i < 5; i++) {
      sparse[3 * i] = Double.NaN;
    }
    Plan plan = Days.plan(RULE, List.of(TIME));
    Comparison primary =
        Analysis.of(Days.day(plan, ORDER, Map.of("lap time", sparse))).primary().orElseThrow();
    assertThat(primary.caveats()).contains(Caveat.MISSING);
    assertThat(primary.verdict()).isEmpty();
    assertThat(primary.tested()).isFalse();
    assertThat(primary.interval(0.95)).isPresent();
  }

  @Test
  void aPlanThatCouldShowNothingHasNoOtherVerdictWhateverTheLaps() {
    Rule short8 = Rule.blocks(2, 8, 4);
    Plan plan = Days.plan(short8, List.of(TIME));
    String order = "ABBAABBA";
    double[] values =
        Days.values(Orders.parse(order), 90, new double[] {0, -20}, 0.1, 2, new Random(1));
    assertThat(
            Analysis.of(Days.day(plan, order, Map.of("lap time", values)))
                .primary()
                .orElseThrow()
                .verdict())
        .contains(Verdict.COULD_NOT_SHOW);
  }

  @Test
  void threeSetupsGetPairsAndNoFalseOrder() {
    Rule rule = Rule.blocks(3, 18, 3);
    Plan plan = Days.plan(rule, List.of(TIME));
    Random random = new Random(4);
    String order = Days.order(rule, random);
    double[] values =
        Days.values(Orders.parse(order), 90, new double[] {0, 2.5, 0.05}, 0.4, 2, random);
    Finding finding = Analysis.of(Days.day(plan, order, Map.of("lap time", values)));
    ManyComparison many = finding.many().get(0);
    assertThat(finding.primary()).isEmpty();
    assertThat(many.separatedPairs()).extracting(p -> p.name()).containsExactly("A-B", "B-C");
    assertThat(many.ordered()).isFalse();
  }

  @Test
  void guessesAreCountedAgainstTheDrawnOrder() {
    DayRecord day = vector();
    SortedMap<Integer, Guess> guesses = new TreeMap<>();
    for (int stint = 1; stint <= 16; stint++) {
      guesses.put(stint, new Guess(stint == 16 ? null : day.setup(stint), null, ""));
    }
    DayRecord guessed =
        new DayRecord(
            day.session(),
            day.plan(),
            day.key(),
            day.laps(),
            guesses,
            day.blindBroken(),
            16,
            day.fits(),
            List.of());
    Guesses found = Analysis.of(guessed).guesses();
    assertThat(found.right()).isEqualTo(15);
    assertThat(found.unknown()).isEqualTo(1);
    assertThat(found.test().orElseThrow().flagged()).isTrue();
  }

  private static DayRecord copy(
      DayRecord day,
      List<DayRecord.Lap> laps,
      SortedMap<Integer, String> broken,
      SortedMap<Integer, HelperFit> fits,
      int last) {
    return new DayRecord(
        day.session(), day.plan(), day.key(), laps, day.guesses(), broken, last, fits, List.of());
  }
}
