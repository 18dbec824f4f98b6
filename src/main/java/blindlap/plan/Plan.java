package blindlap.plan;

import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Everything that is fixed before riding: one rider, one trail, one day. Immutable; {@link
 * PlanCheck} says what is wrong with it, {@link PlanJson} gives the bytes that are sealed and
 * hashed.
 *
 * @param kind comparison, open noise run on one setup, steps day along one setting, or telling run
 *     in trials
 * @param question what the tester wants to know, in plain words
 * @param expectations what tester, rider and helper expect
 * @param rider name or initials
 * @param trail name of the trail
 * @param day the day of riding
 * @param conditions what is known of weather and surface beforehand; may be empty
 * @param setups what is compared, in the order A, B, C, …
 * @param change how setups are changed
 * @param bikes the two bikes, if setups are changed by changing bikes; null otherwise
 * @param differencesReason why more than one setting differs; empty if only one does
 * @param bike settings of the bike that stay the same throughout
 * @param measures what is recorded per lap
 * @param protocol the named rule
 * @param stints number of stints
 * @param laps laps per stint and before the first
 * @param blinding what keeps the rider blind
 * @param timetable the day against the clock; null if none was made
 * @param noise what the tester knows of the rider's noise; null if unknown
 * @param override why a plan that cannot show anything is ridden all the same; empty if it can
 * @param series id of the series this session belongs to; null for a session of its own
 * @param seriesSessions number of sessions that the series is declared to have, as every plan of it
 *     says; null where none is declared
 * @param covariates what is recorded beside the measures and taken out like drift; empty where
 *     nothing is
 * @param looks last stints of the looks before the end, rising; empty where none is declared
 * @param trailVersion the gates that times are taken at, from the trail book; null where no
 *     recording is to give one
 * @param steps the one setting of a steps day, whose levels are the setups; null for other kinds
 * @param telling the trials of a telling run; null for other kinds
 */
public record Plan(
    Kind kind,
    String question,
    Expectations expectations,
    String rider,
    String trail,
    LocalDate day,
    String conditions,
    List<Setup> setups,
    ChangeMethod change,
    @Nullable Bikes bikes,
    String differencesReason,
    List<Setting> bike,
    List<Measure> measures,
    Protocol protocol,
    int stints,
    Laps laps,
    Blinding blinding,
    @Nullable Timetable timetable,
    @Nullable DeclaredNoise noise,
    String override,
    @Nullable String series,
    @Nullable Integer seriesSessions,
    List<Covariate> covariates,
    List<Integer> looks,
    @Nullable TrailVersion trailVersion,
    @Nullable StepsDay steps,
    @Nullable TellingRun telling) {

  /** Stands for the day of a draft for which none is typed yet; never of a committed plan. */
  public static final LocalDate NO_DAY = LocalDate.EPOCH;

  /** What a session is for. */
  public enum Kind {
    /** Setups are compared in a drawn order. */
    COMPARISON,
    /** One setup throughout, said openly; feeds the rider's noise only. */
    NOISE_RUN,
    /** Levels of one setting of one setup are compared in a drawn order. */
    STEPS_DAY,
    /** Trials of two or three laps with one answer each: can the rider tell two setups apart? */
    TELLING_RUN;

    /** True if an order is drawn, sealed and analysed: not for a noise run. */
    public boolean drawn() {
      return this != NOISE_RUN;
    }

    /** Most stints of a day; the laps of a trial are stints. */
    public int mostStints() {
      return this == TELLING_RUN
          ? TellingRun.MOST_TRIALS * TellingTask.TRIANGLE.laps()
          : Rule.MOST_STINTS;
    }

    /** True if setups or levels are compared by a measure: not where answers are counted. */
    public boolean measured() {
      return this == COMPARISON || this == STEPS_DAY;
    }
  }

  /**
   * What the people of the day expect, each unseen by the others until unsealing.
   *
   * @param tester in plain words; may be empty
   * @param rider in plain words; may be empty
   * @param helper in plain words; may be empty
   */
  public record Expectations(String tester, String rider, String helper) {
    public static final Expectations NONE = new Expectations("", "", "");
  }

  /**
   * Laps of the day.
   *
   * @param warmUp laps before the first stint, never analysed
   * @param settling laps at the start of every stint, never analysed
   * @param scored laps of every stint whose mean is the analysed unit, at least 1
   */
  public record Laps(int warmUp, int settling, int scored) {
    /** Settling and scored laps of one stint. */
    public int perStint() {
      return settling + scored;
    }
  }

  public Plan {
    setups = List.copyOf(setups);
    bike = List.copyOf(bike);
    measures = List.copyOf(measures);
    covariates = List.copyOf(covariates);
    looks = List.copyOf(looks);
  }

  /** The same plan with another rule and number of stints. */
  public Plan with(Protocol otherProtocol, int otherStints) {
    return with(otherProtocol, otherStints, laps, noise);
  }

  /**
   * The same plan with its day divided otherwise, and what is known of the noise of such stints.
   */
  public Plan with(
      Protocol otherProtocol, int otherStints, int scored, @Nullable DeclaredNoise known) {
    return with(
        otherProtocol, otherStints, new Laps(laps.warmUp(), laps.settling(), scored), known);
  }

  /** The same plan with what is known of the rider's noise. */
  public Plan with(DeclaredNoise known) {
    return with(protocol, stints, laps, known);
  }

  /** The same plan with its setups in another order, or under other names. */
  public Plan with(List<Setup> others) {
    return with(others, protocol, stints, laps, noise, trailVersion);
  }

  /** The same plan with the gates of its trail. */
  public Plan with(TrailVersion version) {
    return with(setups, protocol, stints, laps, noise, version);
  }

  private Plan with(
      Protocol otherProtocol, int otherStints, Laps otherLaps, @Nullable DeclaredNoise otherNoise) {
    return with(setups, otherProtocol, otherStints, otherLaps, otherNoise, trailVersion);
  }

  private Plan with(
      List<Setup> others,
      Protocol otherProtocol,
      int otherStints,
      Laps otherLaps,
      @Nullable DeclaredNoise otherNoise,
      @Nullable TrailVersion otherTrail) {
    return new Plan(
        kind,
        question,
        expectations,
        rider,
        trail,
        day,
        conditions,
        others,
        change,
        bikes,
        differencesReason,
        bike,
        measures,
        otherProtocol,
        otherStints,
        otherLaps,
        blinding,
        timetable,
        otherNoise,
        override,
        series,
        seriesSessions,
        covariates,
        looks,
        otherTrail,
        steps,
        telling);
  }

  /** The rule of admissible orders for this number of setups and stints. */
  public Rule rule() {
    TellingRun run = kind == Kind.TELLING_RUN ? telling : null;
    return run == null ? protocol.rule(setups.size(), stints) : run.rule();
  }

  /** True if a protocol is made for such a day and as many setups, or levels. */
  public boolean suits(Protocol other) {
    return other.suits(kind == Kind.STEPS_DAY, setups.size());
  }

  /** The primary measure, if exactly one is declared. */
  public Optional<Measure> primary() {
    List<Measure> primaries =
        measures.stream().filter(m -> m.role() == Measure.Role.PRIMARY).toList();
    return primaries.size() == 1 ? Optional.of(primaries.get(0)) : Optional.empty();
  }

  /** The measure of this name. */
  public Optional<Measure> measure(String name) {
    return measures.stream().filter(m -> m.name().equals(name)).findFirst();
  }

  /** Names of those who score by code afterwards, each once, in the order of the measures. */
  public List<String> assessors() {
    return measures.stream()
        .map(Measure::assessor)
        .filter(Objects::nonNull)
        .map(Assessor::name)
        .distinct()
        .toList();
  }

  /** What the person of this name scores by code. */
  public List<Measure> scoredBy(String name) {
    return measures.stream()
        .filter(measure -> measure.assessor() != null && measure.assessor().name().equals(name))
        .toList();
  }

  /** What the people of the day are asked for: not what is scored later or a recording gives. */
  public List<Measure> askedOnTheDay() {
    return measures.stream().filter(Measure::asked).toList();
  }

  /** The covariate of this name. */
  public Optional<Covariate> covariate(String name) {
    return covariates.stream().filter(c -> c.name().equals(name)).findFirst();
  }

  /**
   * The one setting whose levels the setups are, of a steps day or of a telling run between two
   * levels; null where setups are ridden against each other. Whatever is handled asks this, and
   * whatever is compared by a measure asks for {@link #steps}.
   */
  public @Nullable StepsDay oneSetting() {
    return steps != null || telling == null ? steps : telling.oneSetting();
  }

  /**
   * The levels of the one setting as numbers, in the order of the setups; empty where there is none
   * and where one is no number.
   */
  public Optional<List<java.math.BigDecimal>> levels() {
    StepsDay day = oneSetting();
    if (day == null || setups.stream().anyMatch(setup -> day.value(setup).isEmpty())) {
      return Optional.empty();
    }
    return Optional.of(setups.stream().map(setup -> day.value(setup).orElseThrow()).toList());
  }

  /**
   * The same for the calculation.
   *
   * @throws IllegalStateException of a plan without levels in numbers
   */
  public double[] levelNumbers() {
    return levels().orElseThrow(() -> new IllegalStateException("no levels in numbers")).stream()
        .mapToDouble(java.math.BigDecimal::doubleValue)
        .toArray();
  }

  /** True if one difference answers the question: of two setups, or from end to end of levels. */
  public boolean oneDifference() {
    return setups.size() == 2 || steps != null;
  }

  /**
   * The two that the difference is of, by name: both setups, or the lowest and the highest level;
   * the first two of more setups.
   */
  public List<String> ends() {
    List<String> names = setups.stream().map(Setup::name).toList();
    return steps == null || levels().isEmpty() || names.isEmpty()
        ? names
        : List.of(names.get(place(false)), names.get(place(true)));
  }

  /** Index of the setup with the lowest or the highest level. */
  public int place(boolean highest) {
    List<java.math.BigDecimal> numbers = levels().orElseThrow();
    return numbers.indexOf(
        highest ? java.util.Collections.max(numbers) : java.util.Collections.min(numbers));
  }

  /** Number of laps of all stints, settling laps included, warm-up laps not. */
  public int lapsOfDay() {
    return stints * laps.perStint();
  }

  /**
   * "Shock K against Shock L"; a comparison without a helper says how blind it is, and a steps day
   * what is set: "Shock K, rebound at 4, 7, 10 clicks"; a telling run is called "Telling Shock K
   * from Shock L", or "Telling apart: Shock K, compression at 9 and 13 clicks".
   */
  public String title() {
    List<String> names = setups.stream().map(Setup::name).toList();
    if (kind == Kind.TELLING_RUN) {
      StepsDay setting = oneSetting();
      return setting == null
          ? "Telling " + String.join(" from ", names)
          : "Telling apart: " + setting.titleOfTwo(names);
    }
    return steps == null ? title(names, level()) : steps.title(names);
  }

  /** The title of a session with these setups. */
  public static String title(List<String> setups, BlindLevel level) {
    return String.join(" against ", setups) + (level.title().isEmpty() ? "" : ", " + level.title());
  }

  /** How blind a comparison is; a noise run, which is open anyway, has the usual one. */
  public BlindLevel level() {
    return kind.drawn() ? blinding.level() : BlindLevel.HELPER;
  }

  /** True if the rider is asked: what was on, or in a telling run, always, which lap. */
  public boolean asksGuesses() {
    return telling != null || blinding.guesses();
  }

  /**
   * True if the rider is asked after a stint: after any, or in a telling run after the last of a
   * trial.
   *
   * @param stint from 1
   */
  public boolean asksGuessAfter(int stint) {
    return telling == null
        ? blinding.guesses()
        : stint >= 1 && stint <= telling.stints() && telling.place(stint) == telling.task().laps();
  }

  /** True for a comparison whose rider knows what is fitted; noise runs are open anyway. */
  public boolean unblinded() {
    return !level().blind();
  }
}
