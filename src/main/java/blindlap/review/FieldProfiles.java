package blindlap.review;

import blindlap.session.KeptProfile;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;

/**
 * Profiles beside a field, with what each day found of the measures that they name.
 *
 * @param profiles every version that stood when a day was opened, and the last of each name unless
 *     it removed it; in the order in which the names were first used, then by number
 * @param days those that enter the field, in its order
 */
public record FieldProfiles(List<Version> profiles, List<Opened> days) {
  /** What became of a version since. */
  public enum Since {
    /** It is the last. */
    STANDS,
    CHANGED,
    REMOVED
  }

  /**
   * A version of a profile. One that stood when a day was opened stays whatever became of it, for
   * the list of whoever dislikes a result could be taken away.
   *
   * @param after how many of the days had been opened when it was made: a list that is made after a
   *     result can be made to fit it
   */
  public record Version(KeptProfile kept, int after, Since since) {
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
    List<Version> found = new ArrayList<>();
    ProfileOnDay.byName(all).forEach(versions -> add(versions, days, found));
    return new FieldProfiles(found, days);
  }

  private static void add(List<KeptProfile> versions, List<Opened> days, List<Version> found) {
    KeptProfile last = versions.get(versions.size() - 1);
    for (int i = 0; i < versions.size(); i++) {
      KeptProfile kept = versions.get(i);
      int after = (int) days.stream().filter(opened(kept)).count();
      int gone =
          kept.equals(last)
              ? days.size()
              : (int) days.stream().filter(opened(versions.get(i + 1))).count();
      if (!kept.profile().removed() && (kept.equals(last) || gone > after)) {
        found.add(new Version(kept, after, since(kept, last)));
      }
    }
  }

  private static Since since(KeptProfile kept, KeptProfile last) {
    return kept.equals(last)
        ? Since.STANDS
        : last.profile().removed() ? Since.REMOVED : Since.CHANGED;
  }

  // One of the same moment was made before, as beside the finding of a day.
  private static Predicate<Opened> opened(KeptProfile kept) {
    return day -> kept.at().isAfter(day.at());
  }
}
