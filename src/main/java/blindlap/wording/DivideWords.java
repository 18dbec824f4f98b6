package blindlap.wording;

import blindlap.plan.DayAnswer;
import blindlap.plan.DayDivided;
import blindlap.plan.Division;
import blindlap.plan.Measure;
import blindlap.plan.NoiseKnown;
import blindlap.plan.Plan;
import blindlap.plan.StintShare;
import blindlap.stats.compare.Scale;
import blindlap.wording.day.DayWords;
import blindlap.wording.day.Figures;
import blindlap.wording.day.Words;
import java.math.BigDecimal;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** How a day of given length can be divided, in words. */
public final class DivideWords {
  private static final Words WORDS = Words.of("answer");

  private final Plan plan;
  private final Optional<Measure> primary;
  private final DayDivided divided;

  /**
   * @param plan whose day it is
   * @param divided at least one division
   */
  public DivideWords(Plan plan, DayDivided divided) {
    this.plan = plan;
    this.primary = plan.primary();
    this.divided = divided;
  }

  /** A sentence or label of it. */
  public static String say(String key, Object... arguments) {
    return WORDS.say("divide." + key, arguments);
  }

  /** The day that is divided: "10 h from 09:00, over by 19:00." */
  public String day() {
    Division any = divided.divisions().get(0);
    Duration length = Duration.between(any.schedule().start(), any.schedule().limit());
    Integer budget = plan.timetable() == null ? null : plan.timetable().lapBudget();
    String day =
        say(
            "day",
            DayWords.duration(length),
            DayWords.clock(any.schedule().start()),
            DayWords.clock(any.schedule().limit()));
    return budget == null ? day : day + " " + say("budget", budget);
  }

  /** Heads of the columns of a table. */
  public static List<String> heads() {
    return List.of(
        say("head.stints"),
        say("head.day"),
        say("head.swaps"),
        say("head.shows"),
        say("head.said"));
  }

  /** A row: stints of laps, laps and finish, real swaps, what it can show, how far that is. */
  public List<String> cells(Division division) {
    return List.of(
        stints(division), finish(division), swaps(division), shown(division), said(division));
  }

  /** The same in one sentence. */
  public String line(Division division) {
    return say("line", cells(division).toArray());
  }

  /** "16 stints of 2". */
  public String stints(Division division) {
    return say("stints", division.stints(), division.scored());
  }

  /** "32 laps, over at 14:44". */
  public String finish(Division division) {
    return say("finish", division.laps(), DayWords.clock(division.schedule().end()));
  }

  /** "9.5 of 16". */
  public String swaps(Division division) {
    return say("swaps", Figures.number(division.swaps(), 1), division.handlings().day());
  }

  /** "0.7 to 1.0 s". */
  public String shown(Division division) {
    String most = number(division.most());
    String range = unit(division, SplitWords.range(alike(division.least(), most), most));
    return switch (division.source()) {
      case ROUGH -> say("rough", range);
      case SIMULATION -> say("simulated", range);
      case PAIRS -> say("pairs", range);
      case FORMULA, NEVER -> range;
    };
  }

  /** The numbers at the ends of a bar, the unit with the last: "0.7", "1.0 s". */
  public List<String> ends(Division division) {
    String most = number(division.most());
    String least = alike(division.least(), most);
    String last = unit(division, most);
    return List.of(least.equals(most) ? last : least, last);
  }

  /** What the upright through all bars is; empty where nothing can be compared. */
  public Optional<String> upright() {
    return worthwhile() > 0 ? Optional.of(say("upright", declared())) : Optional.empty();
  }

  /** What is said once a division is taken. */
  public static String taken(Division division) {
    return say("taken", say("stints", division.stints(), division.scored()), rule(division));
  }

  private static String rule(Division division) {
    return division.plan().protocol().title();
  }

  private String number(double difference) {
    double worthwhile = worthwhile();
    return worthwhile > 0 ? Figures.near(difference, worthwhile) : Figures.near(difference);
  }

  private String alike(double difference, String other) {
    double worthwhile = worthwhile();
    return worthwhile > 0
        ? Figures.alike(difference, other, worthwhile)
        : Figures.alike(difference, other);
  }

  /** The worthwhile difference; NaN where it cannot be compared. */
  public double worthwhile() {
    BigDecimal declared = primary.map(Measure::worthwhile).orElse(null);
    return declared == null
            || NoiseKnown.of(divided.divisions().get(0).plan()).kind() == NoiseKnown.Kind.UNKNOWN
        ? Double.NaN
        : declared.doubleValue();
  }

  private String unit(Division division, String number) {
    if (NoiseKnown.of(division.plan()).kind() == NoiseKnown.Kind.UNKNOWN) {
      return WORDS.say("times.noise", number);
    }
    return primary
        .map(
            m ->
                m.scale() == Scale.RATIO
                    ? WORDS.say("per.cent", number)
                    : WORDS.say("with.unit", number, m.unit()))
        .orElse(number);
  }

  /** The worthwhile difference as declared, with its unit. */
  public String declared() {
    return primary
        .map(Measure::worthwhile)
        .map(w -> unit(divided.divisions().get(0), w.stripTrailingZeros().toPlainString()))
        .orElse("");
  }

  /** How far it reaches what would change the tester's mind, and whether it is the best. */
  public String said(Division division) {
    List<String> said = new ArrayList<>();
    if (division.best()) {
      said.add(say(split() ? "best.both" : "best"));
    }
    reach(division).ifPresent(said::add);
    if (division.is(plan)) {
      said.add(say("planned"));
    }
    return String.join("; ", said);
  }

  private Optional<String> reach(Division division) {
    Division.Reach reach = division.reach();
    String share = Figures.number(100 * reach.share().orElse(0), 0);
    return switch (reach.reached()) {
      case EITHER_WAY -> Optional.of(say(split(division) ? "reach.both" : "reach", declared()));
      case AT_MOST -> Optional.of(say("reach.most", declared(), share));
      case AT_LEAST -> Optional.of(say("reach.least", declared(), share));
      case NOT -> Optional.of(say(split(division) ? "reach.not.both" : "reach.not", declared()));
      case UNKNOWN -> Optional.empty();
    };
  }

  /** True where what divisions can show hangs on how much of the noise lies in the stint. */
  private boolean split() {
    return divided.divisions().stream().anyMatch(DivideWords::split);
  }

  private static boolean split(Division division) {
    return division.least() < division.most() * (1 - 1e-9);
  }

  /** What is to be said below the table. */
  public List<String> notes() {
    List<String> notes = new ArrayList<>();
    if (plan.steps() != null) {
      notes.add(say("note.steps"));
    }
    if (split()) {
      notes.add(ends());
    }
    if (divided.divisions().stream().noneMatch(Division::best)) {
      notes.add(say("best.none"));
    }
    if (divided.divisions().stream().anyMatch(d -> d.source() == DayAnswer.Source.ROUGH)) {
      notes.add(say("note.rough"));
    } else if (divided.divisions().stream().anyMatch(d -> d.source() == DayAnswer.Source.PAIRS)) {
      notes.add(say("note.pairs"));
    }
    if (divided.shorter() > 0) {
      notes.add(say("note.shorter", divided.shorter()));
    }
    if (divided.silent() > 0) {
      notes.add(say("note.silent", divided.silent()));
    }
    if (divided.beyond() > 0) {
      notes.add(say("note.beyond", divided.beyond()));
    }
    if (divided.medians() > 0) {
      notes.add(say("note.medians", divided.medians()));
    }
    return notes;
  }

  private String ends() {
    var noise = divided.divisions().get(0).plan().noise();
    StintShare share = noise == null ? null : noise.stintShare();
    return share == null ? say("ends.unknown") : say("ends.known", SplitWords.perCent(share));
  }
}
