package blindlap.plan;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.fault.Problem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PlanCheckTest {
  @Test
  void theSamplePlanHolds() {
    assertThat(Plans.faults("")).isEmpty();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "stints: 8 | CANNOT_SHOW_ANYTHING",
        "stints: 18 | STINTS_NOT_MULTIPLE",
        "stints: 64 | STINTS_RANGE",
        "setups: [{name: A}] | TOO_FEW_SETUPS",
        "setups: [{name: A}, {name: ' a '}] | SAME_SETUP",
        "setups: [{name: A}, {name: B}, {name: C}] | PROTOCOL_SETUPS",
        "setups: [{name: A, mass_g: 0}, {name: B}] | NOT_POSITIVE",
        "setups: [{name: A, ballast_g: -1}, {name: B}] | NEGATIVE",
        "noise: {sd: 0} | NOT_POSITIVE",
        "measures: [] | NO_PRIMARY",
        "laps: {warm_up: 2, settling: 0, scored: 0} | LAPS_RANGE",
        "timetable: {zone: UTC, lap: 0} | LAP_MINUTES",
        "timetable: {zone: UTC, lap: -1} | DURATION_RANGE",
        "timetable: {zone: UTC, lap: 1441} | DURATION_RANGE",
      })
  void whatIsWrongIsNamed(String yaml, PlanFault fault) {
    assertThat(Plans.faults(yaml)).contains(fault);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "{name: rebound, value: 12, range: 11} | OFF_THE_DIAL",
        "{name: rebound, value: 2.3, step: 0.5} | BETWEEN_STEPS",
        "{name: sag, value: 28, readings: 0} | READINGS_RANGE",
        "{name: sag, value: 28, tolerance: -1} | NEGATIVE",
        "{name: sag, value: 28}, {name: ' SAG', value: 28} | SETTING_TWICE",
      })
  void aSettingThatTheDialDoesNotHaveIsNamed(String settings, PlanFault fault) {
    String yaml = "setups: [{name: A, settings: [%s]}, {name: B}]".formatted(settings);

    assertThat(Plans.faults(yaml)).contains(fault);
  }

  @Test
  void halfTurnsAreOnTheDial() {
    String yaml =
        "setups: [{name: A, settings: [{name: preload, value: 2.5, step: 0.5, range: 4}]},"
            + " {name: B, settings: [{name: preload, value: 1, step: 0.5, range: 4}]}]\n";

    assertThat(Plans.faults(yaml)).isEmpty();
  }

  @Test
  void aPlanThatCannotShowAnythingNeedsAReasonInSoManyWords() {
    String eight = "stints: 8\n";

    assertThat(Plans.faults(eight)).containsExactly(PlanFault.CANNOT_SHOW_ANYTHING);
    assertThat(Plans.faults(eight + "override: practice for the helper\n")).isEmpty();
    assertThat(PlanHints.of(Plans.with(eight + "override: practice for the helper\n")))
        .extracting(Problem::fault)
        .contains(PlanHint.OVERRIDDEN);
  }

  @Test
  void threeAndFourSetupsCanBePlanned() {
    assertThat(
            Plans.faults(
                "setups: [{name: A}, {name: B}, {name: C}]\nprotocol: three-setups\nstints: 18\n"
                    + "timetable: null\n"))
        .isEmpty();
    assertThat(
            Plans.faults(
                "setups: [{name: A}, {name: B}, {name: C}, {name: D}]\nprotocol: four-setups\n"
                    + "stints: 24\ntimetable: null\n"))
        .isEmpty();
  }

  @Test
  void everyTextHasALimit() {
    assertThat(Plans.faults("rider: " + "x".repeat(61))).containsExactly(PlanFault.TOO_LONG);
    assertThat(Plans.faults("conditions: " + "x".repeat(2001))).containsExactly(PlanFault.TOO_LONG);
    assertThat(
            Plans.faults("conditions: " + "x".repeat(2000) + "\nrider: " + "x".repeat(60) + "\n"))
        .isEmpty();
  }

  @Test
  void ballastThatHidesTheMassSilencesTheHint() {
    String masses =
        "setups: [{name: A, mass_g: 742, ballast_g: %d}, {name: B, mass_g: 882}]\n"
            + "differences_reason: ''\n";

    assertThat(PlanHints.of(Plans.with(masses.formatted(0))))
        .contains(Problem.of(PlanHint.MASS_SHOWS, "setups", "140"));
    assertThat(PlanHints.of(Plans.with(masses.formatted(140))))
        .extracting(Problem::fault)
        .doesNotContain(PlanHint.MASS_SHOWS);
  }
}
