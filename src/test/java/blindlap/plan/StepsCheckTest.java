package blindlap.plan;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.exchange.PlanReader;
import blindlap.exchange.PlanText;
import blindlap.fault.CanonicalJson;
import blindlap.fault.Fault;
import blindlap.fault.Problem;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class StepsCheckTest {
  @Test
  void everyLevelIsTheOneSetupAtOneValueFromTheLowestToTheHighest() {
    Plan plan = Plans.with(StepsDays.text("levels: '13, 4; 10 7'", 16));

    assertThat(PlanCheck.problems(plan)).isEmpty();
    assertThat(plan.setups())
        .extracting(Setup::name)
        .containsExactly(
            "4 clicks from closed",
            "7 clicks from closed",
            "10 clicks from closed",
            "13 clicks from closed");
    assertThat(plan.setups())
        .extracting(Setup::id)
        .containsExactly("shock-k-4", "shock-k-7", "shock-k-10", "shock-k-13");
    assertThat(plan.setups()).extracting(Setup::component).containsOnly("rear shock");
    assertThat(plan.levels()).contains(Stream.of(4, 7, 10, 13).map(BigDecimal::valueOf).toList());
    assertThat(plan.title()).isEqualTo("Shock K, rebound at 4, 7, 10, 13 clicks from closed");
    assertThat(plan.protocol().name()).isEqualTo("four-levels");
  }

  @ParameterizedTest
  @CsvSource({
    "3, 18, three-levels",
    "4, 16, four-levels",
    "5, 15, five-levels",
    "6, 18, six-levels"
  })
  void thereIsARuleForThreeToSixLevels(int levels, int stints, String protocol) {
    List<Integer> values = Stream.iterate(2, each -> each + 3).limit(levels).toList();
    Plan plan = StepsDays.clicks(values, stints);

    assertThat(PlanCheck.problems(plan)).isEmpty();
    assertThat(plan.protocol().name()).isEqualTo(protocol);
    assertThat(plan.rule().block()).isEqualTo(levels);
    assertThat(plan.protocol().suits(false, levels)).isFalse();
  }

  /** Each is one problem, so one sentence: nothing else is said of the same mistake. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "levels: [4] | LEVELS_RANGE",
        "levels: [4, 7] | LEVELS_RANGE",
        "levels: [1, 2, 3, 4, 5, 6, 7] | LEVELS_RANGE",
        "levels: [4, 7, 4.0] | LEVELS_EQUAL",
        "levels: [4, 4] | LEVELS_EQUAL",
        "levels: [slow, middle, quick] | LEVEL_NOT_A_NUMBER",
        "levels: [4, 7, '10 or so'] | LEVEL_NOT_A_NUMBER",
        "levels: [1, 7, 10], least: 2 | BELOW_THE_LIMIT",
        "levels: [4, 7, 17], most: 16 | ABOVE_THE_LIMIT",
        "levels: [4, 7, 10], least: 16, most: 2 | LIMITS_CROSSED",
        "levels: [4, 7.5, 10] | LEVEL_NOT_CLICKS",
        "levels: [-2, 0, 2] | LEVEL_NOT_CLICKS",
        "levels: [4, 7, 201] | LEVEL_NOT_CLICKS",
        "levels: [4, 7, 10], low: 2 | LOW_AND_HIGH_UNASKED",
        "levels: [4, 7, 10], way: pressure | LOW_AND_HIGH_MISSING",
        "levels: [4, 7, 10], way: pressure, low: 5, high: 12 | LEVEL_NOT_BETWEEN",
        "levels: [4, 7, 10], way: pressure, low: 3, high: 12, most: 11 | ABOVE_THE_LIMIT",
        "levels: [4, 7, 10], way: pressure, low: 1, high: 11, least: 2 | BELOW_THE_LIMIT",
      })
  void whatIsWrongWithLevelsIsOneSentence(String stepsDay, PlanFault fault) {
    // As many stints as any of these rules takes, and one more fault would show.
    Plan plan = Plans.with(StepsDays.text(stepsDay, 12));

    assertThat(PlanCheck.problems(plan))
        .extracting(Problem::fault)
        .filteredOn(each -> each != PlanFault.STINTS_NOT_MULTIPLE)
        .containsExactly(fault);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "{change: two bikes, bikes: {first: grey, second: green}} | STEPS_TWO_BIKES",
        "series: rebound | STEPS_IN_SERIES",
        "looks: '8' | STEPS_WITH_LOOKS",
        "blinding: {level: drawn} | STEPS_NEED_HELPER",
        "blinding: {level: open} | STEPS_NEED_HELPER",
        "measures: [{name: lap time, kind: lap time, unit: s, role: primary}] |"
            + " NO_WORTHWHILE_TREND",
        "protocol: four-setups | PROTOCOL_SETUPS",
        "{steps_day: null, setups: [{name: A}, {name: B}, {name: C}, {name: D}]} | STEPS_MISSING",
      })
  void whatASstepsDayCannotHaveIsRefused(String yaml, PlanFault fault) {
    String text = StepsDays.text("levels: [4, 7, 10, 13]", 16);

    assertThat(faults(text, yaml)).contains(fault);
    assertThat(faults(text, "")).isEmpty();
  }

  private static List<Fault> faults(String text, String more) {
    Map<String, Object> fields = new LinkedHashMap<>(PlanText.read(text).fields());
    fields.putAll(PlanText.read(more.isBlank() ? "stints: 16" : more).fields());
    return Plans.faults(CanonicalJson.text(fields));
  }

  @Test
  void theFieldsOfAStepsDayBelongToNoOtherKind() {
    assertThat(Plans.faults("steps_day: {setting: rebound}")).contains(PlanFault.STEPS_UNASKED);
  }

  @Test
  void levelsThatDifferInMoreThanTheSettingAreRefused() {
    List<String> setups = new ArrayList<>();
    for (int click : new int[] {4, 7, 10}) {
      setups.add(
          ("{name: '%d', id: k-%d, settings: [{name: rebound, value: %d}, {name: sag, value: %d}]}")
              .formatted(click, click, click, click));
    }
    String yaml =
        "setups: " + setups + "\nsteps_day: {setting: rebound, setup: Shock K, setup_id: k}";

    assertThat(faults(StepsDays.text("levels: [4, 7, 10]", 18), yaml))
        .containsExactly(PlanFault.LEVELS_DIFFER_OTHERWISE);
  }

  @Test
  void theSettingStandsOnceNotBesideItsLevels() {
    String text =
        StepsDays.text("levels: [4, 7, 10]", 18)
            .replace("rear shock}", "rear shock, settings: [{name: Rebound, value: 5}]}");

    assertThat(PlanReader.read(Plans.text(text), Plans.protocols()).problems())
        .extracting(Problem::fault)
        .containsExactly(PlanFault.SETTING_TWICE);
  }

  @Test
  void aSetupListMayNotStandBesideLevels() {
    String text =
        StepsDays.text("levels: [4, 7, 10]", 18).replace("setups: [", "setups: [{name: Shock L}, ");

    assertThat(PlanReader.read(Plans.text(text), Plans.protocols()).problems())
        .extracting(Problem::fault)
        .containsExactly(PlanFault.STEPS_ONE_SETUP);
  }

  @Test
  void theCommittedFormHoldsTheSetupsAndComesBackAsItWas() {
    Plan plan = StepsDays.clicks();
    String canonical = new String(PlanJson.bytes(plan), StandardCharsets.UTF_8);

    assertThat(PlanReader.stored(canonical)).isEqualTo(plan);
    assertThat(canonical).contains("\"steps_day\":{").doesNotContain("\"levels\":\"");
    assertThat(new String(PlanJson.bytes(Plans.with("")), StandardCharsets.UTF_8))
        .doesNotContain("steps_day")
        .doesNotContain("levels");
  }

  @Test
  void limitsWithoutAPlaceInTheManualAreHintedAt() {
    assertThat(PlanHints.of(StepsDays.clicks()))
        .extracting(Problem::where)
        .contains("steps_day.source");
    assertThat(
            PlanHints.of(
                Plans.with(StepsDays.text("levels: [4, 7, 10, 13], least: 2, source: p. 12", 16))))
        .extracting(Problem::where)
        .doesNotContain("steps_day.source");
  }

  @Test
  void allHandlingsWearTheOneSetup() {
    Plan plan = StepsDays.clicks();

    assertThat(Handlings.of(plan)).isEqualTo(new Handlings(17, 16, 17));
    String refits =
        StepsDays.text("levels: [4, 7, 10, 13]", 16)
            .replace("rear shock}", "rear shock, most_refits: 12}");
    assertThat(Plans.faults(refits)).containsExactly(PlanFault.REFITS_EXCEEDED);
  }
}
