package blindlap.recording;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

/** Heights are taken where a recorder wrote some that ground can have. */
class HeightsTest {
  private static double[] heights(String file) {
    return TrackReader.read(file.getBytes(StandardCharsets.UTF_8)).fixes().stream()
        .mapToDouble(Fix::height)
        .toArray();
  }

  private static String gpx(String first, String second) {
    return "<gpx version=\"1.1\" creator=\"invented\""
        + " xmlns=\"http://www.topografix.com/GPX/1/1\"><trk><trkseg>"
        + "<trkpt lat=\"11\" lon=\"-38\">%s<time>2026-11-14T08:00:00Z</time></trkpt>"
            .formatted(first)
        + "<trkpt lat=\"11.001\" lon=\"-38\">%s<time>2026-11-14T08:00:01Z</time></trkpt>"
            .formatted(second)
        + "</trkseg></trk></gpx>";
  }

  private static String tcx(String first, String second) {
    String point =
        "<Trackpoint><Time>2026-11-14T08:00:0%dZ</Time><Position><LatitudeDegrees>11.00%d"
            + "</LatitudeDegrees><LongitudeDegrees>-38</LongitudeDegrees></Position>%s</Trackpoint>";
    return "<TrainingCenterDatabase><Activities><Activity><Lap><Track>"
        + point.formatted(0, 0, first)
        + point.formatted(1, 1, second)
        + "</Track></Lap></Activity></Activities></TrainingCenterDatabase>";
  }

  @Test
  void theyAreReadFromBothFormats() {
    assertThat(heights(gpx("<ele>240.5</ele>", "<ele>-3</ele>"))).containsExactly(240.5, -3);
    assertThat(
            heights(
                tcx(
                    "<AltitudeMeters>240.5</AltitudeMeters>",
                    "<AltitudeMeters>-3</AltitudeMeters>")))
        .containsExactly(240.5, -3);
  }

  @Test
  void whatNoGroundHasAndWhatIsMissingIsNoHeight() {
    assertThat(heights(gpx("<ele>99999</ele>", ""))).containsExactly(Double.NaN, Double.NaN);
    assertThat(
            heights(
                tcx(
                    "<AltitudeMeters>-32768</AltitudeMeters>",
                    "<AltitudeMeters>high</AltitudeMeters>")))
        .containsExactly(Double.NaN, Double.NaN);
  }
}
