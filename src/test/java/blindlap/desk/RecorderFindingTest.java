package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import blindlap.compute.FindingJson;
import blindlap.exchange.DataPackageReader;
import blindlap.review.Analysis;
import blindlap.review.DayRecord;
import blindlap.review.Finding;
import blindlap.review.RecorderFinding;
import blindlap.wording.FindingText;
import blindlap.wording.RecorderWords;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a recorder leaves open, and how a watch agrees with it. */
class RecorderFindingTest {
  @TempDir Path folder;

  private static Finding ended(TestDay day) {
    new HelperHand(day).unseal();
    return Analysis.of(Reviews.day(day.state()));
  }

  private Finding recorded() {
    try (TestDay day = new TestDay(folder, RecordedDay.PLAN, 3)) {
      RecordedDay.ride(day, RecordedDay::watched);
      RecordedDay.bringIn(day);
      return ended(day);
    }
  }

  @Test
  void theRecordersShareIsItsVarianceOverThatOfTheNoise() {
    Finding finding = recorded();
    RecorderFinding lap = RecorderFinding.of(finding).get(0);
    // Every pass of the start has an SD of 0.3 s, of the finish 0.4 s: 0.5 s of the lap.
    assertThat(lap.uncertainty()).isCloseTo(0.5, within(1e-12));
    assertThat(lap.laps()).isEqualTo(15);
    assertThat(lap.missing()).isZero(); // walkers on lap 9, which is void there, not missing
    double noise = finding.primary().orElseThrow().result().noiseSd();
    assertThat(noise).isLessThan(0.5);
    assertThat(lap.share()).hasValue(1);
    assertThat(RecorderWords.lines(finding).get(0))
        .isEqualTo(
            "± 0.98 s of each lap time is the recorder: as much as all of this rider's noise, so"
                + " that a better recorder, or a watch, would show more.");
  }

  @Test
  void theAgreementOfWatchAndRecordingIsThatOfBlandAndAltman() {
    Finding finding = recorded();
    RecorderFinding half = RecorderFinding.of(finding).get(1);
    // The watch says 0.25, 0.35 or 0.45 s more; stint 5 has no pass of the bridge.
    double[] differences = new double[15];
    int at = 0;
    for (int stint = 1; stint <= 16; stint++) {
      if (stint != 5) {
        differences[at++] = 0.25 + stint % 3 / 10.0;
      }
    }
    double mean = java.util.Arrays.stream(differences).average().orElseThrow();
    double squares = java.util.Arrays.stream(differences).map(d -> (d - mean) * (d - mean)).sum();
    assertThat(half.pairs()).isEqualTo(15);
    assertThat(half.agreement().orElseThrow().bias()).isCloseTo(mean, within(1e-9));
    assertThat(half.agreement().orElseThrow().sd())
        .isCloseTo(Math.sqrt(squares / 14), within(1e-9));
    assertThat(String.join("\n", RecorderWords.lines(finding)))
        .contains("\"upper half\" has no recorded time on 1 of 16 scored laps, which are missing")
        .contains("Watch and recording of \"upper half\": the watch says 0.34 s more on average")
        .contains("15 laps tell. The recording counts, as the plan says.");
  }

  @Test
  void itStandsInReportAndJsonAndIsTheSameFromThePackage() throws Exception {
    try (TestDay day = new TestDay(folder, RecordedDay.PLAN, 3)) {
      RecordedDay.ride(day, RecordedDay::watched);
      RecordedDay.bringIn(day);
      Finding finding = ended(day);
      List<String> words = RecorderWords.lines(finding);
      assertThat(new FindingText(finding).evidence()).containsAll(words);
      DayRecord again = DataPackageReader.read(day.desk().reviews().export(day.state()));
      assertThat(RecorderWords.lines(Analysis.of(again))).isEqualTo(words);
      JsonNode json = new ObjectMapper().readTree(FindingJson.write(finding)).path("recorder");
      assertThat(json.path(0).path("counts").asText()).isEqualTo("recording");
      assertThat(json.path(0).path("uncertainty").asDouble()).isCloseTo(0.5, within(1e-12));
      assertThat(json.path(0).path("share_of_noise").asDouble()).isEqualTo(1);
      assertThat(json.path(1).path("agreement").path("laps").asInt()).isEqualTo(15);
      assertThat(json.path(1).path("agreement").path("high").asDouble())
          .isEqualTo(RecorderFinding.of(finding).get(1).agreement().orElseThrow().limits().high());
    }
  }

  @Test
  void aDayWithoutItsRecordingSaysSoAndOneWithoutRecordingsSaysNothing() {
    try (TestDay day = new TestDay(folder, RecordedDay.PLAN, 3)) {
      RecordedDay.ride(day, RecordedDay::watched);
      assertThat(RecorderWords.lines(ended(day)))
          .containsExactly(
              "\"lap time\" was to come from a recording, and none gave it a time.",
              "\"upper half\" was to come from a recording, and none gave it a time.");
    }
    try (TestDay day = new TestDay(folder, TestDay.SIXTEEN, 4)) {
      RecordedDay.ride(
          day, (stint, name) -> name.equals("lap time") ? new BigDecimal(90 + stint % 5) : null);
      Finding finding = ended(day);
      assertThat(RecorderWords.lines(finding)).isEmpty();
      assertThat(FindingJson.write(finding)).doesNotContain("recorder");
    }
  }

  @Test
  void aWatchThatCountsHasNoShareOfARecorder() {
    try (TestDay day = new TestDay(folder, RecordedDay.plan("watch", "recording"), 3)) {
      RecordedDay.ride(
          day,
          (stint, name) ->
              name.equals("lap time")
                  ? BigDecimal.valueOf(RecordedDay.seconds(stint)[1] - 0.2)
                  : null);
      RecordedDay.bringIn(day);
      List<String> lines = RecorderWords.lines(ended(day));
      assertThat(lines.get(0))
          .isEqualTo(
              "Watch and recording of \"lap time\": the watch says 0.20 s less on average, and 95"
                  + " of 100 such differences lie from −0.20 s to −0.20 s, as far as 16 laps tell."
                  + " The watch counts, as the plan says.");
    }
  }
}
