package blindlap.recording;

import blindlap.fault.StatsException;
import blindlap.fault.Unreadable;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.time.format.ResolverStyle;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import org.jspecify.annotations.Nullable;

/**
 * Walks the elements of a recording once: checks that it is well-formed, opens nothing outside it,
 * holds no more points than may be, and no place off the globe; collects the points of TCX, and
 * copies of GPX what matters.
 */
final class TrackWalk {
  /** Ten points a second for more than half a day. */
  static final int MOST_POINTS = 500_000;

  /** A time without a zone is one of UTC, as GPX has it: at most all are off by one constant. */
  private static final DateTimeFormatter ANY_ZONE =
      new DateTimeFormatterBuilder()
          .parseCaseInsensitive()
          .append(DateTimeFormatter.ISO_LOCAL_DATE_TIME)
          .optionalStart()
          .appendOffsetId()
          .optionalEnd()
          .toFormatter(Locale.ROOT)
          .withZone(ZoneOffset.UTC)
          .withResolverStyle(ResolverStyle.STRICT);

  private static final int DEEPEST = 50;

  /** No time and no number is longer. */
  private static final int LONGEST_VALUE = 100;

  private static final int LONGEST_SHOWN = 30;

  /** Of a recorder that sees next to nothing of the sky. */
  private static final double WORST_SPREAD = 1000;

  private static final int TRACK = 2;
  private static final int SEGMENT = 3;
  private static final int POINT = 4;

  private final byte[] bytes;
  private final Track.Builder builder = new Track.Builder();
  private final StringBuilder text = new StringBuilder();
  private final String[] path = new String[DEEPEST + 1];
  private @Nullable GpxCopy copy;
  private @Nullable Double latitude;
  private @Nullable Double longitude;
  private @Nullable Instant time;
  private double height;
  private int depth;
  private int points;
  private boolean rooted;
  private boolean inPoint;

  TrackWalk(byte[] bytes) {
    this.bytes = bytes;
  }

  /**
   * @return what matters of a GPX file; empty for TCX, whose points are then collected
   * @throws Unreadable if it is neither, or breaks a bound
   */
  Optional<GpxCopy> run() {
    XMLInputFactory factory = XMLInputFactory.newFactory();
    factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
    factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
    factory.setProperty(XMLInputFactory.IS_REPLACING_ENTITY_REFERENCES, false);
    try {
      XMLStreamReader reader = factory.createXMLStreamReader(Lettering.reader(bytes));
      try {
        run(reader);
        return Optional.ofNullable(copy);
      } finally {
        reader.close();
      }
    } catch (XMLStreamException e) {
      OptionalInt garbled = Lettering.garbled(bytes);
      if (garbled.isPresent()) {
        throw new Unreadable(TrackFault.NOT_WELL_FORMED, garbled.getAsInt());
      }
      if (!rooted) {
        throw new Unreadable(TrackFault.UNKNOWN_FORMAT);
      }
      int line = e.getLocation() == null ? 1 : Math.max(1, e.getLocation().getLineNumber());
      throw new Unreadable(TrackFault.NOT_WELL_FORMED, line);
    }
  }

  private void run(XMLStreamReader reader) throws XMLStreamException {
    while (reader.hasNext()) {
      switch (reader.next()) {
        case XMLStreamConstants.DTD, XMLStreamConstants.ENTITY_REFERENCE ->
            throw new Unreadable(TrackFault.NOT_ALLOWED);
        case XMLStreamConstants.START_ELEMENT -> start(reader);
        case XMLStreamConstants.CHARACTERS, XMLStreamConstants.CDATA -> {
          int left = LONGEST_VALUE - text.length();
          text.append(
              reader.getTextCharacters(),
              reader.getTextStart(),
              Math.min(left, reader.getTextLength()));
        }
        case XMLStreamConstants.END_ELEMENT -> {
          if (copy == null) {
            endOfTcx(reader.getLocalName());
          } else {
            endOfGpx(copy);
          }
          depth--;
          text.setLength(0);
        }
        default -> {
          // Comments and the like say nothing of where anyone was.
        }
      }
    }
  }

  private void start(XMLStreamReader reader) {
    if (++depth > DEEPEST) {
      throw new Unreadable(TrackFault.NOT_ALLOWED);
    }
    path[depth] = reader.getLocalName();
    text.setLength(0);
    if (depth == 1) {
      root(reader);
    } else if (copy == null) {
      startOfTcx();
    } else {
      startOfGpx(copy, reader);
    }
  }

  private void root(XMLStreamReader reader) {
    rooted = true;
    if (path[1].equals("gpx")) {
      String version = reader.getAttributeValue(null, "version");
      copy = new GpxCopy(version == null ? "1.1" : version.strip());
    } else if (!path[1].equals("TrainingCenterDatabase")) {
      throw new Unreadable(TrackFault.UNKNOWN_FORMAT);
    }
  }

  private void counted() {
    if (++points > MOST_POINTS) {
      throw new Unreadable(TrackFault.TOO_MANY_POINTS, MOST_POINTS);
    }
  }

  /** Only a point that stands where points stand is one: whatever extensions hold is none. */
  private void startOfGpx(GpxCopy gpx, XMLStreamReader reader) {
    if (on(POINT, "trkpt")) {
      counted();
      gpx.point(
          new Place(
                  number(reader.getAttributeValue(null, "lat")),
                  number(reader.getAttributeValue(null, "lon")))
              .check(points));
    } else if (on(TRACK, "trk") || on(SEGMENT, "trkseg")) {
      gpx.open(path[depth]);
    }
  }

  private void endOfGpx(GpxCopy gpx) {
    if (on(POINT, "trkpt") || on(SEGMENT, "trkseg") || on(TRACK, "trk")) {
      gpx.close(path[depth]);
    } else if (on(POINT + 1, "time")) {
      Instant at = instant(text.toString().strip());
      if (at != null) {
        gpx.element("time", at.toString());
      }
    } else if (on(POINT + 1, "ele")) {
      double above = height(text.toString().strip());
      if (Double.isFinite(above)) {
        gpx.element("ele", Double.toString(above));
      }
    } else if (on(POINT + 1, "hdop")) {
      spread(gpx, text.toString().strip());
    }
  }

  /** What is no number says nothing; what is beyond the worst is the worst. */
  private static void spread(GpxCopy gpx, String typed) {
    try {
      double spread = Double.parseDouble(typed);
      if (spread > 0) {
        gpx.element("hdop", Double.toString(Math.min(spread, WORST_SPREAD)));
      }
    } catch (NumberFormatException e) {
      // As if it were not there: a place is then taken to be as far off as usual.
    }
  }

  private boolean on(int level, String name) {
    return depth == level
        && path[level].equals(name)
        && (level <= TRACK || path[TRACK].equals("trk"))
        && (level <= SEGMENT || path[SEGMENT].equals("trkseg"))
        && (level <= POINT || path[POINT].equals("trkpt"));
  }

  private void startOfTcx() {
    if (path[depth].equals("Trackpoint")) {
      counted();
      inPoint = true;
      latitude = null;
      longitude = null;
      time = null;
      height = Double.NaN;
    }
  }

  private void endOfTcx(String name) {
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
  }

  private double number(@Nullable String typed) {
    try {
      return typed == null ? Double.NaN : Double.parseDouble(typed.strip());
    } catch (NumberFormatException e) {
      throw new Unreadable(TrackFault.NO_PLACE, points, shown(typed.strip()));
    }
  }

  private static double height(String typed) {
    try {
      return Double.parseDouble(typed);
    } catch (NumberFormatException e) {
      return Double.NaN;
    }
  }

  private static String shown(String typed) {
    return typed.length() <= LONGEST_SHOWN ? typed : typed.substring(0, LONGEST_SHOWN) + "\u2026";
  }

  private static @Nullable Instant instant(String typed) {
    try {
      return ANY_ZONE.parse(typed, Instant::from);
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
