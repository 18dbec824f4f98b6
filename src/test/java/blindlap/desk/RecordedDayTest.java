package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.day.DayResult;
import blindlap.desk.day.LapTable;
import blindlap.exchange.DataPackageReader;
import blindlap.fault.Problem;
import blindlap.plan.Measure;
import blindlap.plan.Sector;
import blindlap.review.DayRecord;
import blindlap.review.Remark;
import blindlap.review.StintValues;
import blindlap.review.TimedValue;
import blindlap.session.DayCommands;
import blindlap.session.Outcome;
import blindlap.session.SectorVoidWithdrawn;
import blindlap.session.SectorVoided;
import blindlap.session.SessionFault;
import blindlap.session.SessionState;
import blindlap.session.day.LapId;
import blindlap.session.day.VoidEvent;
import blindlap.wording.RecordingsWords;
import blindlap.wording.day.Problems;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Days whose times a recording gives, from the laps to the data package. */
class RecordedDayTest {
  @TempDir Path folder;

  private static final LapId FIRST = new LapId(1, 1);

  private static Measure measure(SessionState state, String name) {
    return state.plan().measure(name).orElseThrow();
  }

  private static double[] values(DayRecord day, String name, StintValues.Laps which) {
    return StintValues.of(day, day.plan().measure(name).orElseThrow(), which).values();
  }

  private TestDay ridden() {
    TestDay day = new TestDay(folder, RecordedDay.PLAN, 3);
    RecordedDay.ride(day, RecordedDay::watched);
    return day;
  }

  private static DayRecord ended(TestDay day) {
    new HelperHand(day).unseal();
    return Reviews.day(day.state());
  }

  @Test
  void nobodyIsAskedForWhatARecordingGives() {
    try (TestDay day = new TestDay(folder, RecordedDay.PLAN, 3)) {
      assertThat(LapTable.empty(day.state().day()).columns())
          .contains("upper half")
          .doesNotContain("lap time");
      Sessions.Result typed =
          new LapFiles(day.desk().sessions())
              .record(
                  day.state(),
                  "lap;lap time;upper half\n1;90;45\n".getBytes(StandardCharsets.UTF_8));
      assertThat(Problems.sentences(((Sessions.Result.Refused) typed).problems()))
          .containsExactly(
              "Line 2, column 2: A recording gives \"lap time\", so that nobody types it: leave it"
                  + " out here, and bring the recording in once the day is ridden. Nothing was"
                  + " recorded.");
      DayResult score =
          day.desk().riderDays().score(day.id(), FIRST, "lap time", BigDecimal.TEN, false);
      assertThat(score).isInstanceOf(DayResult.Refused.class);
      Outcome out = new DayCommands(day.state()).takeOut(FIRST, "lap time", "it was windy");
      assertThat(((Outcome.Refused) out).problems())
          .extracting(Problem::fault)
          .contains(SessionFault.RECORDING_GIVES);
      assertThat(day.state().lapsRidden()).isZero();
    }
  }

  @Test
  void aLapIsCompleteWithoutWhatARecordingGives() {
    try (TestDay day = ridden()) {
      assertThat(LapTable.empty(day.state().day()).columns()).contains("upper half");
      assertThat(day.state().lapsRidden()).isEqualTo(16);
      assertThat(day.state().lap(FIRST).orElseThrow().values()).containsOnlyKeys("upper half");
    }
  }

  @Test
  void theValuesAreThoseOfTheRecordingAndNeverAMixture() {
    try (TestDay day = ridden()) {
      RecordedDay.bringIn(day);
      DayRecord record = ended(day);
      double[] lap = values(record, "lap time", StintValues.Laps.NOT_VOID);
      double[] half = values(record, "upper half", StintValues.Laps.NOT_VOID);
      for (int stint = 1; stint <= 16; stint++) {
        double[] seconds = RecordedDay.seconds(stint);
        if (stint == 9) {
          assertThat(lap[stint - 1]).isNaN(); // walkers on its lower half
        } else {
          assertThat(lap[stint - 1]).isEqualTo(seconds[1]);
        }
        if (stint == 5) {
          assertThat(half[stint - 1]).isNaN(); // no pass of the bridge, whatever the watch said
        } else {
          assertThat(half[stint - 1]).isEqualTo(seconds[0]);
        }
      }
      assertThat(values(record, "lap time", StintValues.Laps.ALL_RIDDEN)[8])
          .isEqualTo(RecordedDay.seconds(9)[1]);
      TimedValue both =
          Objects.requireNonNull(record.lap(FIRST).orElseThrow().timed().get("upper half"));
      assertThat(both.watch()).isEqualByComparingTo(RecordedDay.watched(1, "upper half"));
      // Who held the watch that does not count is said of no value.
      assertThat(record.remarks(Remark.Kind.TIMED)).isEmpty();
      assertThat(both.uncertainty()).isEqualByComparingTo("0.5"); // √(0.3² + 0.4²)
    }
  }

  @Test
  void aVoidSectorThatIsTakenBackMasksNothing() {
    try (TestDay day = ridden()) {
      RecordedDay.bringIn(day);
      RecordedDay.put(
          day,
          new SectorVoidWithdrawn(new LapId(9, 1), new Sector("Bridge", "Barn"), "it was lap 8"));
      assertThat(values(ended(day), "lap time", StintValues.Laps.NOT_VOID)[8])
          .isEqualTo(RecordedDay.seconds(9)[1]);
    }
  }

  @Test
  void aDayWithoutItsRecordingHasNoValuesThoughAWatchHas() {
    try (TestDay day = ridden()) {
      assertThat(values(ended(day), "upper half", StintValues.Laps.ALL_RIDDEN))
          .containsOnly(Double.NaN);
    }
  }

  @Test
  void aWatchCountsWhereThePlanSaysSoAndTheRecordingStandsBeside() {
    try (TestDay day = new TestDay(folder, RecordedDay.plan("watch", "recording"), 3)) {
      RecordedDay.ride(
          day, (stint, name) -> name.equals("lap time") ? new BigDecimal("95.5") : null);
      RecordedDay.bringIn(day);
      DayRecord record = ended(day);
      assertThat(values(record, "lap time", StintValues.Laps.NOT_VOID)).containsOnly(95.5);
      TimedValue both =
          Objects.requireNonNull(record.lap(FIRST).orElseThrow().timed().get("lap time"));
      assertThat(both.watch()).isEqualByComparingTo("95.5");
      assertThat(both.recording()).isEqualByComparingTo("90.5");
    }
  }

  @Test
  void theDataPackageGivesTheSameNumbersAgain() {
    try (TestDay day = ridden()) {
      RecordedDay.bringIn(day);
      Map<String, byte[]> sealed = day.desk().reviews().export(day.state());
      assertThat(text(sealed, "laps.csv")).contains(",90.5,45.25\n");
      assertThat(text(sealed, "passes.csv")).contains("5,5,1,1,2,Bridge,,,gap,kept");
      assertThat(sealed).doesNotContainKey("timed.csv");

      DayRecord record = ended(day);
      Map<String, byte[]> files = day.desk().reviews().export(day.state());
      DayRecord again = DataPackageReader.read(files);
      assertThat(again.laps()).isEqualTo(record.laps());
      assertThat(text(files, "recordings.csv"))
          .contains("1,afternoon.gpx," + "ab".repeat(32))
          .contains("-3601.5,16");
      assertThat(text(files, "timed.csv"))
          .contains("9,1,lap time,recording,90.75,0.5000,,true")
          .contains("5,1,upper half,recording,,,");
      assertThat(values(again, "lap time", StintValues.Laps.NOT_VOID))
          .isEqualTo(values(record, "lap time", StintValues.Laps.NOT_VOID));
      assertThat(measure(day.state(), "lap time").recorded()).isTrue();
    }
  }

  private static String text(Map<String, byte[]> files, String name) {
    return new String(Objects.requireNonNull(files.get(name)), StandardCharsets.UTF_8);
  }

  @Test
  void theReportSaysWhichRecordingsThereWereAndWhatTheyLack() {
    try (TestDay day = ridden()) {
      assertThat(RecordingsWords.lines(day.state())).isEmpty();
      assertThat(RecordingsWords.awaited(day.state()))
          .containsExactly(
              "No recording has given \"lap time\" and \"upper half\" a time yet. Bring the"
                  + " recording in on the page Ride, or with blindlap recording, before the review"
                  + " is closed: afterwards nothing can be added, and what is missing stays"
                  + " missing.");
      RecordedDay.put(day, RecordedDay.recording(15, 5));
      RecordedDay.put(day, RecordedDay.recording(4, 0));
      RecordedDay.put(
          day,
          new SectorVoided(
              new LapId(9, 1), new Sector("Bridge", "Barn"), VoidEvent.TRAFFIC, "walkers", false));
      assertThat(RecordingsWords.awaited(day.state())).isEmpty();
      List<String> lines = RecordingsWords.lines(day.state());
      assertThat(lines)
          .containsExactly(
              "\"afternoon.gpx\": 14 laps found by order and clock, 1 kept by a person though a"
                  + " pass is doubtful. The day's clock was 1 h 0 min 2 s behind the recorder's,"
                  + " the time to enter a lap included. SHA-256 "
                  + "ab".repeat(32)
                  + ".",
              "\"morning.gpx\": 4 laps found by order and clock. The day's clock was 1 h 0"
                  + " min 2 s behind the recorder's, the time to enter a lap included. SHA-256 "
                  + "cd".repeat(32)
                  + ".",
              "No recording has lap 16.",
              "Lap 5 has no time at the gate Bridge: the recorder stopped or lost its way near it.",
              "Lap 9 is void from Bridge to Barn by an event (traffic: walkers); its time from"
                  + " start to finish is missing too, other sectors count.");
      ended(day);
      String report = day.desk().reviews().html(day.state(), false).replaceAll("\\s+", " ");
      assertThat(report).contains("afternoon.gpx", "ab".repeat(32), "No recording has lap 16.");
      assertThat(report).contains("a recording was brought in");
      assertThat(report)
          .contains("timed by a recording, from start to finish.")
          .contains("timed by a recording, with a watch beside it, from Top to Bridge.")
          .contains("Gates of version 2 of the trail, in the order of riding: Top, Bridge, Barn.");
      assertThat(report).contains("1:30.5", "± 0.98 s of each lap time is the recorder");
    }
  }
}
