package blindlap.recording;

import blindlap.fault.Unreadable;
import io.jenetics.jpx.GPX;
import io.jenetics.jpx.Length;
import io.jenetics.jpx.TrackSegment;
import io.jenetics.jpx.WayPoint;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.Optional;

/**
 * Reads a recording: GPX 1.0 and 1.1, and TCX. The text is walked once with nothing outside it
 * opened and its size bounded ({@link TrackWalk}); then a library reads what matters of GPX, and
 * the walk itself TCX, of which a few elements matter.
 */
public final class TrackReader {
  private TrackReader() {}

  /**
   * Reads a file.
   *
   * @param file all its bytes
   * @throws Unreadable with a {@link TrackFault} if it is no recording that can be used
   */
  public static Track read(byte[] file) {
    byte[] bytes = narrow(file);
    if (binary(bytes)) {
      throw new Unreadable(TrackFault.BINARY);
    }
    PlainMarkup.check(bytes);
    TrackWalk walk = new TrackWalk(bytes);
    Optional<GpxCopy> gpx = walk.run();
    if (gpx.isEmpty()) {
      return walk.track();
    }
    try {
      return track(
          GPX.Reader.of(gpx.get().version(), GPX.Reader.Mode.LENIENT)
              .read(new ByteArrayInputStream(gpx.get().bytes())));
    } catch (IOException e) {
      throw new Unreadable(TrackFault.UNKNOWN_FORMAT);
    }
  }

  /** Text in sixteen bits, which begins with a mark or shows by its first letter what it is. */
  private static byte[] narrow(byte[] bytes) {
    if (bytes.length < 2) {
      return bytes;
    }
    int first = (bytes[0] & 0xff) << 8 | bytes[1] & 0xff;
    return switch (first) {
      case 0xfeff, 0xfffe, '<' -> narrow(bytes, StandardCharsets.UTF_16);
      case '<' << 8 -> narrow(bytes, StandardCharsets.UTF_16LE);
      default -> bytes;
    };
  }

  private static byte[] narrow(byte[] bytes, Charset letters) {
    return new String(bytes, letters).getBytes(StandardCharsets.UTF_8);
  }

  /** No text holds a zero byte. */
  private static boolean binary(byte[] bytes) {
    for (int i = 0; i < Math.min(bytes.length, 4096); i++) {
      if (bytes[i] == 0) {
        return true;
      }
    }
    return bytes.length >= 2 && (bytes[0] & 0xff) == 0x1f && (bytes[1] & 0xff) == 0x8b;
  }

  private static Track track(GPX gpx) {
    Track.Builder builder = new Track.Builder();
    for (io.jenetics.jpx.Track track : gpx.getTracks()) {
      for (TrackSegment segment : track.getSegments()) {
        builder.interrupted();
        for (WayPoint point : segment.getPoints()) {
          add(builder, point);
        }
      }
    }
    return builder.track();
  }

  private static void add(Track.Builder builder, WayPoint point) {
    Optional<Instant> time = point.getTime();
    if (time.isEmpty()) {
      builder.without();
      return;
    }
    double spread = point.getHdop().filter(Double::isFinite).orElse(1.0);
    builder.add(
        new Position(point.getLatitude().doubleValue(), point.getLongitude().doubleValue()),
        time.get(),
        Fix.USUAL_RADIUS * Math.max(1, spread),
        point.getElevation().map(Length::doubleValue).orElse(Double.NaN));
  }
}
