package blindlap.recording;

/**
 * Metres east and north of a place, on a plane that touches WGS 84 there: by the radii of curvature
 * at its latitude (docs/method.md#gates).
 */
final class GroundPlane {
  private static final double EQUATOR_METRES = 6_378_137;
  private static final double FLATTENING = 1 / 298.257_223_563;

  private final Position origin;
  private final double metresNorth;
  private final double metresEast;

  private GroundPlane(Position origin, double latitude) {
    this.origin = origin;
    double middle = Math.toRadians(latitude);
    double e2 = FLATTENING * (2 - FLATTENING);
    double w2 = 1 - e2 * Math.sin(middle) * Math.sin(middle);
    double normal = EQUATOR_METRES / Math.sqrt(w2);
    this.metresNorth = Math.toRadians(normal * (1 - e2) / w2);
    this.metresEast = Math.toRadians(normal * Math.cos(middle));
  }

  /** The plane about a place. */
  static GroundPlane about(Position origin) {
    return new GroundPlane(origin, origin.latitude());
  }

  /** A plane measured from a place, its radii those of a latitude near it. */
  static GroundPlane from(Position origin, double latitude) {
    return new GroundPlane(origin, latitude);
  }

  double east(Position at) {
    return origin.eastTo(at) * metresEast;
  }

  double north(Position at) {
    return (at.latitude() - origin.latitude()) * metresNorth;
  }

  /** Metres east from one place to the next, the short way round, also behind the globe. */
  double east(Position from, Position to) {
    return from.eastTo(to) * metresEast;
  }

  Position position(double metresToEast, double metresToNorth) {
    double longitude = origin.longitude() + metresToEast / metresEast;
    return new Position(
        origin.latitude() + metresToNorth / metresNorth,
        longitude > 360 ? longitude - 360 : longitude < -180 ? longitude + 360 : longitude);
  }
}
