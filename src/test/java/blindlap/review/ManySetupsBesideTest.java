package blindlap.review;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.picture.FindingPictures;
import blindlap.picture.GuessPicture;
import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plan.Rule;
import blindlap.session.day.Guess;
import blindlap.session.day.LapState;
import blindlap.session.day.VoidEvent;
import blindlap.stats.compare.ManySetups;
import blindlap.stats.compare.Scale;
import blindlap.stats.compare.Verdict;
import blindlap.stats.order.Nuisance;
import blindlap.stats.order.Orders;
import blindlap.stats.order.Sampling;
import blindlap.wording.FindingText;
import blindlap.wording.FindingWords;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** Three setups: what stands beside the result, watched harm, guesses; never a verdict phrase. */
class ManySetupsBesideTest {
  private static final Rule RULE = Rule.blocks(3, 18, 3);
  private static final String ORDER = "ABCBACCABACBBCACAB";
  private static final Measure TIME = Days.lapTime();
  private static final Measure DABS =
      Days.measure(
          "dabs",
          Measure.Kind.COUNT,
          Measure.Role.WATCH_FOR_HARM,
          Measure.Better.LOWER,
          "2",
          Scale.RAW);

  private static DayRecord day() {
    Random random = new Random(3);
    int[] order = Orders.parse(ORDER);
    Plan plan = Days.plan(RULE, List.of(TIME, DABS));
    DayRecord day =
        Days.day(
            plan,
            ORDER,
            Map.of(
                "lap time", Days.values(order, 90, new double[] {0, -1.5, 0}, 0.4, 2, random),
                "dabs", Days.values(order, 2, new double[] {0, 0, 5}, 0.6, 0, random)));
    List<DayRecord.Lap> laps = new ArrayList<>(day.laps());
    DayRecord.Lap lap = laps.get(3);
    laps.set(
        3,
        new DayRecord.Lap(
            lap.id(),
            true,
            lap.values(),
            Optional.of(new LapState.Voided(VoidEvent.TRAFFIC, "", false)),
            ""));
    TreeMap<Integer, Guess> guesses = new TreeMap<>();
    guesses.put(1, new Guess(0, null, ""));
    guesses.put(2, new Guess(2, null, ""));
    guesses.put(3, new Guess(null, null, ""));
    return new DayRecord(
        day.session(),
        plan,
        day.key(),
        laps,
        guesses,
        new TreeMap<>(Map.of(6, "The cover slipped.")),
        day.lastStint(),
        new TreeMap<>(Map.of(9, new HelperFit(9, 0, Map.of(), ""))),
        List.of());
  }

  private static final Finding FINDING = Analysis.of(day());
  private static final FindingText TEXT = new FindingText(FINDING);

  @Test
  void theResultWithoutAStintIsTheAnalysisWithThatStintMasked() {
    assertThat(FINDING.sensitivities())
        .extracting(Sensitivity::kind)
        .containsExactly(
            Sensitivity.Kind.ALL_RIDDEN,
            Sensitivity.Kind.BLIND_BROKEN_MASKED,
            Sensitivity.Kind.WRONG_FITS_MASKED,
            Sensitivity.Kind.AS_FITTED);
    StintValues planned = FINDING.many().get(0).stints();
    boolean[] valid = planned.valid();
    assertThat(valid[3]).as("the void stint").isFalse();
    valid[5] = false;
    ManySetups masked =
        ManySetups.compare(
            RULE.assignments(),
            Orders.parse(ORDER),
            planned.values(),
            valid,
            Nuisance.of(TIME.drift()),
            Sampling.PREFERRED);
    ManySetups beside = FINDING.sensitivities().get(1).many().orElseThrow();
    assertThat(beside.p()).isEqualTo(masked.p());
    assertThat(beside.pairs()).isEqualTo(masked.pairs());
    assertThat(FINDING.sensitivities().get(0).many().orElseThrow().df())
        .isEqualTo(FINDING.many().get(0).result().df() + 1);
  }

  @Test
  void byWhatWasReallyOnOnlyEstimatesAreSaid() {
    List<String> lines = TEXT.sensitivities();
    assertThat(lines.get(3)).startsWith("By what was really on in stint 9").doesNotContain("p =");
    assertThat(lines.get(1)).startsWith("Without stint 6, where the blind was broken: ");
    assertThat(lines.get(1)).contains("p = ").contains("adjusted");
  }

  @Test
  void aHarmLargerThanDeclaredIsSaidFirstAndTheOtherPairHasItsOwnSentence() {
    assertThat(TEXT.circumstances())
        .anyMatch(
            line ->
                line.startsWith(
                    "Shock M against Shock K, dabs: harm of 2 a lap or more shown; by "))
        .anyMatch(line -> line.startsWith("Shock M against Shock L, dabs: harm of 2 a lap"))
        .noneMatch(line -> line.startsWith("Shock K against"));
    assertThat(TEXT.watchedHarms())
        .containsExactly(
            "dabs: whether there is harm of 2 a lap or more stays open between Shock K and Shock L.");
  }

  @Test
  void noVerdictPhraseStandsAnywhere() {
    List<String> phrases = Arrays.stream(Verdict.values()).map(FindingWords::phrase).toList();
    assertThat(TEXT.lines()).noneMatch(line -> phrases.stream().anyMatch(line::contains));
    assertThat(TEXT.headline().phrase()).isEmpty();
  }

  @Test
  void guessesOfThreeSetupsAreCountedAndDrawnButNotTested() {
    assertThat(FINDING.guesses().test()).isEmpty();
    assertThat(TEXT.guesses())
        .startsWith("Guesses: 1 right, 1 wrong, 1 \"don't know\".")
        .contains("not tested");
    assertThat(GuessPicture.of(FINDING)).isPresent();
    assertThat(GuessPicture.of(FINDING).orElseThrow().spoken().sentence())
        .isEqualTo(TEXT.guesses());
  }

  @Test
  void anotherMeasureHasASmallPictureAndAllItsPairs() {
    ManyComparison dabs = FINDING.many().get(1);
    assertThat(new FindingPictures(FINDING).small(dabs.measure(), dabs.stints())).isPresent();
    assertThat(TEXT.words(dabs).cells())
        .hasSize(3)
        .first()
        .asString()
        .startsWith("Shock L less Shock K: ");
  }

  @Test
  void everyRenamingOfAnOrderIsListedOnceItselfFirst() {
    assertThat(Orders.renamings(new int[] {0, 1, 1, 0}, 2)).containsExactly("ABBA", "BAAB");
    assertThat(Orders.renamings(Orders.parse(ORDER), 3))
        .hasSize(6)
        .doesNotHaveDuplicates()
        .startsWith(ORDER);
  }
}
