package blindlap.desk;

import blindlap.fault.Problem;
import blindlap.fault.TypedText;
import blindlap.plan.Profile;
import blindlap.session.KeptProfile;
import blindlap.session.Profiles;
import java.time.Clock;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** Who should look at what: profiles made, changed, removed. Every change is a version. */
public final class ProfileBook {
  private final Profiles profiles;
  private final Clock clock;

  ProfileBook(Profiles profiles, Clock clock) {
    this.profiles = profiles;
    this.clock = clock;
  }

  /** What became of a wish. */
  public sealed interface Result {
    /**
     * It is as wished.
     *
     * @param version the last version now
     * @param fresh false if it was so already, so that nothing was written
     */
    record Kept(KeptProfile version, boolean fresh) implements Result {}

    /** It was not granted, and nothing was written. */
    record Refused(Problem why) implements Result {}
  }

  /** The last version of every profile that is not removed, in the order of first making. */
  public List<KeptProfile> profiles() {
    List<KeptProfile> all = profiles.all();
    return all.stream()
        .filter(each -> !each.profile().removed())
        .filter(each -> last(all, each.profile().name()).filter(each::equals).isPresent())
        .toList();
  }

  /** Every version of every profile, removals too. */
  public List<KeptProfile> all() {
    return profiles.all();
  }

  /** The versions of a profile, by number; none if there is no such name. */
  public List<KeptProfile> versions(String name) {
    return profiles.all().stream().filter(each -> each.profile().isCalled(name)).toList();
  }

  /** How many versions were changed by another program and are left out. */
  public int damaged() {
    return profiles.damaged();
  }

  private static Optional<KeptProfile> last(List<KeptProfile> all, String name) {
    return all.stream().filter(each -> each.profile().isCalled(name)).reduce((early, late) -> late);
  }

  /** Makes or changes a profile as typed: "NAME: measure, measure". */
  public Result keep(String typed) {
    int colon = typed.indexOf(':');
    return colon < 0
        ? refused(ProfileFault.NO_COLON, typed.strip())
        : keep(typed.substring(0, colon), typed.substring(colon + 1));
  }

  /**
   * Makes or changes a profile.
   *
   * @param name the kind of rider
   * @param measures names with commas between; where a semicolon stands, semicolons part them and a
   *     comma belongs to a name
   */
  public Result keep(String name, String measures) {
    List<String> each =
        Arrays.stream(measures.split(measures.contains(";") ? ";" : ","))
            .map(String::strip)
            .filter(measure -> !measure.isEmpty())
            .toList();
    Profile profile = new Profile(name.strip(), each);
    Optional<Problem> wrong = wrong(profile);
    if (wrong.isPresent()) {
      return new Result.Refused(wrong.get());
    }
    Optional<KeptProfile> last = last(profiles.all(), name);
    return last.filter(now -> now.profile().equals(profile)).isPresent()
        ? new Result.Kept(last.get(), false)
        : new Result.Kept(profiles.keep(profile, clock.instant()), true);
  }

  /** Removes a profile, by a version that says so. */
  public Result remove(String name) {
    List<KeptProfile> now = profiles();
    Optional<KeptProfile> known = last(now, name);
    if (known.isPresent()) {
      Profile gone = Profile.removed(known.get().profile().name());
      return new Result.Kept(profiles.keep(gone, clock.instant()), true);
    }
    return now.isEmpty()
        ? refused(ProfileFault.NONE, name.strip())
        : refused(
            ProfileFault.NO_SUCH,
            name.strip(),
            now.stream().map(each -> each.profile().name()).collect(Collectors.joining(", ")));
  }

  private static Result refused(ProfileFault fault, Object... details) {
    return new Result.Refused(Problem.of(fault, "", details));
  }

  private static Optional<Problem> wrong(Profile profile) {
    String name = profile.name();
    if (name.isEmpty()) {
      return Optional.of(Problem.of(ProfileFault.NO_NAME, ""));
    }
    if (name.contains(":")) {
      return Optional.of(Problem.of(ProfileFault.COLON, "", name));
    }
    if (profile.measures().isEmpty()) {
      return Optional.of(Problem.of(ProfileFault.NO_MEASURE, "", name));
    }
    if (profile.measures().size() > Profile.MOST) {
      return Optional.of(
          Problem.of(ProfileFault.MANY, "", name, profile.measures().size(), Profile.MOST));
    }
    Optional<Problem> unfit =
        unfit(name)
            .or(() -> profile.measures().stream().flatMap(m -> unfit(m).stream()).findFirst());
    return unfit.or(() -> twice(profile));
  }

  private static Optional<Problem> unfit(String name) {
    Optional<Problem> flaw = TypedText.flaw(name, TypedText.Form.LINE, "");
    return flaw.isPresent() || name.codePointCount(0, name.length()) <= Profile.LONGEST
        ? flaw
        : Optional.of(Problem.of(ProfileFault.LONG_NAME, "", name, Profile.LONGEST));
  }

  private static Optional<Problem> twice(Profile profile) {
    Set<String> seen = new HashSet<>();
    return profile.measures().stream()
        .filter(measure -> !seen.add(Profile.key(measure)))
        .findFirst()
        .map(measure -> Problem.of(ProfileFault.TWICE, "", profile.name(), measure));
  }
}
