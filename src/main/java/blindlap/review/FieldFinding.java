package blindlap.review;

import blindlap.fault.Problem;
import blindlap.plan.Measure;
import blindlap.plan.Setup;
import blindlap.stats.compare.Verdict;
import blindlap.stats.distribution.Interval;
import blindlap.stats.pool.Field;
import blindlap.stats.pool.FieldDay;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * Setups of one rider, trail and measure over several days (docs/method.md#field-days). It carries
 * no verdict and no order of merit: verdicts in it are those of days, quoted.
 *
 * @param asked whose field it is
 * @param measure as the latest day that enters declares it; empty where none does
 * @param worthwhile the worthwhile difference on the scale of the analysis; empty unless every day
 *     that enters declares the same
 * @param setups those of the days that enter, as the latest day of each has them, the reference
 *     first, then by the day on which each came in; never by result
 * @param days those that enter, the earliest first
 * @param out the other sessions of this rider on this trail, the earliest first, each with the
 *     reason
 * @param numbers all days together; empty where there are none
 * @param refusal why the days could not be put together; empty where they were, or too few enter
 * @param rows every setup but the reference, against it, in the order of setups
 * @param others pairs of two others, in the same order
 * @param next what one more day would narrow most; empty where that cannot be said
 */
public record FieldFinding(
    Asked asked,
    Optional<Measure> measure,
    Optional<Interval> worthwhile,
    List<Setup> setups,
    List<Day> days,
    List<Out> out,
    Optional<Field> numbers,
    Optional<Problem> refusal,
    List<Pair> rows,
    List<Pair> others,
    Optional<Next> next) {
  /** p of agreement up to which the days are said not to agree. */
  public static final double DISAGREE = 0.10;

  /** Fewest days that make a field. */
  public static final int LEAST_DAYS = 2;

  public FieldFinding {
    setups = List.copyOf(setups);
    days = List.copyOf(days);
    out = List.copyOf(out);
    rows = List.copyOf(rows);
    others = List.copyOf(others);
  }

  /**
   * Whose field it is.
   *
   * @param measure name of the primary measure
   */
  public record Asked(String rider, String trail, String measure) {
    /** The same question, whatever its capitals. */
    boolean isThatOf(String otherRider, String otherTrail) {
      return QuestionHistory.plain(rider).equals(QuestionHistory.plain(otherRider))
          && QuestionHistory.plain(trail).equals(QuestionHistory.plain(otherTrail));
    }
  }

  /** Why a session does not enter. The first that holds is said. */
  public enum Why {
    ABANDONED,
    /** A noise run, steps day or telling run, or an old day that was brought in. */
    NO_COMPARISON,
    /** The rider knew what was on, or its label. */
    KNEW,
    /** Another primary measure. */
    OTHER_PRIMARY,
    SEALED,
    /** Of a series that is not at its end. */
    SERIES,
    NULL_RUN,
    /** A look stopped it: its estimate leans outward. */
    STOPPED_EARLY,
    /** The measure is of another kind or unit, or another direction is better. */
    OTHER_MEASURE,
    OTHER_SCALE,
    OTHER_SUMMARY,
    OTHER_LAPS,
    /** Too many values are missing for a test. */
    MISSING,
    /** It cannot be compared at all, such as where nothing varied. */
    NOT_COMPARED
  }

  /** A session that does not enter. */
  public record Out(String session, LocalDate day, List<String> setups, Why why) {
    public Out {
      setups = List.copyOf(setups);
    }
  }

  /** What a reader must know of a day beside its numbers. */
  public enum Remark {
    BLIND_BROKEN,
    WRONG_FIT,
    CUT_SHORT,
    /** Abandoned once its key was open and its finding known. */
    ABANDONED
  }

  /**
   * A day that enters.
   *
   * @param setups ids of its setups, as its plan has them
   * @param numbers its values, setups by id
   * @param used number of stints used
   */
  public record Day(
      String session,
      LocalDate day,
      List<String> setups,
      FieldDay numbers,
      int used,
      Set<Remark> remarks) {
    public Day {
      setups = List.copyOf(setups);
      remarks = Set.copyOf(remarks);
    }
  }

  /** How two setups come to stand beside each other. */
  public enum Standing {
    /** Ridden on one day, or several. */
    RIDDEN,
    /** Only over others, from day to day. */
    FOLLOWS,
    /** No days lead from one to the other. */
    APART
  }

  /**
   * Two setups. Differences are second less first on the scale of the analysis.
   *
   * @param first id
   * @param second id
   * @param estimate all days together; empty where no days lead from one to the other, or the days
   *     do not agree
   * @param interval95 for all pairs at once
   * @param own what each day that holds both found by itself, the earliest first
   * @param over ids of the setups that it follows over, from the first on; none unless it follows
   */
  public record Pair(
      String first,
      String second,
      Standing standing,
      OptionalDouble estimate,
      Optional<Interval> interval95,
      List<OwnDay> own,
      List<String> over) {
    public Pair {
      own = List.copyOf(own);
      over = List.copyOf(over);
    }

    /** True if the interval for all pairs at once leaves out "no difference". */
    public boolean toldApart() {
      return interval95.filter(i -> i.low() > 0 || i.high() < 0).isPresent();
    }
  }

  /**
   * What one day by itself found of two setups.
   *
   * @param verdict its own; empty for three and more setups, and where it has none
   * @param estimate second less first
   * @param interval95 of that day; of three and more setups for all its pairs at once
   * @param many true if the day had three or more setups
   * @param apart of three and more setups, true if this pair was told apart
   */
  public record OwnDay(
      String session,
      LocalDate day,
      Optional<Verdict> verdict,
      double estimate,
      Optional<Interval> interval95,
      boolean many,
      boolean apart) {}

  /**
   * Which day next would narrow the field most, by formula (docs/method.md#field-next).
   *
   * @param first id
   * @param second id
   * @param stints of such a day: those of the latest one
   * @param now largest half-width of all pairs; infinite where a pair is not known
   * @param then the same after that day, the noise staying as it is
   */
  public record Next(String first, String second, int stints, double now, double then) {}

  /** What others are compared with; empty where no day enters. */
  public Optional<Setup> reference() {
    return setups.stream().findFirst();
  }

  /** A setup by its id. */
  public Setup setup(String id) {
    return setups.stream().filter(s -> s.id().equals(id)).findFirst().orElseThrow();
  }

  /** How well the days agree; empty where that cannot be checked. */
  public Optional<Field.AgreementOfDays> agreement() {
    return numbers.flatMap(Field::agreement);
  }

  /** True if the days do not agree, so that nothing of them together is told. */
  public boolean withheld() {
    return agreement().filter(a -> a.p() <= DISAGREE).isPresent();
  }

  /** True if the days are together and what they come to is told. */
  public boolean told() {
    return numbers.isPresent() && !withheld();
  }

  /** True if any day or setup can not be reached from the reference. */
  public boolean apart() {
    return rows.stream().anyMatch(pair -> pair.standing() == Standing.APART);
  }
}
