package blindlap.wording;

import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plan.Profile;
import blindlap.plan.Setup;
import blindlap.review.Finding;
import blindlap.review.ProfileOnDay;
import blindlap.wording.day.Words;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * What a day found for whoever looks at some measures only: the finding's own sentences, measure by
 * measure. Nothing is weighed, summed or ranked, and a profile has no verdict.
 */
public final class ProfilesFoundWords {
  private static final Words WORDS = Words.of("profiles");

  private final Finding finding;
  private final Plan plan;
  private final List<ProfileOnDay> profiles;

  /** What was found of one measure of a profile, in sentences. */
  public record Found(String measure, List<String> sentences) {}

  /**
   * A profile on a day.
   *
   * @param name the kind of rider
   * @param mark what must be known of it: that it was made, changed or removed after the day was
   *     opened; empty if it was declared before and is so still
   * @param measures those that count for it
   * @param found what was found, measure by measure
   */
  public record Row(String name, String mark, String measures, List<Found> found) {
    /** All sentences, measure after measure. */
    public List<String> sentences() {
      return found.stream().flatMap(each -> each.sentences().stream()).toList();
    }
  }

  private ProfilesFoundWords(Finding finding, List<ProfileOnDay> profiles) {
    this.finding = finding;
    this.plan = finding.day().plan();
    this.profiles = profiles;
  }

  /** Of a finding; empty where no profile stands beside it, and of a null run. */
  public static Optional<ProfilesFoundWords> of(Finding finding, List<ProfileOnDay> profiles) {
    return profiles.isEmpty() || finding.day().nullRun()
        ? Optional.empty()
        : Optional.of(new ProfilesFoundWords(finding, profiles));
  }

  /** "Who should look at what". */
  public static String title() {
    return WORDS.say("title");
  }

  /** Heads of the table. */
  public static List<String> heads() {
    return List.of(WORDS.say("head.name"), WORDS.say("head.measures"), WORDS.say("head.found"));
  }

  /** What the table is, and what it is not. */
  public static String note() {
    return WORDS.say("note");
  }

  /** A row a profile, in the order in which they were first made. */
  public List<Row> rows() {
    return profiles.stream().map(this::row).toList();
  }

  /** All of it as lines of text. */
  public List<String> lines() {
    return lines(rows(), note());
  }

  /** Rows and what stands below them, as lines of text. */
  static List<String> lines(List<Row> rows, String note) {
    List<String> lines = new ArrayList<>();
    for (Row row : rows) {
      String mark = row.mark().isEmpty() ? "" : WORDS.say("line.mark", row.mark());
      lines.add(
          WORDS.say(
              "line.found", row.name(), mark, row.measures(), String.join(" ", row.sentences())));
    }
    lines.add(note);
    return lines;
  }

  private Row row(ProfileOnDay on) {
    return new Row(
        on.version().profile().name(),
        on.stands() == ProfileOnDay.Stands.BEFORE ? "" : WORDS.say("mark." + on.stands().name()),
        ProfileWords.measures(on.version()),
        on.version().profile().measures().stream()
            .map(measure -> new Found(measure, found(measure)))
            .toList());
  }

  private List<String> found(String name) {
    Optional<Measure> measure =
        plan.measures().stream()
            .filter(each -> Profile.key(each.name()).equals(Profile.key(name)))
            .findFirst();
    if (measure.isPresent()) {
      return new MeasureText(finding).of(measure.get(), new FindingText(finding).sentence());
    }
    return List.of(
        factOf(name, plan.setups())
            .map(fact -> plan.steps() == null ? fact : WORDS.say(Profile.key(name) + ".levels"))
            .orElseGet(() -> WORDS.say("not.measured", name)));
  }

  /** Mass or price of every setup, in their order; empty for what is neither. */
  static Optional<String> factOf(String name, List<Setup> setups) {
    return switch (Profile.key(name)) {
      case Profile.MASS -> Optional.of(fact("mass", setups, ProfilesFoundWords::mass));
      case Profile.PRICE -> Optional.of(fact("price", setups, ProfilesFoundWords::price));
      default -> Optional.empty();
    };
  }

  private static String fact(String key, List<Setup> setups, Function<Setup, Optional<String>> of) {
    if (setups.stream().allMatch(setup -> of.apply(setup).isEmpty())) {
      return WORDS.say(key + ".none");
    }
    return WORDS.say(
        key,
        setups.stream()
            .map(s -> WORDS.say("fact", s.name(), of.apply(s).orElse(WORDS.say("fact.unknown"))))
            .collect(Collectors.joining(", ")));
  }

  private static Optional<String> mass(Setup setup) {
    return Optional.ofNullable(setup.massGrams()).map(grams -> plain(grams) + " g");
  }

  private static Optional<String> price(Setup setup) {
    return Optional.ofNullable(setup.price())
        .map(price -> price.currency() + " " + plain(price.amount()));
  }

  private static String plain(BigDecimal number) {
    return number.stripTrailingZeros().toPlainString();
  }
}
