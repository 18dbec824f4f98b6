package blindlap.wording;

import blindlap.plan.BlindLevel;
import blindlap.plan.Measure;
import blindlap.plan.Setup;
import blindlap.review.FieldFinding;
import blindlap.stats.distribution.Interval;
import blindlap.wording.day.Words;
import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Two setups of a field in words: all days together, and what each day found by itself. */
public final class FieldRowWords {
  static final Words WORDS = Words.of("field");

  private final FieldFinding finding;
  private final FieldFinding.Pair pair;
  private final Measure measure;
  private final List<String> names;

  FieldRowWords(FieldFinding finding, FieldFinding.Pair pair) {
    this.finding = finding;
    this.pair = pair;
    this.measure = finding.measure().orElseThrow();
    this.names = List.of(finding.setup(pair.first()).name(), finding.setup(pair.second()).name());
  }

  /** The pair itself. */
  public FieldFinding.Pair pair() {
    return pair;
  }

  /** Name of the setup that is compared with the first. */
  public String name() {
    return names.get(1);
  }

  /** Both names. */
  public List<String> names() {
    return names;
  }

  private DifferenceWords words(double estimate, Optional<Interval> interval) {
    return new DifferenceWords(names, measure, estimate, List.of(interval), 1);
  }

  private DifferenceWords pooled() {
    return words(pair.estimate().orElseThrow(), pair.interval95());
  }

  /** "faster.first": the end of a key for which side the second lies on. */
  String side() {
    return side(measure, pair.estimate().orElseThrow());
  }

  /** The same of any shift, second less first. */
  private static String side(Measure measure, double shift) {
    Way way = Way.of(measure);
    return way.name().toLowerCase(Locale.ROOT).replace('_', '.')
        + (way.first(shift) == 1 ? ".first" : ".other");
  }

  /** "faster", of the second against the first, for any shift. */
  static String word(Measure measure, double shift) {
    return WORDS.say("word." + side(measure, shift));
  }

  /** "2.0 s faster"; of a ratio the one that took longer is named, for it is of the other. */
  private String brief(double estimate, Optional<Interval> interval) {
    Sizes sizes = words(estimate, interval).sizes();
    return WORDS.say(
        "short." + side(measure, estimate), sizes.with(sizes.estimate(estimate)), names.get(0));
  }

  /** "2.0 s faster", "not told apart", or that no days lead there. */
  public String brief() {
    if (pair.standing() == FieldFinding.Standing.APART) {
      return WORDS.say("short.apart");
    }
    if (pair.estimate().isEmpty()) {
      return WORDS.say("short.withheld");
    }
    if (!pair.toldApart()) {
      return WORDS.say("short.open");
    }
    return brief(pair.estimate().getAsDouble(), pair.interval95());
  }

  /** The interval for all pairs at once. */
  public String interval() {
    return pair.estimate().isEmpty()
        ? WORDS.say("short.withheld")
        : pooled().interval(pair.interval95());
  }

  /** "yes, 14 Nov 2026", or that it only follows. */
  public String ridden() {
    return switch (pair.standing()) {
      case RIDDEN ->
          WORDS.say(
              "ridden.yes",
              String.join(
                  ", ", pair.own().stream().map(own -> SeriesWords.date(own.day())).toList()));
      case FOLLOWS -> WORDS.say("ridden.no");
      case APART -> WORDS.say("ridden.apart");
    };
  }

  /** When it met the first, or over what it follows, for a picture. */
  public String met() {
    return switch (pair.standing()) {
      case RIDDEN ->
          WORDS.say(
              "picture.ridden",
              String.join(
                  ", ", pair.own().stream().map(own -> SeriesWords.date(own.day())).toList()));
      case FOLLOWS -> WORDS.say("picture.follows", over());
      case APART -> "";
    };
  }

  /** What each day found by itself, with its interval, a line a day; over what it follows. */
  public List<String> below() {
    return switch (pair.standing()) {
      case RIDDEN -> pair.own().stream().map(this::that).toList();
      case FOLLOWS -> List.of(WORDS.say("ridden.over", over()));
      case APART -> List.of();
    };
  }

  /** Of several days each is named: which of them found what is no guess. */
  private String that(FieldFinding.OwnDay own) {
    return WORDS.say(
        shown(own) ? "own.that" : "own.that.open",
        pair.own().size() == 1 ? WORDS.say("own.that.day") : SeriesWords.date(own.day()),
        verdict(own),
        shown(own) ? brief(own.estimate(), own.interval95()) : "",
        limits(own));
  }

  /** True if the day's own interval leaves out "no difference". */
  private static boolean shown(FieldFinding.OwnDay own) {
    return own.interval95().filter(i -> i.low() > 0 || i.high() < 0).isPresent();
  }

  private String limits(FieldFinding.OwnDay own) {
    return WORDS.say(
        own.many() ? "own.limits.many" : "own.limits",
        own.interval95().isEmpty()
            ? WORDS.say("unbounded")
            : words(own.estimate(), own.interval95()).interval(own.interval95()));
  }

  /** Names of the setups between. */
  String over() {
    return listed(pair.over().stream().map(id -> finding.setup(id).name()).toList());
  }

  /** "K", "K and L", "K, L and M". */
  static String listed(List<String> names) {
    String so = "";
    for (int i = 0; i < names.size(); i++) {
      String key = i == names.size() - 1 ? "and" : "comma";
      so = i == 0 ? names.get(0) : WORDS.say(key, so, names.get(i));
    }
    return so;
  }

  /** What a day found by itself, quoted. */
  String verdict(FieldFinding.OwnDay own) {
    if (own.many()) {
      return WORDS.say(own.apart() ? "own.many.apart" : "own.many.open");
    }
    // Only sessions of the blind levels enter, whose phrases nothing caps.
    return own.verdict()
        .map(found -> VerdictWords.phrase(BlindLevel.HELPER, measure, found))
        .orElse(WORDS.say("own.no.verdict"));
  }

  /** What every day that holds both found by itself, a sentence each, with its direction. */
  String own() {
    return String.join(
        " ",
        pair.own().stream()
            .map(
                own ->
                    WORDS.say(
                        shown(own) ? "own" : "own.open",
                        SeriesWords.date(own.day()),
                        verdict(own),
                        words(own.estimate(), own.interval95()).difference(),
                        limits(own)))
            .toList());
  }

  /** A row against the reference, in a sentence with price and mass. */
  public String sentence() {
    return say("row.", FieldRowWords.cost(finding.setup(pair.second())));
  }

  /** A pair of two others, in a sentence. */
  public String between() {
    return say("pair.", "");
  }

  private String say(String kind, String cost) {
    String key =
        pair.standing() == FieldFinding.Standing.APART || pair.estimate().isPresent()
            ? kind + pair.standing().name()
            : pair.standing() == FieldFinding.Standing.RIDDEN ? kind + "own" : kind + "kept";
    boolean row = kind.equals("row.");
    return WORDS
        .say(
            key,
            pair.estimate().isEmpty() ? "" : pooled().careful(pair.toldApart()),
            interval(),
            own(),
            cost,
            row ? names.get(1) : names.get(0),
            over(),
            row ? names.get(0) : names.get(1))
        .strip();
  }

  /** "EUR 600"; empty if unknown. */
  public static String price(Setup setup) {
    Setup.Price price = setup.price();
    return price == null
        ? ""
        : WORDS.say("price", price.currency(), price.amount().toPlainString());
  }

  /** "882 g"; empty if unknown. */
  public static String mass(Setup setup) {
    BigDecimal mass = setup.massOnBike();
    return mass == null ? "" : WORDS.say("mass", mass.stripTrailingZeros().toPlainString());
  }

  /** Both in a sentence; empty if neither is known. */
  static String cost(Setup setup) {
    String price = price(setup);
    String mass = mass(setup);
    return price.isEmpty() && mass.isEmpty()
        ? ""
        : " "
            + WORDS.say(
                "cost",
                price.isEmpty() ? WORDS.say("price.unknown") : price,
                mass.isEmpty() ? WORDS.say("mass.unknown") : mass);
  }
}
