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
import org.junit.jupiter.params.provider.ValueSource;

class TimingCheckTest {
  private static final String SHA = "0123456789abcdef".repeat(4);

  private static String gate(String name, String at) {
    return "{name: %s, first: {latitude: %s, longitude: 8.1}, second: {latitude: %s, longitude: 8.2}}"
        .formatted(name, at, at);
  }

  private static final String GATES =
      "[" + gate("Top", "47") + "," + gate("Bridge", "47.1") + "," + gate("Barn", "47.2") + "]";

  private static final String TRAIL = "{number: 2, gates: " + GATES + ", sha256: " + SHA + "}";

  private static String day(String trail, String measures) {
    return "{trail_version: %s, measures: [%s]}".formatted(trail, measures);
  }

  private static String sector(String name, String more) {
    return "{name: %s, kind: sector time, unit: s%s}".formatted(name, more);
  }

  private static String primary(String more) {
    return "{name: lap time, kind: lap time, unit: s, role: primary, worthwhile: 0.5%s}"
        .formatted(more);
  }

  private static final String LAP = primary(", timed_by: recording");

  private static List<Problem> found(String trail, String measures) {
    return PlanCheck.problems(Plans.with(day(trail, measures)));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        ", timed_by: recording, from_gate: Top, to_gate: Bridge",
        ", timed_by: recording and watch, from_gate: Bridge, to_gate: Barn",
        ", timed_by: Recording_and-watch, from_gate: Bridge, to_gate: Barn",
        ", timed_by: watch",
        ""
      })
  void sectorsOfTheTrailHold(String timing) {
    assertThat(found(TRAIL, LAP + "," + sector("upper half", timing))).isEmpty();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "', timed_by: recording' | SECTOR_MISSING | From which gate to which is \"m\"? The gates"
            + " are: Top, Bridge, Barn",
        "', timed_by: recording, from_gate: Top, to_gate: Ford' | UNKNOWN_GATE | No gate is called"
            + " \"Ford\". The gates are: Top, Bridge, Barn",
        "', timed_by: recording, to_gate: Bridge' | UNKNOWN_GATE | No gate is called \"\"",
        "', timed_by: recording, from_gate: Barn, to_gate: Top' | GATES_BACKWARDS | would go from"
            + " \"Barn\" to \"Top\"",
        "', timed_by: recording, from_gate: Top, to_gate: Top' | GATES_BACKWARDS | Choose a later"
            + " gate",
        "', timed_by: recording, from_gate: Top, to_gate: Barn' | SAME_WAY | \"m\" and \"lap time\""
            + " time the same way",
        "', from_gate: Top, to_gate: Bridge' | GATES_OF_A_WATCH | names gates, but a watch times"
            + " it",
        "', timed_by: recording, from_gate: Top, to_gate: Bridge, assessor: V. Kern' |"
            + " RECORDED_AND_ASSESSED | Leave one of the two",
      })
  void sectorsThatCannotBeAreRefusedInOneSentence(String timing, PlanFault fault, String says) {
    List<Problem> found = found(TRAIL, LAP + "," + sector("m", timing));
    assertThat(found).extracting(Problem::fault).containsExactly(fault);
    assertThat(found.get(0).where()).startsWith("measures[2]");
    assertThat(Problems.sentence(found.get(0))).contains(says);
  }

  @Test
  void twoMeasuresOfOneSectorAreOneTooMany() {
    String one = sector("a", ", timed_by: recording, from_gate: Top, to_gate: Bridge");
    String two = sector("b", ", timed_by: recording and watch, from_gate: Top, to_gate: Bridge");
    assertThat(found(TRAIL, LAP + "," + one + "," + two))
        .extracting(Problem::fault)
        .containsExactly(PlanFault.SAME_WAY);
  }

  @Test
  void onlyTimesAreRecordedAndALapTimeHasNoGates() {
    String count = "{name: dabs, kind: count, unit: a lap, timed_by: recording}";
    assertThat(found(TRAIL, LAP + "," + count))
        .extracting(Problem::fault)
        .containsExactly(PlanFault.RECORDING_OF_NO_TIME);
    assertThat(found(TRAIL, primary(", timed_by: recording, from_gate: Top, to_gate: Bridge")))
        .extracting(Problem::fault)
        .containsExactly(PlanFault.GATES_OF_A_LAP);
  }

  @Test
  void aRecordingNeedsATrailVersionAndItsGates() {
    List<Problem> none = found("null", LAP);
    assertThat(none).extracting(Problem::fault).containsExactly(PlanFault.RECORDING_WITHOUT_TRAIL);
    assertThat(none.get(0).where()).isEqualTo("measures[1].timed_by");
    List<Problem> unfilled = found("{number: 3}", LAP);
    assertThat(unfilled).extracting(Problem::fault).containsExactly(PlanFault.TRAIL_WITHOUT_GATES);
    assertThat(Problems.sentence(unfilled.get(0)))
        .contains("version 3 of the trail \"Quarry loop\"");
  }

  @Test
  void aLookDoesNotWaitForARecording() {
    String looks =
        "{trail_version: %s, measures: [%s], stints: 24, looks: [16], timetable: null}"
            .formatted(TRAIL, LAP);
    assertThat(Plans.faults(looks)).containsExactly(PlanFault.LOOKS_WITH_RECORDING);
    assertThat(Plans.faults(looks.replace(", timed_by: recording", ""))).isEmpty();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "number: 2 | number: 0 | NOT_POSITIVE",
        "0123456789abcdef0 | 0123456789ABCDEF0 | NOT_A_SHA256",
        "name: Bridge | name: ' TOP' | SAME_GATE",
        "latitude: 47.1, | latitude: 90.1, | NOT_DEGREES",
        "latitude: 47.1, | latitude: 47.12345678, | NOT_DEGREES",
        "longitude: 8.1} | longitude: -181} | NOT_DEGREES",
        "longitude: 8.1} | longitude: 8.20} | GATE_WITHOUT_WIDTH",
        "name: Bridge | name: Bridge, direction: 0 | NOT_A_DIRECTION",
        "name: Bridge | name: Bridge, direction: 2 | NOT_A_DIRECTION",
      })
  void gatesThatCannotBeAreRefused(String part, String by, PlanFault fault) {
    assertThat(found(TRAIL.replace(part, by), LAP)).extracting(Problem::fault).contains(fault);
  }

  @Test
  void aTrailOfOneGateIsNone() {
    assertThat(found("{number: 1, gates: [" + gate("Top", "47") + "], sha256: " + SHA + "}", LAP))
        .extracting(Problem::fault)
        .containsExactly(PlanFault.ONE_GATE);
  }

  @Test
  void aPlanKeepsItsTimingAndOneWithoutKeepsItsBytes() {
    assertThat(new String(PlanJson.bytes(Plans.with("")), StandardCharsets.UTF_8))
        .doesNotContain("trail_version", "from_gate", "\"timed_by\":\"watch");
    Plan plan =
        Plans.with(
            day(
                TRAIL.replace("name: Barn", "name: Barn, direction: -1"),
                LAP
                    + ","
                    + sector(
                        "m", ", timed_by: recording and watch, from_gate: Top, to_gate: Barn")));
    assertThat(PlanReader.stored(new String(PlanJson.bytes(plan), StandardCharsets.UTF_8)))
        .isEqualTo(plan);
    assertThat(plan.measures().get(1).timing())
        .isEqualTo(new Timing(TimedBy.RECORDING_AND_WATCH, new Sector("Top", "Barn")));
  }
}
