package blindlap.session;

import blindlap.plan.Profile;
import java.time.Instant;
import java.util.List;

/**
 * The profiles of a notebook: every version of every one. They stand beside the record like the
 * trail book, and versions are only added; a removal is a version, too.
 */
public interface Profiles {
  /**
   * All versions, by the time at which a name was first used, then by number. A name is the same
   * whatever its case.
   */
  List<KeptProfile> all();

  /** How many versions are there whose text does not give its hash, so that they are left out. */
  int damaged();

  /**
   * Keeps a new version. It is dated after every earlier version of its name, by a millisecond if
   * the clock says otherwise, so that the last version is the one that was made last.
   *
   * @return the version that it is
   */
  KeptProfile keep(Profile profile, Instant at);

  /**
   * Adds versions of another notebook with the times at which they were made. One that is here
   * already is left alone.
   *
   * @return how many were new
   */
  int bring(List<KeptProfile> versions);
}
