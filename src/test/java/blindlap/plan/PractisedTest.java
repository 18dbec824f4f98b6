package blindlap.plan;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

class PractisedTest {
  private static final String TABLE =
      "timetable: {zone: Europe/Vienna, start: \"09:00\", daylight_end: \"19:00\", lap: 2, swap: %s%s}";

  private static Practised read(String typed) {
    return Practised.read(typed).orElseThrow();
  }

  @Test
  void theLongestAndATenthIsRoundedUpToHalfAMinute() {
    assertThat(read("5:40, 6:20, 5:55").minutes()).isEqualByComparingTo("7");
    assertThat(read("3:05").minutes()).isEqualByComparingTo("3.5");
    assertThat(read("2:43.7").minutes()).isEqualByComparingTo("3.5");
    assertThat(read("2:43.6").minutes()).isEqualByComparingTo("3");
  }

  @Test
  void timesAreReadAsTheyAreTypedAndWrittenInOneForm() {
    assertThat(read("5:40; 380 6:05.5,59").text()).isEqualTo("5:40, 6:20, 6:05.5, 0:59");
    assertThat(read("").any()).isFalse();
    assertThat(read(read("5:40 380").text())).isEqualTo(read("5:40 380"));
  }

  @Test
  void whatIsNoTimeAboveZeroIsRefused() {
    assertThat(Practised.read("5:40, soon")).isEmpty();
    assertThat(Practised.read("0:00")).isEmpty();
    assertThat(Practised.read("-3")).isEmpty();
    assertThat(Practised.read("5:70")).isEmpty();
    assertThat(Practised.read("60 ".repeat(Practised.MOST + 1))).isEmpty();
  }

  @Test
  void aSwapTimeBelowTheLongestAndATenthGetsAHint() {
    Plan shorter = Plans.with(TABLE.formatted("6.5", ", practised: \"5:40, 6:20\""));
    assertThat(PlanHints.of(shorter))
        .filteredOn(hint -> hint.fault() == PlanHint.SWAP_TOO_SHORT)
        .singleElement()
        .satisfies(
            hint -> assertThat(hint.details()).isEqualTo(java.util.List.of("6.5", "6:20", "7")));
    Plan enough = Plans.with(TABLE.formatted("7", ", practised: \"5:40, 6:20\""));
    assertThat(PlanHints.of(enough)).noneMatch(hint -> hint.fault() == PlanHint.SWAP_TOO_SHORT);
  }

  @Test
  void aPlanWithoutPractisedSwapsKeepsItsBytes() {
    String without =
        new String(PlanJson.bytes(Plans.with(TABLE.formatted("7", ""))), StandardCharsets.UTF_8);
    assertThat(without).doesNotContain("practised");
    String with =
        new String(
            PlanJson.bytes(Plans.with(TABLE.formatted("7", ", practised: \"5:40\""))),
            StandardCharsets.UTF_8);
    assertThat(with).contains("\"practised\":\"5:40\"");
    assertThat(Practised.text(new BigDecimal("61"))).isEqualTo("1:01");
  }
}
