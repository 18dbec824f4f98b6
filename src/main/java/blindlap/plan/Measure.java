package blindlap.plan;

import blindlap.stats.compare.Scale;
import blindlap.stats.compare.StintSummary;
import blindlap.stats.order.Drift;
import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;

/**
 * What is recorded per lap.
 *
 * @param name as it stands on the score sheet and in file headings
 * @param kind what sort of value it is
 * @param unit unit of the value; for scales and counts a word such as "points" or "a lap"
 * @param lowWords words at the low end of a scale; empty otherwise
 * @param highWords words at the high end of a scale; empty otherwise
 * @param role its part in the analysis
 * @param better which direction is better
 * @param worthwhile smallest difference that would change the tester's mind, in the unit (raw
 *     scale) or in per cent (ratio scale); null where none was declared
 * @param drift what is removed over the day
 * @param scale raw differences, or ratios through logarithms
 * @param summary how the scored laps of a stint become its value
 * @param definition what is measured, from where to where or what counts; may be empty
 * @param worthwhileReason why the worthwhile difference is what it is; may be empty
 * @param assessor who judges its values afterwards by codes; null where they are given on the day
 * @param timing where its times come from, if it is one of time; a watch otherwise
 */
public record Measure(
    String name,
    Kind kind,
    String unit,
    String lowWords,
    String highWords,
    Role role,
    Better better,
    @Nullable BigDecimal worthwhile,
    Drift drift,
    Scale scale,
    StintSummary summary,
    String definition,
    String worthwhileReason,
    @Nullable Assessor assessor,
    Timing timing) {

  /** A measure whose values are given on the day by people. */
  public Measure(
      String name,
      Kind kind,
      String unit,
      String lowWords,
      String highWords,
      Role role,
      Better better,
      @Nullable BigDecimal worthwhile,
      Drift drift,
      Scale scale,
      StintSummary summary,
      String definition,
      String worthwhileReason) {
    this(
        name,
        kind,
        unit,
        lowWords,
        highWords,
        role,
        better,
        worthwhile,
        drift,
        scale,
        summary,
        definition,
        worthwhileReason,
        null,
        Timing.WATCH);
  }

  /** A measure that takes means, with nothing said about what counts and why. */
  public Measure(
      String name,
      Kind kind,
      String unit,
      String lowWords,
      String highWords,
      Role role,
      Better better,
      @Nullable BigDecimal worthwhile,
      Drift drift,
      Scale scale) {
    this(
        name,
        kind,
        unit,
        lowWords,
        highWords,
        role,
        better,
        worthwhile,
        drift,
        scale,
        StintSummary.MEAN,
        "",
        "");
  }

  /** The same measure with another value of a stint. */
  public Measure with(StintSummary other) {
    return with(other, assessor, timing);
  }

  /** The same measure, judged by someone afterwards. */
  public Measure scoredBy(@Nullable Assessor other) {
    return with(summary, other, timing);
  }

  /** The same measure, its times coming from elsewhere. */
  public Measure timed(Timing other) {
    return with(summary, assessor, other);
  }

  private Measure with(
      StintSummary otherSummary, @Nullable Assessor otherAssessor, Timing otherTiming) {
    return new Measure(
        name,
        kind,
        unit,
        lowWords,
        highWords,
        role,
        better,
        worthwhile,
        drift,
        scale,
        otherSummary,
        definition,
        worthwhileReason,
        otherAssessor,
        otherTiming);
  }

  /** Sorts of values, with the range a value must lie in. */
  public enum Kind {
    LAP_TIME(0, Double.POSITIVE_INFINITY, false),
    SECTOR_TIME(0, Double.POSITIVE_INFINITY, false),
    LINE_SCALE(0, 100, false),
    CATEGORY_SCALE(1, 9, true),
    COUNT(0, 9999, true);

    private final double least;
    private final double most;
    private final boolean whole;

    Kind(double least, double most, boolean whole) {
      this.least = least;
      this.most = most;
      this.whole = whole;
    }

    /** True if a value of this size can stand on a score sheet. Times are above 0. */
    public boolean admits(BigDecimal value) {
      double number = value.doubleValue();
      boolean inside =
          timed() ? number > least && number <= 86_400 : number >= least && number <= most;
      return inside && (!whole || value.stripTrailingZeros().scale() <= 0);
    }

    /** True for times, which are hidden from the rider until scores are saved. */
    public boolean timed() {
      return switch (this) {
        case LAP_TIME, SECTOR_TIME -> true;
        case LINE_SCALE, CATEGORY_SCALE, COUNT -> false;
      };
    }

    /** True for values on a scale with two ends. */
    public boolean rating() {
      return switch (this) {
        case LINE_SCALE, CATEGORY_SCALE -> true;
        case LAP_TIME, SECTOR_TIME, COUNT -> false;
      };
    }

    /** True for what happens so and so often: its unit says per what, and it can be a ratio. */
    public boolean counted() {
      return switch (this) {
        case COUNT -> true;
        case LAP_TIME, SECTOR_TIME, LINE_SCALE, CATEGORY_SCALE -> false;
      };
    }

    /** Least value that can be recorded (times: not included). */
    public double least() {
      return least;
    }

    /** Largest value that can be recorded. */
    public double most() {
      return most;
    }
  }

  /** Part of a measure in the analysis. Exactly one measure of a plan is primary. */
  public enum Role {
    PRIMARY,
    SECONDARY,
    WATCH_FOR_HARM
  }

  /** Which direction is better. */
  public enum Better {
    LOWER,
    HIGHER,
    NEITHER
  }

  /** True for what the people of the day are asked for. */
  public boolean asked() {
    return assessor == null && timing.by().asked();
  }

  /** True where the value that counts comes from a recording. */
  public boolean recorded() {
    return timing.by().recorded();
  }

  /** True if it declares the same worthwhile difference as another, 0.5 being 0.50. */
  public boolean worthwhileAs(Measure other) {
    BigDecimal theirs = other.worthwhile;
    return worthwhile == null || theirs == null
        ? worthwhile == theirs
        : worthwhile.compareTo(theirs) == 0;
  }
}
