package blindlap.session;

import blindlap.plan.Trail;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * The trail book of a notebook: every version of every trail. It stands beside the record like
 * drafts, but versions are only added: a changed trail is a new version.
 */
public interface Trails {
  /** All versions without their lines, by name and number. */
  List<TrailTitle> titles();

  /**
   * Keeps a trail. If a version of this name has the same text, that is the version.
   *
   * @return the version that it is
   */
  KeptTrail keep(Trail trail, Instant at);

  /** A version by name and number. */
  Optional<KeptTrail> find(String name, int number);

  /** A version by what its text is known by, as plans and recordings name it. */
  Optional<KeptTrail> find(String sha256);

  /** The version with the highest number of a name. */
  default Optional<KeptTrail> latest(String name) {
    return titles().stream()
        .filter(title -> title.name().equals(name))
        .reduce((early, late) -> late)
        .flatMap(title -> find(name, title.number()));
  }
}
