package blindlap.plan;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.exchange.PlanReader;
import blindlap.exchange.PlanText;
import blindlap.fault.CanonicalJson;
import blindlap.fault.Problem;
import blindlap.wording.AnswerWords;
import blindlap.wording.EndNames;
import blindlap.wording.HandlingWords;
import blindlap.wording.PlanSummary;
import blindlap.wording.TellingNames;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A telling run between two levels of one setting, which are handled as on a steps day. */
class TellingLevelsTest {
  @Test
  void theLevelsAreItsSetupsAndItIsNoStepsDay() {
    Plan plan = TellingRuns.levels();

    assertThat(PlanCheck.problems(plan)).isEmpty();
    assertThat(plan.setups())
        .extracting(Setup::name)
        .containsExactly("9 clicks from closed", "13 clicks from closed");
    assertThat(plan.setups()).extracting(Setup::id).containsExactly("shock-k-9", "shock-k-13");
    assertThat(plan.levels()).contains(java.util.List.of(new BigDecimal(9), new BigDecimal(13)));
    assertThat(plan.title())
        .isEqualTo("Telling apart: Shock K, compression at 9 and 13 clicks from closed");
    assertThat(plan.steps()).isNull();
    assertThat(EndNames.of(plan).trend()).isFalse();
    assertThat(plan.suits(Protocol.unnamed(Rule.blocks(2, 16, 4)))).isTrue();
    assertThat(plan.stints()).isEqualTo(45);
  }

  @Test
  void everyHandlingHasAsManyClicksAndAllOfThemWearTheOneSetup() {
    Plan plan = TellingRuns.levels();
    Set<Integer> heard = new TreeSet<>();
    for (Integer from : new Integer[] {null, 0, 1}) {
      for (int to = 0; to < 2; to++) {
        heard.add(((Handling.Clicks) Handling.of(plan, from, to).orElseThrow()).heard());
      }
    }

    assertThat(heard).containsExactly(26);
    assertThat(Handling.clicks(plan)).contains(26);
    assertThat(Handlings.of(plan)).isEqualTo(new Handlings(46, 45, 46));
    assertThat(HandlingWords.steps(plan, 0, 1)).anyMatch(step -> step.contains("Count 13 clicks"));
    assertThat(HandlingWords.limits(plan)).get().asString().contains("2 to 16 clicks from closed");
    assertThat(HandlingWords.planned(plan).get(0))
        .contains("26 clicks at each of 46 handlings, 1196 on the day");
    assertThat(PlanSummary.parts(plan, Optional.empty(), EarlierNoise.NONE).toString())
        .contains("One setup, Shock K: compression at 9, 13 clicks from closed, and nothing else");
    String refits =
        TellingRuns.levels("", "levels: [9, 13]").replace("shock}", "shock, most_refits: 40}");
    assertThat(Plans.faults(refits)).containsExactly(PlanFault.TELLING_REFITS);
  }

  /** Each is one problem, so one sentence, in the words of a telling run where they differ. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "levels: [9] | TELLING_TWO_LEVELS",
        "levels: [9, 11, 13] | TELLING_TWO_LEVELS",
        "levels: [9, 9.0] | LEVELS_EQUAL",
        "levels: [open, closed] | LEVEL_NOT_A_NUMBER",
        "levels: [9, 17], most: 16 | ABOVE_THE_LIMIT",
        "levels: [1, 13], least: 2 | BELOW_THE_LIMIT",
        "levels: [9, 13], least: 16, most: 2 | LIMITS_CROSSED",
        "levels: [9, 13.5] | LEVEL_NOT_CLICKS",
        "levels: [9, 13], low: 2 | LOW_AND_HIGH_UNASKED",
        "levels: [9, 13], way: pressure | LOW_AND_HIGH_MISSING",
        "levels: [9, 13], way: pressure, low: 10, high: 20 | LEVEL_NOT_BETWEEN",
        "way: clicks | TELLING_TWO_LEVELS",
      })
  void whatIsWrongWithTheLevelsIsOneSentence(String setting, PlanFault fault) {
    Plan plan = Plans.with(TellingRuns.levels("", setting));

    assertThat(PlanCheck.problems(plan)).extracting(Problem::fault).containsExactly(fault);
    assertThat(PlanCheck.problems(plan).get(0).where()).startsWith("telling_run.one_setting.");
  }

  @Test
  void aSetupListMayNotStandBesideLevelsNorMayTheLevelsDifferOtherwise() {
    String two =
        TellingRuns.levels("", "levels: [9, 13]").replace("setups: [", "setups: [{name: L}, ");
    assertThat(PlanReader.read(Plans.text(two), Plans.protocols()).problems())
        .extracting(Problem::fault)
        .containsExactly(PlanFault.STEPS_ONE_SETUP);

    String apart =
        TellingRuns.text("one_setting: {setting: rebound, setup: Shock K, setup_id: k}")
            .replace("value: 9,", "value: 9, step: 1,");
    assertThat(Plans.faults(apart)).isEmpty();
    String more =
        apart
            .replace("clicks}]}]", "clicks}, {name: sag, value: 30}]}]")
            .replace("clicks}]},", "clicks}, {name: sag, value: 28}]},");
    assertThat(Plans.faults(more)).containsExactly(PlanFault.LEVELS_DIFFER_OTHERWISE);
  }

  /** "13" and "13 clicks from closed" are one level. */
  @ParameterizedTest
  @CsvSource({"13", "13.0", "13 clicks from closed"})
  void whichLevelHasMoreIsSaidByItsNumberOrItsName(String more) {
    String run = "task: two-choice, attribute: support, more: '%s'".formatted(more);
    Plan plan = Plans.with(TellingRuns.levels(run, "levels: [9, 13]"));

    assertThat(PlanCheck.problems(plan)).isEmpty();
    assertThat(Objects.requireNonNull(plan.telling()).more()).isEqualTo("13 clicks from closed");
    assertThat(Plans.faults(TellingRuns.levels(run.replace("13", "12"), "levels: [9, 13]")))
        .containsExactly(PlanFault.MORE_UNKNOWN);
  }

  @Test
  void theCommittedFormHoldsTheSetupsAndComesBackAsItWasAndAsItWasTyped() {
    Plan plan = TellingRuns.levels();
    String canonical = new String(PlanJson.bytes(plan), StandardCharsets.UTF_8);

    assertThat(PlanReader.stored(canonical)).isEqualTo(plan);
    assertThat(canonical).contains("\"one_setting\":{").doesNotContain("\"levels\":\"");
    assertThat(new String(PlanJson.bytes(TellingRuns.triangles()), StandardCharsets.UTF_8))
        .doesNotContain("one_setting");
    String file = PlanText.yaml(PlanText.read(CanonicalJson.text(PlanJson.tree(plan))).fields());
    assertThat(file)
        .contains("one_setting:", "levels: 9, 13", "name: Shock K")
        .doesNotContain("protocol:")
        .doesNotContain("stints:")
        .doesNotContain("13 clicks");
    assertThat(PlanReader.read(file, Plans.protocols()).plan()).isEqualTo(plan);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "clicks from closed | 9, 13 | 4 clicks",
        "clicks from closed | 9, 10 | 1 click",
        "half turns out | 3, 4 | 1 half turn",
        "psi | 170, 178 | 8 psi",
        "bar | 1.45, 1.6 | 0.15 bar",
        "'' | 2, 3 | compression at 2 and 3",
      })
  void whatIsToldApartIsTheStepBetweenThem(String unit, String levels, String apart) {
    String text =
        TellingRuns.levels("", "way: refit, levels: '" + levels.replace(",", ";") + "'")
            .replace("unit: clicks from closed", "unit: '" + unit + "'");

    assertThat(TellingNames.of(Plans.with(text)).apart()).isEqualTo(apart);
    assertThat(TellingNames.of(TellingRuns.triangles()).apart())
        .isEqualTo("9 clicks and 11 clicks");
  }

  @Test
  void limitsWithoutAPlaceInTheManualAreHintedAt() {
    assertThat(PlanHints.of(TellingRuns.levels()))
        .extracting(Problem::where)
        .contains("telling_run.one_setting.source");
  }

  @Test
  void whatItCanShowIsThatOfItsTrials() {
    assertThat(new AnswerWords(TellingRuns.levels(), Optional.empty()).sentence().text())
        .startsWith("9 of 15 right would show that");
  }
}
