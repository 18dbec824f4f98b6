package blindlap.recording;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import blindlap.fault.Unreadable;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Real recordings are read, hostile ones refused with what is wrong. */
class TrackReaderTest {
  private static final String POINT =
      "<trkpt lat=\"%s\" lon=\"%s\"><time>2026-05-02T12:00:%02dZ</time></trkpt>";

  @ParameterizedTest
  @CsvSource({
    "t01_track400m_14passes_1s.tcx, 1387, 1",
    "t08_watch_smart_3laps.tcx, 383, 6",
    "t09_mtb_trail_smart_gap288s.tcx, 1409, 5",
    "t12_power_hr_gap2936s.gpx, 314, 1",
    "t14_eight_segments.gpx, 296, 8",
    "t15_1s_hdop_fix.gpx, 2746, 1",
    "t17_phone_fractions_smart.gpx, 3408, 1",
    "t18_mixed_time_formats_4passes.gpx, 270, 4"
  })
  void realRecordingsAreReadWithTheirPlacesAndTimes(String file, int points, double step) {
    Track track = Tracks.read(file);
    assertThat(track.fixes()).hasSize(points);
    assertThat(Math.round(track.step())).isEqualTo(Math.round(step));
    assertThat(track.fixes().get(0).seconds()).isZero();
  }

  @Test
  void fractionsOfASecondAreKeptAndTheClockIsTheRecorders() {
    Track track = Tracks.read("t01_track400m_14passes_1s.tcx");
    assertThat(track.at(0)).isEqualTo(Instant.parse("2022-03-20T12:52:56.999Z"));
    assertThat(track.at(1.5)).isEqualTo(Instant.parse("2022-03-20T12:52:58.499Z"));
  }

  @Test
  void aPlaceIsAsFarOffAsTheFileSays() {
    assertThat(Tracks.read("t15_1s_hdop_fix.gpx").fixes().get(0).radius95()).isEqualTo(3 * 2.61);
    assertThat(Tracks.read("t06_bike_5laps_32s_gap.gpx").fixes().get(0).radius95()).isEqualTo(3);
  }

  @Test
  void segmentsAndLongStepsAreGaps() {
    Track segments = Tracks.read("t14_eight_segments.gpx");
    assertThat(segments.fixes())
        .as("one of the eight is empty")
        .filteredOn(Fix::resumes)
        .hasSize(6);
    Track mountain = Tracks.read("t09_mtb_trail_smart_gap288s.tcx");
    assertThat(mountain.longestGap(0, 1e6)).isEqualTo(288);
  }

  private static void refused(TrackFault fault, byte[] bytes) {
    assertThatThrownBy(() -> TrackReader.read(bytes))
        .isInstanceOfSatisfying(
            Unreadable.class, e -> assertThat(e.problem().fault()).isEqualTo(fault));
  }

  private static byte[] gpx(String inside) {
    return ("<?xml version=\"1.0\"?><gpx version=\"1.1\" creator=\"x\""
            + " xmlns=\"http://www.topografix.com/GPX/1/1\"><trk><trkseg>"
            + inside
            + "</trkseg></trk></gpx>")
        .getBytes(StandardCharsets.UTF_8);
  }

  @Test
  void recordingsWithoutUsableTimesAreRefused() {
    refused(TrackFault.UNKNOWN_FORMAT, Tracks.bytes("t19_not_well_formed.tcx"));
    refused(TrackFault.TIMES_EQUAL, Tracks.bytes("t20_all_times_equal.gpx"));
    refused(TrackFault.TIMES_EQUAL, Tracks.bytes("t21_duplicate_times.tcx"));
    refused(TrackFault.NO_POINTS, gpx("<trkpt lat=\"1\" lon=\"1\"/><trkpt lat=\"2\" lon=\"1\"/>"));
    refused(TrackFault.TIME_BACK, gpx(POINT.formatted(1, 1, 9) + POINT.formatted(1, 1, 8)));
  }

  @Test
  void aFileThatBreaksOffIsRefusedWithItsLine() {
    byte[] whole = Tracks.bytes("t06_bike_5laps_32s_gap.tcx");
    refused(TrackFault.NOT_WELL_FORMED, java.util.Arrays.copyOf(whole, whole.length / 2));
    refused(TrackFault.UNKNOWN_FORMAT, "lap;time\n1;95.2\n".getBytes(StandardCharsets.UTF_8));
    refused(TrackFault.UNKNOWN_FORMAT, "<kml/>".getBytes(StandardCharsets.UTF_8));
    refused(TrackFault.UNKNOWN_FORMAT, new byte[0]);
  }

  @Test
  void bytesThatAreNoTextAreRefusedAndTextInSixteenBitsIsRead() {
    refused(TrackFault.BINARY, new byte[] {14, 32, 0, 0, 46, 70});
    refused(TrackFault.BINARY, new byte[] {0x1f, (byte) 0x8b, 8, 1});
    String two =
        new String(
            gpx(POINT.formatted(1, 1, 1) + POINT.formatted(1, 2, 2)), StandardCharsets.UTF_8);
    byte[] wide =
        two.replace("1.0\"?", "1.0\" encoding=\"UTF-16\"?").getBytes(Charset.forName("UTF-16"));
    assertThat(TrackReader.read(wide).fixes()).hasSize(2);
  }

  @Test
  void nothingOutsideTheFileIsOpened() {
    String outside =
        "<?xml version=\"1.0\"?><!DOCTYPE gpx [<!ENTITY e SYSTEM \"file:///etc/hostname\">]>"
            + "<gpx version=\"1.1\"><trk><trkseg>&e;</trkseg></trk></gpx>";
    refused(TrackFault.NOT_ALLOWED, outside.getBytes(StandardCharsets.UTF_8));
    String deep = "<trk>".repeat(5_000);
    refused(TrackFault.NOT_ALLOWED, ("<gpx>" + deep).getBytes(StandardCharsets.UTF_8));
  }

  @ParameterizedTest
  @CsvSource({"NaN, 1", "1, Infinity", "90.5, 1", "1, 400", "north, 1", "1e999, 1"})
  void placesOffTheGlobeAreRefused(String north, String east) {
    refused(TrackFault.NO_PLACE, gpx(POINT.formatted(1, 1, 1) + POINT.formatted(north, east, 2)));
  }

  @Test
  void tooManyPointsAreRefused() {
    String point = "<trkpt lat=\"1\" lon=\"1\"/>";
    refused(TrackFault.TOO_MANY_POINTS, gpx(point.repeat(TrackWalk.MOST_POINTS + 1)));
  }

  @Test
  void thePoleAndTheDateLineArePlaces() {
    Track track =
        TrackReader.read(
            gpx(
                POINT.formatted(90, 0, 1)
                    + POINT.formatted(90, 179, 2)
                    + POINT.formatted(-90, -180, 3)));
    assertThat(track.fixes()).hasSize(3);
  }
}
