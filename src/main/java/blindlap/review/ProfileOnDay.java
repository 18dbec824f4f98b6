package blindlap.review;

import blindlap.plan.Profile;
import blindlap.session.KeptProfile;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A version of a profile as it stands to one day. What was declared before the day was opened stays
 * with the day whatever became of it since; what was made later stands beside it and is marked, for
 * a list that is made after a result can be made to fit it.
 *
 * @param version which
 * @param stands when it was made and what became of it, against the opening of the day
 */
public record ProfileOnDay(KeptProfile version, Stands stands) {
  /** How a version stands to the opening of a day. */
  public enum Stands {
    /** It was made before, and is the last. */
    BEFORE,
    /** It was made before, and changed after. */
    BEFORE_CHANGED_SINCE,
    /** It was made before, and removed after. */
    BEFORE_REMOVED_SINCE,
    /** It was made after, and is the last. */
    AFTER;

    /** True for what was declared before the day was opened. */
    public boolean declared() {
      return this != AFTER;
    }
  }

  /** Number of the version among those of its name. */
  public int number() {
    return version.number();
  }

  /** When it was made. */
  public Instant at() {
    return version.at();
  }

  /**
   * What of all versions belongs beside the finding of a day, in their order.
   *
   * @param all every version of every profile, those of a name by number
   * @param opened when the day was opened; a version of the same moment was made before
   */
  public static List<ProfileOnDay> of(List<KeptProfile> all, Instant opened) {
    List<ProfileOnDay> found = new ArrayList<>();
    byName(all).forEach(versions -> add(versions, opened, found));
    return List.copyOf(found);
  }

  /** The versions of each name, by the time at which a name was first used. */
  static Collection<List<KeptProfile>> byName(List<KeptProfile> all) {
    Map<String, List<KeptProfile>> names = new LinkedHashMap<>();
    all.forEach(
        each ->
            names
                .computeIfAbsent(Profile.key(each.profile().name()), name -> new ArrayList<>())
                .add(each));
    return names.values();
  }

  private static void add(List<KeptProfile> versions, Instant opened, List<ProfileOnDay> found) {
    KeptProfile last = versions.get(versions.size() - 1);
    versions.stream()
        .filter(each -> !each.at().isAfter(opened))
        .reduce((early, late) -> late)
        .filter(declared -> !declared.profile().removed())
        .ifPresent(declared -> found.add(new ProfileOnDay(declared, since(declared, last))));
    if (last.at().isAfter(opened) && !last.profile().removed()) {
      found.add(new ProfileOnDay(last, Stands.AFTER));
    }
  }

  private static Stands since(KeptProfile declared, KeptProfile last) {
    if (declared.equals(last)) {
      return Stands.BEFORE;
    }
    return last.profile().removed() ? Stands.BEFORE_REMOVED_SINCE : Stands.BEFORE_CHANGED_SINCE;
  }
}
