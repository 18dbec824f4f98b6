package blindlap.sample;

import blindlap.recording.Fix;
import blindlap.recording.Position;
import blindlap.recording.Track;
import blindlap.recording.TrackReader;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;

/**
 * What an invented recorder wrote down, and the two formats in which recorders hand it out.
 *
 * @param morning what its seconds count from
 * @param points in order
 * @param radius95 metres; told in GPX as {@code hdop} where it is above what is usual
 */
public record InventedRecording(Instant morning, List<Point> points, double radius95) {
  /**
   * A point.
   *
   * @param seconds on the recorder's clock
   * @param height metres above the sea
   */
  public record Point(double seconds, Position at, double height) {}

  public InventedRecording {
    points = List.copyOf(points);
  }

  /** GPX 1.1, one segment. */
  public String gpx() {
    StringBuilder text =
        new StringBuilder(
            "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
                + "<gpx version=\"1.1\" creator=\"invented\""
                + " xmlns=\"http://www.topografix.com/GPX/1/1\"><trk><trkseg>\n");
    double spread = radius95 / Fix.USUAL_RADIUS;
    for (Point point : points) {
      text.append("<trkpt lat=\"").append(degrees(point.at().latitude()));
      text.append("\" lon=\"").append(degrees(point.at().longitude()));
      text.append("\"><ele>").append(fixed(point.height(), 1));
      text.append("</ele><time>").append(time(point)).append("</time>");
      if (spread > 1) {
        text.append("<hdop>").append(fixed(spread, 2)).append("</hdop>");
      }
      text.append("</trkpt>\n");
    }
    return text.append("</trkseg></trk></gpx>\n").toString();
  }

  /**
   * TCX, one lap, since what laps are is a matter of the recorder's buttons; without the name of
   * its schema, which nobody who reads it here asks for.
   */
  public String tcx() {
    StringBuilder text =
        new StringBuilder(
            "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<TrainingCenterDatabase>\n"
                + "<Activities><Activity Sport=\"Biking\"><Id>");
    text.append(morning).append("</Id><Lap StartTime=\"").append(morning).append("\"><Track>\n");
    for (Point point : points) {
      text.append("<Trackpoint><Time>").append(time(point));
      text.append("</Time><Position><LatitudeDegrees>").append(degrees(point.at().latitude()));
      text.append("</LatitudeDegrees><LongitudeDegrees>").append(degrees(point.at().longitude()));
      text.append("</LongitudeDegrees></Position><AltitudeMeters>");
      text.append(fixed(point.height(), 1)).append("</AltitudeMeters></Trackpoint>\n");
    }
    return text.append("</Track></Lap></Activity></Activities></TrainingCenterDatabase>\n")
        .toString();
  }

  /** The recording as it is read from its GPX. */
  public Track track() {
    return TrackReader.read(gpx().getBytes(StandardCharsets.UTF_8));
  }

  private Instant time(Point point) {
    return morning.plusMillis(Math.round(point.seconds() * 1000));
  }

  /** To a hundred-millionth of a degree, about a millimetre. */
  private static String degrees(double value) {
    return fixed(value, 8);
  }

  private static String fixed(double value, int digits) {
    return BigDecimal.valueOf(value).setScale(digits, RoundingMode.HALF_EVEN).toPlainString();
  }
}
