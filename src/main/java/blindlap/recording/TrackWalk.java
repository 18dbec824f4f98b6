package blindlap.recording;

import blindlap.fault.StatsException;
import blindlap.fault.Unreadable;
import java.time.Instant;
import java.util.HashSet;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.regex.Pattern;
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

  private static final int DEEPEST = 50;

  /** Readers of XML keep every name that they meet. */
  private static final int MOST_NAMES = 10_000;

  /** No time and no number is longer. */
  private static final int LONGEST_VALUE = 100;

  private static final int LONGEST_SHOWN = 30;

  /** Of a recorder that sees next to nothing of the sky. */
  private static final double WORST_SPREAD = 1000;

  /** Files put together from several may hold elements of another edition. */
  private static final Pattern OURS = Pattern.compile("/GPX/\\d|/TrainingCenterDatabase/");

  private static final int TRACK = 2;
  private static final int SEGMENT = 3;
  private static final int POINT = 4;

  private final byte[] bytes;
  private final StringBuilder text = new StringBuilder();
  private final String[] path = new String[DEEPEST + 1];
  private final Set<String> names = new HashSet<>();
  private Track.Builder builder = new Track.Builder();
  private String space = "";
  private @Nullable GpxCopy copy;
  private @Nullable Double latitude;
  private @Nullable Double longitude;
  private @Nullable Instant time;
  private double height;
  private int depth;
  private int points;
  private boolean rooted;

  /** How deep the point of TCX lies that is being read; 0 outside one. */
  private int pointAt;

  /** True once a point of TCX was ridden, not planned. */
  private boolean ridden;

  /** True inside a point of GPX that says nothing of where it is. */
  private boolean placeless;

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
      throw new Unreadable(TrackFault.NOT_WELL_FORMED, Lettering.linesInFront(bytes) + line);
    }
  }

  private void run(XMLStreamReader reader) throws XMLStreamException {
    while (reader.hasNext()) {
      switch (reader.next()) {
        case XMLStreamConstants.DTD, XMLStreamConstants.ENTITY_REFERENCE ->
            throw new Unreadable(TrackFault.NOT_ALLOWED);
        case XMLStreamConstants.START_ELEMENT -> start(reader);
        case XMLStreamConstants.CHARACTERS, XMLStreamConstants.CDATA ->
            collect(reader.getTextCharacters(), reader.getTextStart(), reader.getTextLength());
        case XMLStreamConstants.END_ELEMENT -> {
          if (copy == null) {
            endOfTcx(path[depth]);
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

  /** However many blanks stand in front of a value, they leave room for it. */
  private void collect(char[] letters, int start, int length) {
    int from = start;
    int end = start + length;
    while (text.length() == 0 && from < end && Character.isWhitespace(letters[from])) {
      from++;
    }
    text.append(letters, from, Math.min(LONGEST_VALUE - text.length(), end - from));
  }

  /** The name of an element; of one of somebody else's, in their namespace, none. */
  private String name(XMLStreamReader reader) {
    String of = reader.getNamespaceURI();
    boolean ours =
        of == null || of.isEmpty() || of.equals(space) || OURS.matcher(of).find() || depth == 1;
    return ours ? reader.getLocalName() : "";
  }

  private void start(XMLStreamReader reader) {
    names.add(reader.getLocalName());
    if (++depth > DEEPEST || names.size() > MOST_NAMES) {
      throw new Unreadable(TrackFault.NOT_ALLOWED);
    }
    path[depth] = name(reader);
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
    space = reader.getNamespaceURI() == null ? "" : reader.getNamespaceURI();
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
      Double north = number(reader.getAttributeValue(null, "lat"));
      Double east = number(reader.getAttributeValue(null, "lon"));
      placeless = north == null || east == null;
      gpx.point(
          north == null || east == null
              ? new Position(0, 0)
              : new Place(north, east).check(points));
    } else if (on(TRACK, "trk") || on(SEGMENT, "trkseg")) {
      gpx.open(path[depth]);
    }
  }

  private void endOfGpx(GpxCopy gpx) {
    if (on(POINT, "trkpt") || on(SEGMENT, "trkseg") || on(TRACK, "trk")) {
      gpx.close(path[depth]);
    } else if (on(POINT + 1, "time")) {
      Instant at = WrittenTime.read(text.toString().strip());
      // Without a time a point is left out, as one without a place has to be.
      if (at != null && !placeless) {
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

  /** A course is planned: where a file holds what was ridden as well, that alone counts. */
  private void startOfTcx() {
    if (!path[depth].equals("Trackpoint") || pointAt > 0) {
      return;
    }
    counted();
    boolean planned = path[2].equals("Courses");
    if (planned && ridden) {
      return;
    }
    if (!planned && !ridden) {
      ridden = true;
      builder = new Track.Builder();
    }
    pointAt = depth;
    latitude = null;
    longitude = null;
    time = null;
    height = Double.NaN;
  }

  /** What extensions inside a point call by the same names is something else. */
  private void endOfTcx(String name) {
    if (pointAt == 0) {
      return;
    }
    boolean place = depth == pointAt + 2 && path[depth - 1].equals("Position");
    if (place && name.equals("LatitudeDegrees")) {
      latitude = number(text.toString());
    } else if (place && name.equals("LongitudeDegrees")) {
      longitude = number(text.toString());
    } else if (depth == pointAt + 1 && name.equals("Time")) {
      time = WrittenTime.read(text.toString().strip());
    } else if (depth == pointAt + 1 && name.equals("AltitudeMeters")) {
      height = height(text.toString().strip());
    } else if (depth == pointAt) {
      pointAt = 0;
      if (latitude == null || longitude == null || time == null) {
        builder.without();
      } else {
        builder.add(new Place(latitude, longitude).check(points), time, Fix.USUAL_RADIUS, height);
      }
    }
  }

  /** Null where nothing stands. */
  private @Nullable Double number(@Nullable String typed) {
    if (typed == null || typed.isBlank()) {
      return null;
    }
    try {
      return Double.valueOf(typed.strip());
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
