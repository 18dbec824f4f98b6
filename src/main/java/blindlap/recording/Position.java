package blindlap.recording;

import blindlap.fault.StatsException;
import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicData;
import net.sf.geographiclib.GeodesicMask;

/**
 * A place on the WGS 84 ellipsoid.
 *
 * @param latitude degrees north, −90 to 90
 * @param longitude degrees east, −180 to 360, so that both habits of writing west are read
 */
public record Position(double latitude, double longitude) {
  /** The shortest way to another place. */
  public record Way(double metres, double azimuth) {}

  /**
   * Checks the numbers.
   *
   * @throws StatsException naming {@code latitude} or {@code longitude}
   */
  public Position {
    refuseOutside("latitude", latitude, -90, 90);
    refuseOutside("longitude", longitude, -180, 360);
  }

  private static void refuseOutside(String what, double value, double low, double high) {
    if (!(value >= low && value <= high)) {
      throw new StatsException(
          what,
          "must lie between " + (int) low + " and " + (int) high + " degrees, not " + value + ".");
    }
  }

  /**
   * The geodesic to another place (Karney 2013, J. Geodesy 87:43, by its author's library): length
   * in metres, and azimuth here, clockwise from north, 0 ≤ azimuth &lt; 360.
   */
  public Way to(Position other) {
    GeodesicData way =
        Geodesic.WGS84.Inverse(
            latitude,
            longitude,
            other.latitude,
            other.longitude,
            GeodesicMask.DISTANCE | GeodesicMask.AZIMUTH);
    double azimuth = way.azi1 < 0 ? way.azi1 + 360 : way.azi1;
    return new Way(way.s12, azimuth >= 360 ? 0 : azimuth + 0.0);
  }

  /** Longitude of another place less that of this one, the short way round: −180 to 180. */
  double eastTo(Position other) {
    return Math.IEEEremainder(other.longitude - longitude, 360);
  }
}
