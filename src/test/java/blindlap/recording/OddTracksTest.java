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
import org.junit.jupiter.params.provider.ValueSource;

/** Files that the formats allow, or that converters write, though few recorders do. */
class OddTracksTest {
  private static final String GPX =
      "<gpx version=\"1.0\" creator=\"x\" xmlns=\"http://www.topografix.com/GPX/1/0\""
          + " xmlns:q=\"urn:q\"><trk><trkseg>";
  private static final String GPX_END = "</trkseg></trk></gpx>";

  private static String gpx(double east, String time, String more) {
    return "<trkpt lat=\"1\" lon=\"%s\"><time>%s</time>%s</trkpt>".formatted(east, time, more);
  }

  private static String tcx(double east, int second, String more) {
    return ("<Trackpoint><Time>2026-05-02T12:00:%02dZ</Time><Position><LatitudeDegrees>1"
            + "</LatitudeDegrees><LongitudeDegrees>%s</LongitudeDegrees></Position>%s</Trackpoint>")
        .formatted(second, east, more);
  }

  private static Track read(String text) {
    return TrackReader.read(text.getBytes(StandardCharsets.UTF_8));
  }

  private static Track readTcx(String body) {
    return read("<TrainingCenterDatabase>" + body + "</TrainingCenterDatabase>");
  }

  private static String activity(String points) {
    return "<Activities><Activity><Lap><Track>" + points + "</Track></Lap></Activity></Activities>";
  }

  private static String course(String points) {
    return "<Courses><Course><Track>" + points + "</Track></Course></Courses>";
  }

  /** Fractions of a second may have any number of digits, behind a point or a comma (ISO 8601). */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "2026-05-02T12:00:02.1234567891Z | 2026-05-02T12:00:02.123456789Z",
        "2026-05-02T12:00:02,25Z | 2026-05-02T12:00:02.25Z",
        "2026-05-02T14:00:02+0200 | 2026-05-02T12:00:02Z",
        "2026-05-02T14:00:02+02 | 2026-05-02T12:00:02Z",
        "2026-05-02T02:30:02-09:30 | 2026-05-02T12:00:02Z",
        "2026-05-02 12:00:02 | 2026-05-02T12:00:02Z",
        "2026-05-02 12:00:02.5 UTC | 2026-05-02T12:00:02.5Z",
        "2026-05-02T12:01Z | 2026-05-02T12:01:00Z"
      })
  void timesAreReadAsConvertersWriteThem(String typed, String meant) {
    Track track = read(GPX + gpx(1, "2026-05-02T12:00:01Z", "") + gpx(2, typed, "") + GPX_END);
    assertThat(track.leftOut()).isZero();
    assertThat(track.at(track.fixes().get(1).seconds())).isEqualTo(Instant.parse(meant));
  }

  @Test
  void aValueStandsBehindAnyNumberOfBlanks() {
    String blanks = "\n" + " ".repeat(500);
    Track track =
        read(
            GPX
                + gpx(1, blanks + "2026-05-02T12:00:01Z" + blanks, "")
                + gpx(2, blanks + "<!-- -->2026-05-02T12:00:02Z", "")
                + GPX_END);
    assertThat(track.fixes()).hasSize(2);
    String spread = tcx(1.25, 1, "").replace("1.25", blanks + "1.25" + blanks);
    assertThat(readTcx(activity(spread + tcx(2, 2, ""))).fixes().get(0).at().longitude())
        .isEqualTo(1.25);
  }

  /** GPX 1.0 lets others' elements stand beside its own, whatever they are called. */
  @Test
  void whatOthersCallByTheSameNameIsPassedOver() {
    String more = "<q:time>1999-01-01T00:00:00Z</q:time><q:ele>7</q:ele><q:hdop>9</q:hdop>";
    Track track =
        read(
            GPX
                + gpx(1, "2026-05-02T12:00:01Z", more)
                + gpx(2, "2026-05-02T12:00:02Z", "<ele>5</ele>" + more)
                + GPX_END);
    assertThat(track.at(0)).isEqualTo(Instant.parse("2026-05-02T12:00:01Z"));
    assertThat(track.fixes()).extracting(Fix::height).containsExactly(Double.NaN, 5.0);
    assertThat(track.fixes()).extracting(Fix::radius95).containsOnly(3.0);
    String inside =
        "<Extensions><X xmlns=\"urn:q\"><Time>1999-01-01T00:00:00Z</Time>"
            + "<LatitudeDegrees>9</LatitudeDegrees></X><AltitudeMeters>9</AltitudeMeters>"
            + "</Extensions>";
    Track other = readTcx(activity(tcx(1, 1, inside) + tcx(2, 2, inside)));
    assertThat(other.at(0)).isEqualTo(Instant.parse("2026-05-02T12:00:01Z"));
    assertThat(other.fixes().get(1).at()).isEqualTo(new Position(1, 2));
    assertThat(other.fixes().get(1).height()).isNaN();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "<gpx xmlns=\"urn:mine\"><trk><trkseg>%s</trkseg></trk></gpx>",
        "<gpx><trk xmlns=\"http://www.topografix.com/GPX/1/1\"><trkseg>%s</trkseg></trk></gpx>",
        "<gpx xmlns=\"http://www.topografix.com/GPX/1/1\"><trk><trkseg>%s</trkseg></trk></gpx>",
        "<gpx xmlns=\"http://www.topografix.com/GPX/1/1\">"
            + "<trk xmlns=\"http://www.topografix.com/GPX/1/0\"><trkseg>%s</trkseg></trk></gpx>"
      })
  void editionsAndSpacesOfNamesMayBeMixed(String file) {
    String two = gpx(1, "2026-05-02T12:00:01Z", "") + gpx(2, "2026-05-02T12:00:02Z", "");
    assertThat(read(file.formatted(two)).fixes()).hasSize(2);
  }

  /** A course carries times of somebody who is to be chased; nobody rode them. */
  @Test
  void aCourseCountsOnlyWhereNothingWasRidden() {
    String planned = course(tcx(5, 1, "") + tcx(6, 2, "") + tcx(7, 3, ""));
    String ridden = activity(tcx(1, 1, "") + tcx(2, 2, ""));
    for (String body : new String[] {planned + ridden, ridden + planned}) {
      assertThat(readTcx(body).fixes())
          .extracting(fix -> fix.at().longitude())
          .containsExactly(1.0, 2.0);
    }
    assertThat(readTcx(planned).fixes()).hasSize(3);
  }

  @Test
  void aPointThatSaysNothingOfItsPlaceIsLeftOutAndCounted() {
    String time = "2026-05-02T12:00:0%dZ";
    String first = gpx(1, time.formatted(1), "");
    String last = gpx(2, time.formatted(3), "");
    for (String place : new String[] {"lat=\"1\"", "lon=\"1\"", "", "lat=\"\" lon=\" \""}) {
      String none = "<trkpt " + place + "><time>" + time.formatted(2) + "</time></trkpt>";
      Track track = read(GPX + first + none + last + GPX_END);
      assertThat(track.fixes()).as(place).hasSize(2);
      assertThat(track.leftOut()).isEqualTo(1);
    }
    for (String place :
        new String[] {
          "", "<Position/>", "<Position>\n</Position>", "<Position><LatitudeDegrees/></Position>"
        }) {
      String none = tcx(1, 2, "").replaceAll("<Position>.*</Position>", place);
      Track track = readTcx(activity(tcx(1, 1, "") + none + tcx(2, 3, "")));
      assertThat(track.fixes()).as(place).hasSize(2);
      assertThat(track.leftOut()).isEqualTo(1);
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"UTF-16LE", "UTF-16BE", "UTF-16"})
  void textInSixteenBitsIsReadWithoutItsMarkToo(String letters) {
    String two = gpx(1, "2026-05-02T12:00:01Z", "") + gpx(2, "2026-05-02T12:00:02Z", "");
    byte[] wide = (GPX + two + GPX_END).getBytes(Charset.forName(letters));
    assertThat(TrackReader.read(wide).fixes()).hasSize(2);
  }

  @Test
  void blankLinesInFrontAreForgivenAndLinesAreCountedWithThem() {
    String two = gpx(1, "2026-05-02T12:00:01Z", "") + gpx(2, "2026-05-02T12:00:02Z", "");
    String head = "\uFEFF \n\n<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n";
    assertThat(read(head + GPX + two + GPX_END).fixes()).hasSize(2);
    assertThatThrownBy(() -> read(head + GPX + "</trk>"))
        .isInstanceOfSatisfying(
            Unreadable.class,
            refused -> {
              assertThat(refused.problem().fault()).isEqualTo(TrackFault.NOT_WELL_FORMED);
              assertThat(refused.problem().details()).containsExactly("4");
            });
  }
}
