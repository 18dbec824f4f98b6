package blindlap.recording;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Objects;

/** Real tracks of the tests; sources and licences stand beside them. */
public final class Tracks {
  private Tracks() {}

  /** The bytes of a file that begins so. */
  public static byte[] bytes(String name) {
    try (InputStream in =
        Objects.requireNonNull(Tracks.class.getResourceAsStream("/blindlap/recordings/" + name))) {
      return in.readAllBytes();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static Track read(String name) {
    return TrackReader.read(bytes(name));
  }

  /** A gate across a course. */
  static Gate gate(double latitude, double longitude, double bearing, double halfWidth) {
    Position[] ends = ends(latitude, longitude, bearing, halfWidth);
    return new Gate(ends[0], ends[1]);
  }

  /** Its ends: to the left and to the right of whoever rides along. */
  public static Position[] ends(
      double latitude, double longitude, double bearing, double halfWidth) {
    Position[] ends = new Position[2];
    for (int i = 0; i < 2; i++) {
      double towards = Math.toRadians(bearing + (i == 0 ? -90 : 90));
      double metresNorth = 111_132.95 - 559.85 * Math.cos(2 * Math.toRadians(latitude));
      double metresEast = 111_412.88 * Math.cos(Math.toRadians(latitude));
      ends[i] =
          new Position(
              latitude + halfWidth * Math.cos(towards) / metresNorth,
              longitude + halfWidth * Math.sin(towards) / metresEast);
    }
    return ends;
  }
}
