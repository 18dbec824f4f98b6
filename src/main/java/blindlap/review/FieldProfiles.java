package blindlap.review;

import blindlap.plan.Profile;
import blindlap.session.KeptProfile;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Profiles beside a field, with what each day found of the measures that they name.
 *
 * @param profiles the last version of each that is not removed, in the order in which their names
 *     were first used
 * @param days those that enter the field, in its order
 */
public record FieldProfiles(List<Version> profiles, List<Opened> days) {
  /**
   * A profile.
   *
   * @param after how many of the days had been opened when this version was made: a list that is
   *     made after a result can be made to fit it
   */
  public record Version(KeptProfile kept, int after) {
    /** Number of the version among those of its name. */
    public int number() {
      return kept.number();
    }

    /** When it was made. */
    public Instant at() {
      return kept.at();
    }
  }

  /** A day of the field, when it was opened, and what it found. */
  public record Opened(FieldFinding.Day day, Instant at, Finding finding) {}

  public FieldProfiles {
    profiles = List.copyOf(profiles);
    days = List.copyOf(days);
  }

  /**
   * What of all versions belongs beside a field.
   *
   * @param all every version of every profile, those of a name by number
   */
  public static FieldProfiles of(List<KeptProfile> all, List<Opened> days) {
    return new FieldProfiles(
        last(all).stream()
            .map(kept -> new Version(kept, (int) days.stream().filter(opened(kept)).count()))
            .toList(),
        days);
  }

  /** The last version of each that is not removed, in the order in which their names were used. */
  public static List<KeptProfile> last(List<KeptProfile> all) {
    Map<String, KeptProfile> last = new LinkedHashMap<>();
    all.forEach(each -> last.put(Profile.key(each.profile().name()), each));
    return last.values().stream().filter(kept -> !kept.profile().removed()).toList();
  }

  // One of the same moment was made before, as beside the finding of a day.
  private static java.util.function.Predicate<Opened> opened(KeptProfile kept) {
    return day -> kept.at().isAfter(day.at());
  }
}
