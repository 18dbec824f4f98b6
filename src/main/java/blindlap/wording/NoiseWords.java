package blindlap.wording;

import blindlap.plan.DeclaredNoise;
import blindlap.plan.Measure;
import blindlap.plan.NoiseKnown;
import blindlap.review.NoiseDay;
import blindlap.review.NoiseRecord;
import blindlap.stats.compare.Scale;
import blindlap.stats.distribution.Interval;
import blindlap.stats.noise.RiderNoise;
import blindlap.wording.day.Figures;
import blindlap.wording.day.Words;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Rider noise in sentences. Its interval is right only if laps behave normally, and says so. */
public final class NoiseWords {
  private static final Words WORDS = Words.of("noise");
  private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM", Locale.UK);
  private static final DateTimeFormatter DATE =
      DateTimeFormatter.ofPattern("d MMM uuuu", Locale.UK);

  private NoiseWords() {}

  /** A sentence of the bundle. */
  public static String say(String key, Object... arguments) {
    return WORDS.say(key, arguments);
  }

  /** "3 days, 12 Sep to 24 Oct 2026", for a plan. */
  public static String source(NoiseRecord record) {
    List<NoiseDay> days = record.told();
    LocalDate first = days.get(0).day();
    LocalDate last = days.get(days.size() - 1).day();
    return days.size() == 1
        ? WORDS.say("source.one", last.format(DATE))
        : WORDS.say("source", days.size(), first.format(DATE), last.format(DATE));
  }

  /** "R. Lind's noise on Quarry loop". */
  public static String title(NoiseRecord record) {
    return WORDS.say("title", record.rider(), record.trail());
  }

  /** "lap time, 2 scored laps a stint". */
  public static String what(NoiseRecord record) {
    return record.scoredLaps() == 1
        ? record.measure().name()
        : WORDS.say("what.several", record.measure().name(), record.scoredLaps());
  }

  /** An SD as said: in the unit, or in per cent on the ratio scale. */
  public static double said(Measure measure, double sd) {
    return measure.scale() == Scale.RATIO ? 100 * Math.expm1(sd) : sd;
  }

  /** Unit of an SD. */
  public static String unit(Measure measure) {
    return measure.scale() == Scale.RATIO ? "%" : measure.unit();
  }

  /** "1.2 s (0.9 to 1.6 s)", or "1.2 s" for a guess: the noise of a plan. */
  static String declared(Measure measure, DeclaredNoise noise) {
    double typed = noise.sd().doubleValue();
    double sd = measure.scale() == Scale.RATIO ? Math.log1p(typed / 100) : typed;
    Integer df = noise.df();
    RiderNoise known = new RiderNoise(sd, df == null || df < 1 ? 1 : df);
    return df == null || df < 1
        ? noise.sd().stripTrailingZeros().toPlainString() + " " + unit(measure)
        : WORDS.say("declared", sd(measure, known), interval(measure, known));
  }

  /** "0.42 to 0.55 s": the noise of stints as planned. */
  static String between(Measure measure, NoiseKnown noise) {
    String most = Figures.near(said(measure, noise.sd()));
    String least = Figures.alike(said(measure, noise.least()), most);
    return SplitWords.range(least, most) + " " + unit(measure);
  }

  private static int decimals(Measure measure, RiderNoise noise) {
    return Figures.decimals(said(measure, noise.sd()) / 4);
  }

  /** "0.64 s". */
  public static String sd(Measure measure, RiderNoise noise) {
    return Figures.number(said(measure, noise.sd()), decimals(measure, noise))
        + " "
        + unit(measure);
  }

  /** "0.54 to 0.77 s". */
  public static String interval(Measure measure, RiderNoise noise) {
    Interval interval = noise.interval95IfNormal();
    Interval said = new Interval(said(measure, interval.low()), said(measure, interval.high()));
    return Intervals.interval(said, decimals(measure, noise)) + " " + unit(measure);
  }

  /** The pooled noise in one sentence, or that there is none. */
  public static String pooled(NoiseRecord record) {
    Optional<RiderNoise> pooled = record.pooled();
    if (pooled.isEmpty()) {
      return WORDS.say("none", what(record));
    }
    RiderNoise noise = pooled.get();
    return WORDS.say(
        record.told().size() == 1 ? "pooled.one" : "pooled",
        sd(record.measure(), noise),
        interval(record.measure(), noise),
        noise.df(),
        record.told().size(),
        what(record));
  }

  /** One day in a line. */
  public static String day(NoiseRecord record, NoiseDay day) {
    Measure measure = record.measure();
    String noise =
        day.noise()
            .map(n -> WORDS.say("day.noise", sd(measure, n), interval(measure, n)))
            .orElse(WORDS.say("day.none", day.stints()));
    return WORDS.say(
        "day",
        day.day().format(DATE),
        WORDS.say("source." + day.source().name()),
        noise,
        drift(measure, day),
        day.voidLaps(),
        day.laps());
  }

  /** The answer of the page: whose noise, where, how much. */
  public static Headline headline(NoiseRecord record) {
    return record
        .pooled()
        .map(
            noise ->
                new Headline(
                    WORDS.say("page.headline", record.rider(), record.trail(), ""),
                    sd(record.measure(), noise),
                    WORDS.say("page.headline.after")))
        .orElse(new Headline("", WORDS.say("page.nothing"), ""));
  }

  /** What the answer means: interval, days, and how far two stints differ. */
  public static String lead(NoiseRecord record) {
    Optional<RiderNoise> pooled = record.pooled();
    if (pooled.isEmpty()) {
      return WORDS.say("none", what(record));
    }
    RiderNoise noise = pooled.get();
    double apart = said(record.measure(), noise.coefficient());
    return WORDS.say(
        record.told().size() == 1 ? "page.lead.one" : "page.lead",
        what(record),
        interval(record.measure(), noise),
        noise.df(),
        record.told().size(),
        Figures.near(apart) + " " + unit(record.measure()));
  }

  /** What is behind a record, a sentence each. */
  public static List<String> facts(NoiseRecord record, int sessions) {
    List<String> facts = new ArrayList<>();
    List<NoiseDay> told = record.told();
    if (told.size() > 1) {
      Measure measure = record.measure();
      facts.add(
          WORDS.say(
              "fact.change",
              sd(measure, told.get(0).noise().orElseThrow()),
              sd(measure, told.get(told.size() - 1).noise().orElseThrow())));
    }
    typicalDrift(record).ifPresent(facts::add);
    int laps = record.days().stream().mapToInt(NoiseDay::laps).sum();
    int voids = record.days().stream().mapToInt(NoiseDay::voidLaps).sum();
    facts.add(
        voids == 0
            ? WORDS.say("fact.voids.none", laps)
            : WORDS.say("fact.voids", Figures.inHundred(record.voidShare()), voids, laps));
    Object[] sorts =
        java.util.Arrays.stream(NoiseDay.Source.values())
            .map(s -> record.days().stream().filter(d -> d.source() == s).count())
            .toArray();
    facts.add(WORDS.say("fact.days", sorts));
    if (record.days().stream().anyMatch(day -> day.source() == NoiseDay.Source.STEPS_DAY)) {
      facts.add(WORDS.say("fact.days.steps", sorts));
    }
    if (sessions > record.days().size()) {
      facts.add(WORDS.say("fact.waiting", sessions - record.days().size()));
    }
    return facts;
  }

  /** The middle size of the drifts, whichever way they went. */
  private static Optional<String> typicalDrift(NoiseRecord record) {
    double[] sizes =
        record.days().stream()
            .mapToDouble(NoiseDay::drift)
            .filter(drift -> !Double.isNaN(drift))
            .map(drift -> said(record.measure(), Math.abs(drift)))
            .sorted()
            .toArray();
    if (sizes.length == 0) {
      return Optional.empty();
    }
    double middle = (sizes[(sizes.length - 1) / 2] + sizes[sizes.length / 2]) / 2;
    return Optional.of(
        WORDS.say("fact.drift", Figures.near(middle) + " " + unit(record.measure())));
  }

  /** A day in the cells of a table: date, sort, noise, drift, void laps, stints. */
  public static List<String> cells(NoiseRecord record, NoiseDay day) {
    Measure measure = record.measure();
    return List.of(
        day.day().format(DATE),
        WORDS.say("source." + day.source().name()),
        day.noise()
            .map(n -> WORDS.say("cell.noise", sd(measure, n), interval(measure, n)))
            .orElse(WORDS.say("cell.none")),
        Double.isNaN(day.drift()) ? WORDS.say("drift.unknown") : driftSize(measure, day),
        WORDS.say("cell.voids", day.voidLaps(), day.laps()),
        String.valueOf(day.stints()));
  }

  private static String drift(Measure measure, NoiseDay day) {
    if (Double.isNaN(day.drift())) {
      return WORDS.say("drift.unknown");
    }
    return WORDS.say("drift", driftSize(measure, day));
  }

  private static String driftSize(Measure measure, NoiseDay day) {
    double said = measure.scale() == Scale.RATIO ? 100 * Math.expm1(day.drift()) : day.drift();
    double tells = day.noise().map(n -> said(measure, n.sd()) / 2).orElse(Math.abs(said) / 5);
    return Figures.signed(said, Figures.decimals(tells)) + " " + unit(measure);
  }

  /** Everything of a record in lines: pooled, days, voids. */
  public static List<String> lines(NoiseRecord record) {
    List<String> lines = new ArrayList<>();
    lines.add(pooled(record));
    record.days().forEach(day -> lines.add("  " + day(record, day)));
    lines.add(
        record.voidShare() == 0
            ? WORDS.say("voids.none")
            : WORDS.say("voids", Figures.inHundred(record.voidShare())));
    return lines;
  }

  /** Sort of a day, short. */
  public static String sort(NoiseDay day) {
    return WORDS.say("sort." + day.source().name());
  }

  /** Label of a day in a picture; with its year where the days are of several years. */
  public static String label(NoiseRecord record, NoiseDay day) {
    boolean oneYear = record.days().stream().map(d -> d.day().getYear()).distinct().count() == 1;
    return day.day().format(oneYear ? DAY : DATE);
  }

  /**
   * What a day of so many stints in blocks of four can show, with 80 % probability; empty if it
   * cannot be told.
   *
   * @param stints a multiple of 4, at least 12
   */
  public static Optional<String> canShow(NoiseRecord record, int stints) {
    return record
        .canShow(stints)
        .map(shift -> said(record.measure(), shift))
        .map(said -> Figures.near(said) + " " + unit(record.measure()));
  }
}
