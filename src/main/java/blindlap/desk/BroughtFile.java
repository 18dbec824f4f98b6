package blindlap.desk;

import blindlap.recording.Runs;
import java.util.List;

/**
 * A recording as it is brought in.
 *
 * @param name of the file, without folders
 * @param sha256 of its bytes
 * @param runs rides down the trail
 */
record BroughtFile(String name, String sha256, TimedTrail trail, Runs runs) {
  /** Names of the gates. */
  List<String> gates() {
    return trail.version().gates().stream().map(gate -> gate.name()).toList();
  }

  /** The recorder's clock at the first point, in seconds. */
  double clock() {
    java.time.Instant at = runs.track().at(0);
    return at.getEpochSecond() + at.getNano() / 1e9;
  }
}
