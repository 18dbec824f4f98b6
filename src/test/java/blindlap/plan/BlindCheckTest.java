package blindlap.plan;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.exchange.PlanReader;
import blindlap.fault.Problem;
import blindlap.wording.day.Problems;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** What a blind level needs of a plan, and what is said where it is not there. */
class BlindCheckTest {
  private static final String DIALS =
      "setups: [{name: A, component: shock, settings: [{name: rebound, value: 3, unit: clicks}]},"
          + " {name: B, component: shock, settings: [{name: rebound, value: 6, unit: clicks}]}]";

  private static final String PARTS =
      "setups: [{name: A, component: grips}, {name: B, component: grips, settings:"
          + " [{name: compound, value: soft}]}]\ndifferences_reason: whole parts";

  private static List<Problem> problems(String yaml) {
    return PlanCheck.problems(Plans.with(yaml));
  }

  private static List<Problem> hints(String yaml) {
    return PlanHints.of(Plans.with(yaml));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "level: masked | MASKED_DIAL | differ only in rebound, which is set on one and the same"
            + " part",
        "level: masked, masks: marks | MASKED_DIAL | no two parts that could bear labels",
        "level: prepared | FRIEND_MISSING | At the level \"prepared\" a friend does beforehand",
      })
  void aLevelThatTheSetupsCannotHaveIsRefusedInOneSentence(
      String blinding, PlanFault fault, String says) {
    List<Problem> found = problems(DIALS + "\nblinding: {" + blinding + "}\n");
    assertThat(found).extracting(Problem::fault).containsExactly(fault);
    assertThat(Problems.sentence(found.get(0))).contains(says);
  }

  @Test
  void aFriendWhoHidesTheDialLetsItBeMaskedAndLookAlikePartsNeedNoDial() {
    assertThat(problems(DIALS + "\nblinding: {level: masked, prepared_by: Mo}\n")).isEmpty();
    assertThat(problems(PARTS + "\nblinding: {level: masked, masks: marks}\n")).isEmpty();
    assertThat(problems(PARTS + "\nblinding: {level: masked}\n"))
        .extracting(Problem::fault)
        .containsExactly(PlanFault.FRIEND_MISSING);
  }

  @Test
  void twoBikesAreToldApartUnderLabelsAndUnderCoversThatStay() {
    String bikes = "change: two bikes\nbikes: {first: grey, second: green, change_after: 8}\n";
    for (String blinding :
        List.of("{level: masked, prepared_by: Mo}", "{level: prepared, prepared_by: Mo}")) {
      List<Problem> found = problems(bikes + "blinding: " + blinding + "\n");
      assertThat(found).extracting(Problem::fault).containsExactly(PlanFault.BIKES_TOLD_APART);
      assertThat(Problems.sentence(found.get(0))).contains("tells them apart");
    }
    assertThat(problems(bikes + "blinding: {level: open}\n")).isEmpty();
    assertThat(problems(bikes + "blinding: {level: prepared, prepared_by: Mo, recovers: yes}\n"))
        .isEmpty();
  }

  @ParameterizedTest
  @EnumSource(BlindLevel.class)
  void whoMountsWithoutKnowingWhichHasOneListOfLimitsToKeep(BlindLevel level) {
    String blinding = "blinding: {level: " + PlanJson.word(level) + ", prepared_by: Mo}\n";
    String setups =
        "differences_reason: whole parts\nsetups: [{name: A, component: grips, limits: [%s]},"
            + " {name: B, component: grips, limits: [%s]}]\n";
    String both = "{what: Clamp, value: 5 N.m, source: p. 3}, {what: bar, value: 4 N.m}";
    String turned = "{what: bar, value: 4 N.m}, {what: clamp, value: 5  n.m, source: p. 7}";
    assertThat(problems(setups.formatted(both, turned) + blinding)).isEmpty();
    boolean unseen = level == BlindLevel.MASKED || level == BlindLevel.PREPARED;
    for (String other :
        List.of(
            "{what: clamp, value: 6 N.m}, {what: bar, value: 4 N.m}",
            "{what: bar, value: 4 N.m}")) {
      List<Problem> found = problems(setups.formatted(both, other) + blinding);
      if (unseen) {
        assertThat(found).extracting(Problem::fault).containsExactly(PlanFault.LIMITS_DIFFER);
        assertThat(Problems.sentence(found.get(0)))
            .contains("differ (Clamp)")
            .contains("the level \"" + PlanJson.word(level) + "\"");
      } else {
        assertThat(found).isEmpty();
      }
    }
  }

  @ParameterizedTest
  @EnumSource(BlindLevel.class)
  void looksBeforeTheEndNeedAHelper(BlindLevel level) {
    String yaml =
        PARTS
            + "\ntimetable: null\nlooks: [16]\nstints: 24\nprotocol: blocks-of-four\n"
            + "blinding: {level: "
            + PlanJson.word(level)
            + ", prepared_by: Mo}\n";
    List<Problem> found = problems(yaml);
    if (level == BlindLevel.HELPER) {
      assertThat(found).isEmpty();
    } else {
      assertThat(found).extracting(Problem::fault).containsExactly(PlanFault.LOOKS_NEED_HELPER);
      assertThat(Problems.sentence(found.get(0))).contains("nobody does that on the day");
    }
  }

  @Test
  void partsArePreparedBeforeTheyAreRidden() {
    List<Problem> found =
        problems(
            "day: 2026-11-14\n"
                + "blinding: {level: prepared, prepared_by: Mo, prepared_on: 2026-11-15}\n");
    assertThat(found).extracting(Problem::fault).containsExactly(PlanFault.PREPARED_AFTER);
    assertThat(Problems.sentence(found.get(0))).contains("on 2026-11-15").contains("2026-11-14");
  }

  @Test
  void tooFewUnitsAreOfferedMaskedLabelsWithTheReason() {
    String prepared = "blinding: {level: prepared, prepared_by: Mo%s}\n";
    List<Problem> few = hints(prepared.formatted(", units: 2, prepared_on: 2026-11-13"));
    assertThat(few).extracting(Problem::fault).contains(PlanHint.UNITS_TOO_FEW);
    assertThat(few.stream().map(Problems::sentence))
        .anyMatch(s -> s.contains("2 units for 16 stints") && s.contains("\"masked\" labels"));
    for (String enough : List.of(", units: 16", ", recovers: yes")) {
      assertThat(hints(prepared.formatted(enough)))
          .extracting(Problem::fault)
          .doesNotContain(PlanHint.UNITS_TOO_FEW)
          .contains(PlanHint.PREPARED_WHEN);
    }
    assertThat(problems("blinding: {level: prepared, prepared_by: Mo, units: 0}"))
        .extracting(Problem::fault)
        .containsExactly(PlanFault.NOT_POSITIVE);
  }

  @Test
  void drawnAsYouGoShufflesTheWholeDayUnlessARuleIsNamedAndSaysWhatBlocksGiveAway() {
    // The sample names its rule, so that it has to be taken out.
    String text =
        Plans.text("blinding: {level: drawn}").replaceFirst("\"protocol\":\"[^\"]*\",", "");
    Plan usual = PlanReader.read(text, Plans.protocols()).plan();
    assertThat(usual.protocol().name()).isEqualTo("whole-day");
    assertThat(PlanHints.of(usual))
        .extracting(Problem::fault)
        .doesNotContain(PlanHint.BLOCKS_FORESEEN);

    List<Problem> blocks = hints("protocol: blocks-of-four\nblinding: {level: drawn}\n");
    assertThat(blocks.stream().map(Problems::sentence))
        .anyMatch(s -> s.contains("foresees about 5 of 16 stints") && s.contains("about 2."));
  }

  @ParameterizedTest
  @EnumSource(BlindLevel.class)
  void guessesAreAskedWhereThereIsSomethingToGuessAndAPlanThatAsksElsewhereIsMended(
      BlindLevel level) {
    String blinding = "blinding: {level: " + PlanJson.word(level) + ", prepared_by: Mo%s}\n";
    assertThat(Plans.with(PARTS + "\n" + blinding.formatted("")).blinding().guesses())
        .isEqualTo(level.blind());
    Plan asked = Plans.with(PARTS + "\n" + blinding.formatted(", guesses: yes"));
    assertThat(asked.blinding().guesses()).isEqualTo(level.blind());
    assertThat(PlanCheck.problems(asked)).isEmpty();
    assertThat(PlanHints.of(asked).stream().anyMatch(p -> p.fault() == PlanHint.GUESSES_NOT_ASKED))
        .isEqualTo(!level.blind());
  }

  @Test
  void whoJudgesAMeasureAndKnowsTheKeyIsAHint() {
    String measures =
        "measures: [{name: line, kind: category scale, unit: points, low_words: bad, high_words:"
            + " good, role: primary, worthwhile: 1, assessor: Ann%s}]\n";
    assertThat(hints(measures.formatted("")))
        .extracting(Problem::fault)
        .doesNotContain(PlanHint.ASSESSOR_KNOWS);
    assertThat(hints(measures.formatted(", assessor_knows: yes")).stream().map(Problems::sentence))
        .anyMatch(s -> s.contains("Ann, who judges line, knows which setup was on"));
  }

  @Test
  void olderPlansKeepTheirBytesAndNewOnesAreReadAgain() {
    String usual = new String(PlanJson.bytes(Plans.with("")), StandardCharsets.UTF_8);
    assertThat(usual).doesNotContain("prepared", "masks", "units", "recovers", "assessor");
    Plan plan =
        Plans.with(
            PARTS
                + "\nblinding: {level: masked, prepared_by: Mo, prepared_on: 2026-11-01, masks:"
                + " marks, units: 3, recovers: yes}\n"
                + "measures: [{name: line, kind: category scale, unit: points, low_words: bad,"
                + " high_words: good, role: primary, worthwhile: 1, assessor: Ann, assessor_knows:"
                + " yes}]\n");
    Plan again = PlanReader.stored(new String(PlanJson.bytes(plan), StandardCharsets.UTF_8));
    assertThat(again).isEqualTo(plan);
    assertThat(again.title()).isEqualTo("A against B, masked labels");
  }
}
