package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.fault.Problem;
import blindlap.plan.PlanFault;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What is said of a plan whose rule cannot be read. */
class PlanPreviewTest {
  private static final String PLAN =
      """
      question: Is Shock L quicker?
      rider: R. Lind
      trail: Quarry loop
      day: 2026-11-28
      setups: [{name: Shock K}, {name: Shock L}]
      differences_reason: whole parts are compared
      measures: [{name: lap time, kind: lap time, unit: s, role: primary, worthwhile: 0.5}]
      laps: {warm_up: 1, scored: 1}
      """;

  @ParameterizedTest
  @ValueSource(
      strings = {
        "stints: 8\nprotocol: no such",
        "stints: eight\nprotocol: blocks-of-four",
        "stints: 8\nrule: {setups: 2, stints: 8, block: four}"
      })
  void ofARuleThatCannotBeReadNothingIsAnsweredByAnotherOne(String rule) {
    PlanPreview preview = PlanPreview.of(PLAN + rule + "\n");
    assertThat(preview.problems()).isNotEmpty();
    assertThat(preview.answer()).isEmpty();
    assertThat(preview.problems())
        .extracting(Problem::fault)
        .doesNotContain(PlanFault.CANNOT_SHOW_ANYTHING);
  }

  @Test
  void aRuleThatIsReadAndTooSmallIsStillRefusedAndAnswered() {
    PlanPreview preview = PlanPreview.of(PLAN + "stints: 8\nprotocol: blocks-of-four\n");
    assertThat(preview.answer()).isPresent();
    assertThat(preview.problems())
        .extracting(Problem::fault)
        .containsExactly(PlanFault.CANNOT_SHOW_ANYTHING);
  }
}
