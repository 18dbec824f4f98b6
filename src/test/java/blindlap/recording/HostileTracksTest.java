package blindlap.recording;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import blindlap.fault.Unreadable;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Recordings made to break a reader: each is refused or read, within seconds and bounded memory.
 */
@Timeout(20)
class HostileTracksTest {
  private static final String GPX =
      "<gpx version=\"1.1\" creator=\"x\""
          + " xmlns=\"http://www.topografix.com/GPX/1/1\"><trk><trkseg>";
  private static final String GPX_END = "</trkseg></trk></gpx>";
  private static final String TCX = "<TrainingCenterDatabase><Activities><Activity><Lap><Track>";
  private static final String TCX_END =
      "</Track></Lap></Activity></Activities></TrainingCenterDatabase>";

  private static String gpx(double north, double east, String time) {
    return "<trkpt lat=\"" + north + "\" lon=\"" + east + "\"><time>" + time + "</time></trkpt>";
  }

  private static String tcx(String north, String east, String time) {
    return "<Trackpoint><Time>"
        + time
        + "</Time><Position><LatitudeDegrees>"
        + north
        + "</LatitudeDegrees><LongitudeDegrees>"
        + east
        + "</LongitudeDegrees></Position></Trackpoint>";
  }

  private static String second(int second) {
    return "2026-05-02T12:%02d:%02dZ".formatted(second / 60, second % 60);
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  private static void refused(TrackFault fault, byte[] bytes) {
    assertThatThrownBy(() -> TrackReader.read(bytes))
        .isInstanceOfSatisfying(
            Unreadable.class, e -> assertThat(e.problem().fault()).isEqualTo(fault));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "<!ENTITY e SYSTEM \"file:///etc/hostname\">",
        "<!ENTITY e SYSTEM \"http://example.org/e\">",
        "<!ENTITY % p SYSTEM \"file:///etc/hostname\"> %p;",
        "<!ENTITY e \"10.0\">",
        "<!ENTITY a \"haha\"><!ENTITY b \"&a;&a;&a;&a;&a;&a;&a;&a;\"><!ENTITY e \"&b;&b;&b;&b;\">"
      })
  void entitiesOfEveryKindAreRefusedInBothFormats(String entity) {
    String head = "<?xml version=\"1.0\"?><!DOCTYPE x [" + entity + "]>";
    refused(
        TrackFault.NOT_ALLOWED,
        bytes(head + GPX + "&e;" + gpx(1, 1, second(1)) + gpx(1, 2, second(2)) + GPX_END));
    refused(
        TrackFault.NOT_ALLOWED,
        bytes(head + TCX + tcx("&e;", "1", second(1)) + tcx("1", "2", second(2)) + TCX_END));
    refused(TrackFault.NOT_ALLOWED, bytes("<!DOCTYPE x SYSTEM \"file:///etc/hostname\">" + GPX));
  }

  /** Each is one thing without end; whoever reads it whole needs as much memory again. */
  @ParameterizedTest
  @ValueSource(strings = {"<a b=\"", "<!--", "<![CDATA[", "<?a ", "<a", "</a ", "<a>", "<a b='>"})
  void nothingInAFileMayGoOnWithoutEnd(String begun) {
    byte[] endless = new byte[PlainMarkup.LONGEST + 200];
    Arrays.fill(endless, (byte) 'x');
    for (String head : new String[] {GPX, TCX}) {
      byte[] all =
          Arrays.copyOf(bytes(head + begun), head.length() + begun.length() + endless.length);
      System.arraycopy(endless, 0, all, head.length() + begun.length(), endless.length);
      refused(TrackFault.NOT_ALLOWED, all);
    }
  }

  @Test
  void aLineMayBeAsLongAsTheFileButNoTextWithoutMarkup() {
    StringBuilder line = new StringBuilder(GPX);
    for (int i = 0; i < 3000; i++) {
      line.append(gpx(1, 1 + i * 1e-5, second(i))).append("<extensions><a>1</a></extensions>");
      line.append(" ".repeat(1000));
    }
    assertThat(TrackReader.read(bytes(line + GPX_END)).fixes()).hasSize(3000);
    byte[] blank = new byte[25_000_000];
    Arrays.fill(blank, (byte) ' ');
    refused(TrackFault.UNKNOWN_FORMAT, blank);
  }

  @Test
  void pointsBeyondADaysAreRefusedInBothFormats() {
    String points = "<trkpt lat=\"1\" lon=\"1\"/>".repeat(TrackWalk.MOST_POINTS + 1);
    refused(TrackFault.TOO_MANY_POINTS, bytes(GPX + points + GPX_END));
    refused(
        TrackFault.TOO_MANY_POINTS,
        bytes(TCX + "<Trackpoint/>".repeat(TrackWalk.MOST_POINTS + 1) + TCX_END));
  }

  /** A reader of XML keeps them all. */
  @Test
  void namesWithoutEndAreRefused() {
    StringBuilder names = new StringBuilder(GPX);
    for (int i = 0; i < 20_000; i++) {
      names.append("<n").append(i).append("/>");
    }
    refused(TrackFault.NOT_ALLOWED, bytes(names + GPX_END));
  }

  /** A library that kept them would keep a million objects of nothing that is asked for. */
  @Test
  void whateverElseStandsInAFileIsPassedOver() {
    String waypoints = "<wpt lat=\"1\" lon=\"1\"/>".repeat(1_000_000);
    String two = gpx(1, 1, second(1)) + gpx(1, 2, second(2));
    String inside = "<extensions><trkpt lat=\"nowhere\"/><trk/></extensions>";
    byte[] file = bytes(GPX.replace("<trk>", waypoints + "<trk>") + two + inside + GPX_END);
    assertThat(TrackReader.read(file).fixes()).hasSize(2);
  }

  @ParameterizedTest
  @CsvSource({"NaN, 1", "1, NaN", "Infinity, 1", "1, -Infinity", "1e999, 1", "1, 361"})
  void placesThatAreNoneAreRefusedInTcx(String north, String east) {
    refused(
        TrackFault.NO_PLACE,
        bytes(TCX + tcx("1", "1", second(1)) + tcx(north, east, second(2)) + TCX_END));
  }

  @ParameterizedTest
  @ValueSource(strings = {"NaN", "Infinity", "", "now", "2026-02-30T00:00:00Z", "1777723200"})
  void aPointWhoseTimeIsNoneIsLeftOutAndCounted(String time) {
    byte[] one =
        bytes(GPX + gpx(1, 1, second(1)) + gpx(1, 2, time) + gpx(1, 3, second(3)) + GPX_END);
    byte[] other =
        bytes(
            TCX
                + tcx("1", "1", second(1))
                + tcx("1", "2", time)
                + tcx("1", "3", second(3))
                + TCX_END);
    for (byte[] file : List.of(one, other)) {
      Track track = TrackReader.read(file);
      assertThat(track.fixes()).hasSize(2);
      assertThat(track.leftOut()).isEqualTo(1);
    }
  }

  @Test
  void timesAtTheEndsOfTheCalendarAreTimes() {
    byte[] file =
        bytes(
            TCX
                + tcx("1", "1", "-999999999-01-02T00:00:00Z")
                + tcx("1", "3", "+999999999-12-30T23:59:59Z")
                + TCX_END);
    Track track = TrackReader.read(file);
    Passes passes = Passes.of(track, List.of(new Gate(new Position(0, 2), new Position(2, 2))));
    assertThat(passes.passes()).singleElement().matches(Pass::slow);
    assertThatCode(() -> track.at(passes.passes().get(0).seconds())).doesNotThrowAnyException();
  }

  @Test
  void aTimeWithoutAZoneIsOneOfUtcInBothFormats() {
    String first = "2026-05-02T12:00:01";
    String second = "2026-05-02t14:00:02.5+02:00";
    for (byte[] file :
        List.of(
            bytes(GPX + gpx(1, 1, first) + gpx(1, 2, second) + GPX_END),
            bytes(TCX + tcx("1", "1", first) + tcx("1", "2", second) + TCX_END))) {
      Track track = TrackReader.read(file);
      assertThat(track.at(0)).isEqualTo(Instant.parse("2026-05-02T12:00:01Z"));
      assertThat(track.fixes().get(1).seconds()).isEqualTo(1.5);
    }
  }

  @ParameterizedTest
  @CsvSource({
    "2.5, 7.5",
    "0.4, 3",
    "-1e9, 3",
    "NaN, 3",
    "Infinity, 3000",
    "wide, 3",
    "1e300, 3000"
  })
  void howFarOffAPlaceMayBeIsAlwaysANumber(String spread, double radius) {
    String one = gpx(1, 1, second(1)).replace("</trkpt>", "<hdop>" + spread + "</hdop></trkpt>");
    Track track = TrackReader.read(bytes(GPX + one + gpx(1, 2, second(2)) + GPX_END));
    assertThat(track.fixes().get(0).radius95()).isEqualTo(radius);
  }

  @Test
  void noPointAndOnePointAreNoTrack() {
    for (String format : new String[] {GPX + GPX_END, TCX + TCX_END}) {
      refused(TrackFault.NO_POINTS, bytes(format));
    }
    refused(TrackFault.NO_POINTS, bytes(GPX + gpx(1, 1, second(1)) + GPX_END));
    refused(TrackFault.NO_POINTS, bytes(TCX + tcx("1", "1", second(1)) + TCX_END));
    refused(TrackFault.NO_POINTS, bytes("<gpx/>"));
    refused(TrackFault.NO_POINTS, bytes("<TrainingCenterDatabase/>"));
  }

  @ParameterizedTest
  @CsvSource({"89.9999, 0", "-89.9999, 77", "10, 179.9999", "10, -179.9999", "-33, 359.9999"})
  void atPolesAndOnTheDateLineGatesArePassed(double north, double east) {
    StringBuilder points = new StringBuilder(GPX);
    for (int i = 0; i <= 20; i++) {
      double along = east + (i - 10) * 2e-5;
      points.append(gpx(north, Math.IEEEremainder(along, 360), second(i)));
    }
    Track track = TrackReader.read(bytes(points + GPX_END));
    Gate gate = new Gate(new Position(north - 4e-5, east), new Position(north + 4e-5, east));
    assertThat(Passes.of(track, List.of(gate)).passes())
        .singleElement()
        .satisfies(pass -> assertThat(pass.seconds()).isCloseTo(10, within(0.01)));
  }

  @Test
  void lettersAreThoseThatAreDeclared() {
    String two = GPX + gpx(1, 1, second(1)) + gpx(1, 2, second(2)) + GPX_END;
    String named = two.replace("<trk>", "<trk><name>Gr\u00fcn</name>");
    for (String name : new String[] {"ISO-8859-1", "windows-1252", "UTF-8", "IBM037"}) {
      String declared = "<?xml version=\"1.0\" encoding=\"" + name + "\"?>" + named;
      byte[] file = declared.getBytes(Charset.forName(name));
      if (name.equals("IBM037")) {
        refused(TrackFault.UNKNOWN_FORMAT, file);
      } else {
        assertThat(TrackReader.read(file).fixes()).as(name).hasSize(2);
      }
    }
    refused(TrackFault.NOT_WELL_FORMED, named.getBytes(StandardCharsets.ISO_8859_1));
    refused(TrackFault.UNKNOWN_FORMAT, "Gr\u00fcn;1".getBytes(StandardCharsets.ISO_8859_1));
    String slip = "<?xml version=\"1.0\" encoding=\"utf-16\"?>" + named;
    assertThat(TrackReader.read(bytes(slip)).fixes()).hasSize(2);
    assertThat(TrackReader.read(bytes("\uFEFF" + slip)).fixes()).hasSize(2);
    String unknown = "<?xml version=\"1.0\" encoding=\"x-none\"?>" + named;
    assertThat(TrackReader.read(bytes(unknown)).fixes()).hasSize(2);
  }

  @Test
  void packedFilesAreNotUnpacked() throws IOException {
    ByteArrayOutputStream packed = new ByteArrayOutputStream();
    try (GZIPOutputStream out = new GZIPOutputStream(packed)) {
      for (int i = 0; i < 100; i++) {
        out.write(new byte[1_000_000]);
      }
    }
    refused(TrackFault.BINARY, packed.toByteArray());
    refused(TrackFault.BINARY, new byte[] {'P', 'K', 3, 4, 20, 0, 0, 0});
  }

  @ParameterizedTest
  @ValueSource(strings = {"t06_bike_5laps_32s_gap.gpx", "t06_bike_5laps_32s_gap.tcx"})
  void aFileThatEndsAnywhereIsRefused(String name) {
    byte[] whole = Tracks.bytes(name);
    int end = new String(whole, StandardCharsets.ISO_8859_1).lastIndexOf('>');
    for (int length = 0; length < end; length += 997) {
      byte[] cut = Arrays.copyOf(whole, length);
      assertThatThrownBy(() -> TrackReader.read(cut)).isInstanceOf(Unreadable.class);
    }
  }

  /** Many points that go to and fro over a gate, with a gap behind every third. */
  @Test
  void aTrackThatPassesAGateWithEveryPointIsWorkedOutInSeconds() {
    StringBuilder points = new StringBuilder(GPX);
    long time = 0;
    int count = 200_000;
    for (int i = 0; i < count; i++) {
      time += i % 3 == 0 ? 10_000 : 1;
      points.append(gpx(1, i % 2 == 0 ? 1 : 1.0001, Instant.ofEpochMilli(time).toString()));
    }
    Track track = TrackReader.read(bytes(points + GPX_END));
    Gate gate = new Gate(new Position(0.9999, 1.00005), new Position(1.0001, 1.00005));
    Passes passes = Passes.of(track, List.of(gate));
    assertThat(passes.passes()).hasSize(count - 1);
    assertThat(passes.laps()).hasSize(count / 2 - 1);
    int two = 0;
    for (int lap = 0; lap < passes.laps().size(); lap++) {
      two += passes.mayBeTwo(lap) ? 1 : 0;
    }
    assertThat(two).isLessThan(count);
  }
}
