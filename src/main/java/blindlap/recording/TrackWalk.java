package blindlap.recording;

import blindlap.fault.StatsException;
import blindlap.fault.Unreadable;
import java.io.ByteArrayInputStream;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.Optional;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import org.jspecify.annotations.Nullable;

/**
 * Walks the elements of a recording once: checks that it is well-formed, opens nothing outside it,
 * holds no more points than may be, and no place off the globe; and collects the points of TCX.
 */
final class TrackWalk {
  /** Ten points a second for more than half a day. */
  static final int MOST_POINTS = 500_000;

  private static final int DEEPEST = 50;

  private final byte[] bytes;
  private final Track.Builder builder = new Track.Builder();
  private final StringBuilder text = new StringBuilder();
  private @Nullable Double latitude;
  private @Nullable Double longitude;
  private @Nullable Instant time;
  private double height;
  private int points;
  private boolean rooted;
  private boolean tcx;
  private boolean inPoint;

  TrackWalk(byte[] bytes) {
    this.bytes = bytes;
  }

  /**
   * @return the version that a GPX file states; empty for TCX, whose points are then collected
   * @throws Unreadable if it is neither, or breaks a bound
   */
  Optional<String> run() {
    XMLInputFactory factory = XMLInputFactory.newFactory();
    factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
    factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
    factory.setProperty(XMLInputFactory.IS_REPLACING_ENTITY_REFERENCES, false);
    try {
      XMLStreamReader reader = factory.createXMLStreamReader(new ByteArrayInputStream(bytes));
      try {
        return run(reader);
      } finally {
        reader.close();
      }
    } catch (XMLStreamException e) {
      if (!rooted) {
        throw new Unreadable(TrackFault.UNKNOWN_FORMAT);
      }
      int line = e.getLocation() == null ? 1 : Math.max(1, e.getLocation().getLineNumber());
      throw new Unreadable(TrackFault.NOT_WELL_FORMED, line);
    }
  }

  private Optional<String> run(XMLStreamReader reader) throws XMLStreamException {
    Optional<String> version = Optional.empty();
    int depth = 0;
    while (reader.hasNext()) {
      switch (reader.next()) {
        case XMLStreamConstants.DTD, XMLStreamConstants.ENTITY_REFERENCE ->
            throw new Unreadable(TrackFault.NOT_ALLOWED);
        case XMLStreamConstants.START_ELEMENT -> {
          if (++depth > DEEPEST) {
            throw new Unreadable(TrackFault.NOT_ALLOWED);
          }
          if (!rooted) {
            rooted = true;
            version = root(reader);
          }
          start(reader);
        }
        case XMLStreamConstants.CHARACTERS, XMLStreamConstants.CDATA -> {
          if (inPoint) {
            text.append(reader.getTextCharacters(), reader.getTextStart(), reader.getTextLength());
          }
        }
        case XMLStreamConstants.END_ELEMENT -> {
          depth--;
          end(reader.getLocalName());
        }
        default -> {
          // Comments and the like say nothing of where anyone was.
        }
      }
    }
    return version;
  }

  private Optional<String> root(XMLStreamReader reader) {
    tcx = reader.getLocalName().equals("TrainingCenterDatabase");
    if (tcx) {
      return Optional.empty();
    }
    if (!reader.getLocalName().equals("gpx")) {
      throw new Unreadable(TrackFault.UNKNOWN_FORMAT);
    }
    String version = reader.getAttributeValue(null, "version");
    return Optional.of(version == null ? "1.1" : version.strip());
  }

  private void start(XMLStreamReader reader) {
    String name = reader.getLocalName();
    if (name.equals(tcx ? "Trackpoint" : "trkpt")) {
      if (++points > MOST_POINTS) {
        throw new Unreadable(TrackFault.TOO_MANY_POINTS, MOST_POINTS);
      }
      inPoint = tcx;
      latitude = null;
      longitude = null;
      time = null;
      height = Double.NaN;
      if (!tcx) {
        position(reader.getAttributeValue(null, "lat"), reader.getAttributeValue(null, "lon"));
      }
    }
    text.setLength(0);
  }

  private void position(@Nullable String north, @Nullable String east) {
    new Place(number(north), number(east)).check(points);
  }

  private void end(String name) {
    if (!inPoint) {
      return;
    }
    switch (name) {
      case "Time" -> time = instant(text.toString().strip());
      case "LatitudeDegrees" -> latitude = number(text.toString());
      case "LongitudeDegrees" -> longitude = number(text.toString());
      case "AltitudeMeters" -> height = height(text.toString().strip());
      case "Trackpoint" -> {
        inPoint = false;
        if (latitude == null || longitude == null || time == null) {
          builder.without();
        } else {
          builder.add(new Place(latitude, longitude).check(points), time, Fix.USUAL_RADIUS, height);
        }
      }
      default -> {
        // Heart rate and the like.
      }
    }
    text.setLength(0);
  }

  private double number(@Nullable String typed) {
    try {
      return typed == null ? Double.NaN : Double.parseDouble(typed.strip());
    } catch (NumberFormatException e) {
      throw new Unreadable(TrackFault.NO_PLACE, points, typed.strip());
    }
  }

  private static double height(String typed) {
    try {
      return Double.parseDouble(typed);
    } catch (NumberFormatException e) {
      return Double.NaN;
    }
  }

  private static @Nullable Instant instant(String typed) {
    try {
      return OffsetDateTime.parse(typed).toInstant();
    } catch (DateTimeException e) {
      return null;
    }
  }

  /** The points of a TCX file. */
  Track track() {
    return builder.track();
  }

  private record Place(double north, double east) {
    Position check(int point) {
      try {
        return new Position(north, east);
      } catch (StatsException e) {
        throw new Unreadable(TrackFault.NO_PLACE, point, north + ", " + east);
      }
    }
  }
}
