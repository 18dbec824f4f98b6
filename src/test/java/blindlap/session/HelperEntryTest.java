package blindlap.session;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.session.day.DayEvent;
import java.math.BigDecimal;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;

/** What the helper writes down of a stint, step by step. */
class HelperEntryTest {
  private static final Instant NINE = Instant.parse("2026-11-14T09:00:00Z");
  private static final HelperEntry.Outside OUTSIDE =
      new HelperEntry.Outside("sag", "26 %", "29", new BigDecimal("3"), "");
  private static final HelperEntry.Said SAID =
      new HelperEntry.Said(3, DayEvent.COVER_OFF, "the wind");

  private final HelperEntry untouched = HelperEntry.untouched(3, "M. Oster", 1);
  private final HelperEntry full =
      untouched
          .begunAt(NINE)
          .withMeasured(Map.of("sag", "29"), List.of(OUTSIDE))
          .withConfirmed(Set.of(SafetyCheck.AXLES))
          .withFit(4, true)
          .withEvent(SAID)
          .withNote("as usual")
          .doneAt(NINE.plusSeconds(420));

  @Test
  void anUntouchedStintSaysNothingButWhatIsToBeFittedByWhom() {
    assertThat(untouched.stint()).isEqualTo(3);
    assertThat(untouched.helper()).isEqualTo("M. Oster");
    assertThat(untouched.planned()).isEqualTo(1).isEqualTo(untouched.fitted());
    assertThat(untouched.wrongFit()).isFalse();
    assertThat(untouched.begun()).isNull();
    assertThat(untouched.done()).isNull();
    assertThat(untouched.measured()).isEmpty();
    assertThat(untouched.outside()).isEmpty();
    assertThat(untouched.confirmed()).isEmpty();
    assertThat(untouched.fit()).isEmpty();
    assertThat(untouched.events()).isEmpty();
    assertThat(untouched.note()).isEmpty();
  }

  @Test
  void whatIsAddedLaterTakesNothingAway() {
    assertThat(full.begun()).isEqualTo(NINE);
    assertThat(full.done()).isEqualTo(NINE.plusSeconds(420));
    assertThat(full.measured()).containsExactly(Map.entry("sag", "29"));
    assertThat(full.outside()).containsExactly(OUTSIDE);
    assertThat(full.confirmed()).containsExactly(SafetyCheck.AXLES);
    assertThat(full.fit()).containsExactly(Map.entry(4, true));
    assertThat(full.events()).containsExactly(SAID);
    assertThat(full.note()).isEqualTo("as usual");
    assertThat(full.by("J. Berg"))
        .usingRecursiveComparison()
        .ignoringFields("helper")
        .isEqualTo(full);
    assertThat(full.by("J. Berg").helper()).isEqualTo("J. Berg");
  }

  @Test
  void anotherSetupThanPlannedIsMeasuredAnewAndKeepsTheRest() {
    HelperEntry wrong = full.withFitted(0);
    assertThat(wrong.wrongFit()).isTrue();
    assertThat(wrong.planned()).isEqualTo(1);
    assertThat(wrong.measured()).isEmpty();
    assertThat(wrong.outside()).isEmpty();
    assertThat(wrong)
        .usingRecursiveComparison()
        .ignoringFields("fitted", "measured", "outside")
        .isEqualTo(full);
  }

  @Test
  void answersAndEventsAreAddedInOrderAndALaterAnswerCounts() {
    HelperEntry more = full.withFit(2, true).withFit(4, false).withEvent(SAID);
    assertThat(more.fit()).containsExactly(Map.entry(2, true), Map.entry(4, false));
    assertThat(more.events()).containsExactly(SAID, SAID);
    assertThat(full.fit()).containsExactly(Map.entry(4, true));
  }

  @Test
  void aSettingOutsideItsToleranceIsAcceptedForAReasonAndStaysWhatItWas() {
    HelperEntry.Outside accepted = OUTSIDE.because("the rider ate well");
    assertThat(accepted.reason()).isEqualTo("the rider ate well");
    assertThat(accepted).usingRecursiveComparison().ignoringFields("reason").isEqualTo(OUTSIDE);
  }

  @Test
  void anEntryIsNotChangedThroughWhatItWasMadeOf() {
    Map<String, String> measured = new HashMap<>(Map.of("sag", "26"));
    List<HelperEntry.Outside> outside = new ArrayList<>(List.of(OUTSIDE));
    HelperEntry entry = untouched.withMeasured(measured, outside);
    measured.put("sag", "27");
    outside.clear();
    assertThat(entry.measured()).containsExactly(Map.entry("sag", "26"));
    assertThat(entry.outside()).containsExactly(OUTSIDE);
  }

  @Test
  void itsNameTellsNothingOfWhatIsFitted() {
    List<UnaryOperator<HelperEntry>> changes =
        List.of(e -> e.withFitted(0), e -> e.withNote("Shock K"), e -> e.by("someone"));
    changes.forEach(c -> assertThat(c.apply(full)).hasToString("HelperEntry[stint 3]"));
  }
}
