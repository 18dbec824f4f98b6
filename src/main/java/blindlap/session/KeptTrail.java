package blindlap.session;

import blindlap.plan.Trail;
import blindlap.plan.TrailVersion;

/**
 * A version of a trail as the trail book has it.
 *
 * @param title which
 * @param trail line and gates
 * @param text its text (docs/trail-file.md), whose SHA-256 is the title's
 */
public record KeptTrail(TrailTitle title, Trail trail, String text) {
  /** What a plan keeps of it. */
  public TrailVersion version() {
    return trail.version(title.number(), title.sha256());
  }
}
