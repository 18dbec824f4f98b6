package blindlap.wording;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import blindlap.plan.Rule;
import blindlap.review.Analysis;
import blindlap.review.Finding;
import blindlap.review.RecordedTimes;
import blindlap.review.WhereDays;
import blindlap.review.WhereOnTrail;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** Words and numbers of where on the trail agree; nothing there is a verdict. */
class WhereWordsTest {
  private static final Pattern COUNT = Pattern.compile("([\\d,]+) of the ([\\d,]+) orders");
  private static final Map<String, Finding> CASES = WhereCases.all();

  private static WhereWords words(String name) {
    return WhereWords.of(Objects.requireNonNull(CASES.get(name))).orElseThrow();
  }

  private static List<String> everything(Finding finding) {
    WhereWords words = WhereWords.of(finding).orElseThrow();
    List<String> all = new ArrayList<>(words.lines());
    words.notes().forEach(note -> all.add(note.words()));
    all.addAll(words.how());
    all.addAll(words.columns());
    return all;
  }

  @Test
  void nothingIsCalledWorthwhileHarmfulOrSettled() {
    assertThat(CASES).hasSize(20);
    CASES.forEach(
        (name, finding) ->
            assertThat(String.join("\n", everything(finding)))
                .as(name)
                .doesNotContainPattern("(?i)worthwhile|harm|settled|better|worse|matter|real"));
  }

  @Test
  void countsAreThoseOfTheP() {
    int counted = 0;
    for (Finding finding : CASES.values()) {
      for (WhereSectorWords.Row row : WhereWords.of(finding).orElseThrow().rows()) {
        Matcher count = COUNT.matcher(row.evidence());
        if (count.find()) {
          double share = number(count.group(1)) / number(count.group(2));
          assertThat(share).isCloseTo(row.sector().p().orElseThrow(), within(1e-9));
          counted++;
        }
      }
    }
    assertThat(counted).isGreaterThan(30);
  }

  private static double number(String words) {
    return Double.parseDouble(words.replace(",", ""));
  }

  /** Over random days: who gains and where is what the numbers of the sectors say. */
  @Test
  void theSentenceNamesWhoGainsWhere() {
    Random random = new Random(20261128);
    int shown = 0;
    for (int i = 0; i < 60; i++) {
      double[] gain = WhereDays.gain(0, 195, random.nextGaussian() * 0.15);
      double[] later = WhereDays.gain(420, 690, random.nextGaussian() * 0.15);
      for (int step = 0; step < gain.length; step++) {
        gain[step] += later[step];
      }
      Rule rule = Rule.blocks(2, 12, 4);
      Finding finding =
          Analysis.of(
              WhereDays.day(WhereDays.plan(rule, true), "ABBAABABBBAA", gain, 0.03, random));
      WhereOnTrail.Sectors sectors = finding.where().orElseThrow().sectors().orElseThrow();
      String headline = WhereWords.of(finding).orElseThrow().headline();
      for (WhereOnTrail.OfSector sector : sectors.shown()) {
        shown++;
        String faster = sector.estimate() < 0 ? "Shock L" : "Shock K";
        assertThat(headline).matches(".*" + faster + " gains.*|.* loses .*");
      }
      assertThat(headline.contains("No sector tells")).isEqualTo(sectors.shown().isEmpty());
      assertThat(headline.contains(" loses "))
          .isEqualTo(
              sectors.shown().stream().map(WhereOnTrail.OfSector::faster).distinct().count() == 2);
      assertThat(headline.contains("elsewhere"))
          .isEqualTo(!sectors.shown().isEmpty() && sectors.shown().size() < 3);
    }
    assertThat(shown).isGreaterThan(20);
  }

  /** What a terminal prints of the finding has every line of it, and a day without has none. */
  @Test
  void theWholeFindingInWordsHasItAfterTheMeasures() {
    Finding finding = Objects.requireNonNull(CASES.get("all of it in one sector"));
    assertThat(new FindingText(finding).lines())
        .containsSequence(words("all of it in one sector").lines());
    Finding without = Analysis.of(finding.day().with(RecordedTimes.NONE));
    assertThat(new FindingText(without).lines()).noneMatch(line -> line.contains("on the trail"));
  }

  @Test
  void aNullRunNamesNobodyFaster() {
    for (String name :
        List.of("one setup on throughout", "one setup on throughout, told apart by chance")) {
      assertThat(String.join("\n", everything(Objects.requireNonNull(CASES.get(name)))))
          .doesNotContain("faster", "gains", "slower")
          .contains("Null run");
      assertThat(words(name).end()).contains("by name");
    }
  }

  @Test
  void anOpenDayExcludesNeitherEffortNorBelief() {
    assertThat(words("open").headline())
        .startsWith("Unblinded (open): ")
        .endsWith("; effort and belief are not excluded.");
    assertThat(words("masked labels, not read").headline())
        .startsWith("Masked labels: Y gains")
        .doesNotContain("Shock");
  }

  @Test
  void aDayEndedByChoiceHasNoTest() {
    assertThat(String.join(" ", words("open, ended by choice").lines()))
        .doesNotContain("p = ", "orders show")
        .contains("best estimates only", "no test is said");
    assertThat(words("open, ended by choice").notes()).isEmpty();
  }

  @Test
  void whatWasNotDeclaredIsExploratory() {
    assertThat(words("no trail at commit").headline()).startsWith("Exploratory: ");
    assertThat(words("no trail at commit").worth().get(1)).startsWith("The plan named no trail");
    assertThat(words("all of it in one sector").headline()).doesNotContain("Exploratory");
  }

  @Test
  void aBandThatIsWithheldSaysWhy() {
    assertThat(words("too few orders for a band").banded()).isFalse();
    assertThat(words("too few orders for a band").worth())
        .anyMatch(line -> line.startsWith("No band is drawn: the plan has 8 orders"));
    assertThat(words("nothing shown").banded()).isTrue();
  }

  @Test
  void threeSetupsAreRefusedInOneSentence() {
    assertThat(words("three setups").lines())
        .containsExactly(
            "Where on the trail: Along the trail two setups are compared; this plan has 3.");
  }

  @Test
  void theRecorderHidesWhatItsOwnErrorsMake() {
    // ± 1.96 × 0.14 s of one time; √(1/8 + 1/8) of it for means of eight against eight.
    assertThat(words("all of it in one sector").recorder().orElseThrow())
        .contains("± 0.27 s (95 %)", "Over 16 laps that leaves ± 0.14 s", "some 50 m");
    assertThat(words("nothing shown").recorder().orElseThrow()).doesNotContain("stretch");
  }
}
