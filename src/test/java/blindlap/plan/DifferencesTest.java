package blindlap.plan;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.fault.Problem;
import org.junit.jupiter.api.Test;

class DifferencesTest {
  private static String setups(String first, String second) {
    return "setups:\n  - {name: Shock K, settings: [%s]}\n  - {name: Shock L, settings: [%s]}\n"
        .formatted(first, second);
  }

  @Test
  void twoChangesAtATimeAskForAReason() {
    String two =
        setups(
            "{name: spring rate, value: 450, unit: lbf/in}, {name: rebound, value: 7}",
            "{name: spring rate, value: 475, unit: lbf/in}, {name: rebound, value: 8}");

    assertThat(Plans.faults(two + "differences_reason: ''\n"))
        .containsExactly(PlanFault.DIFFERENCES_WITHOUT_REASON);
    assertThat(Plans.faults(two + "differences_reason: spring and bump stop are one kit\n"))
        .isEmpty();
  }

  @Test
  void aSettingThatOneSetupDoesNotNameDiffers() {
    Plan plan = Plans.with(setups("{name: spacers, value: 2}", ""));

    assertThat(Differences.of(plan).names()).containsExactly("spacers");
    assertThat(Differences.of(plan).rows().get(0).shown()).containsExactly("2", "–");
  }

  @Test
  void equalWithinToleranceIsParityAndOneTenthMoreIsNot() {
    String within =
        setups(
            "{name: sag, value: 28.2, unit: '%', tolerance: 1.5, equal: true}",
            "{name: Sag, value: 29.7, unit: '%', tolerance: 1.5, equal: true}");
    String beyond = within.replace("29.7", "29.8");

    assertThat(Plans.faults(within)).isEmpty();
    assertThat(Plans.faults(beyond)).containsExactly(PlanFault.PARITY_BROKEN);
  }

  @Test
  void theSamePressureInPsiAndInBarIsNoDifference() {
    // 1.55 bar = 22.481 psi, by the units of UnitsTest.
    Plan same =
        Plans.with(
            setups(
                "{name: front, value: 1.55, unit: bar}", "{name: front, value: 22.48, unit: psi}"));
    Plan other =
        Plans.with(
            setups("{name: front, value: 1.55, unit: bar}", "{name: front, value: 23, unit: psi}"));

    assertThat(Differences.of(same).names()).isEmpty();
    assertThat(Differences.of(other).names()).containsExactly("front");
  }

  @Test
  void twoBikesAddTheirOwnDifferences() {
    String bikes =
        setups("{name: rebound, value: 7}", "{name: rebound, value: 8}")
            + "change: two bikes\ndifferences_reason: ''\n"
            + "bikes: {first: grey, second: green, change_after: 8, differences: "
            + "[{name: frame size, first: M, second: L}]}\n";

    assertThat(Differences.of(Plans.with(bikes)).names()).containsExactly("rebound", "frame size");
    assertThat(Plans.faults(bikes)).containsExactly(PlanFault.DIFFERENCES_WITHOUT_REASON);
  }

  @Test
  void bikesThatNeverChangeHardwareAreHintedAt() {
    String bikes =
        setups("{name: rebound, value: 7}", "{name: rebound, value: 8}")
            + "change: two bikes\nbikes: {first: grey, second: green}\n";

    assertThat(PlanHints.of(Plans.with(bikes)))
        .extracting(Problem::fault)
        .contains(PlanHint.BIKES_KEPT);
    assertThat(Plans.faults("change: two bikes\n")).contains(PlanFault.BIKES_MISSING);
  }

  @Test
  void theReportIsToldThatPackagesAreCompared() {
    String two =
        setups(
            "{name: spring, value: 450}, {name: bottom-out, value: 2}",
            "{name: spring, value: 475}, {name: bottom-out, value: 4}");
    Plan plan = Plans.with(two + "differences_reason: they come together\n");

    assertThat(PlanHints.of(plan))
        .contains(
            Problem.of(
                PlanHint.COMPARES_PACKAGES, "setups", "spring, bottom-out", "they come together"));
  }
}
