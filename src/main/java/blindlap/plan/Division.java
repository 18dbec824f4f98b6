package blindlap.plan;

import blindlap.stats.distribution.Interval;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One way of dividing a day into stints and scored laps, and what it can show on 8 of 10 such days.
 * Differences are in the unit of the primary measure (per cent on the ratio scale), or in units of
 * the noise of laps of different stints where the noise is unknown.
 *
 * @param plan the plan with this rule, number of stints and scored laps
 * @param schedule the day against the clock
 * @param swaps real swaps expected
 * @param handlings how often parts are handled
 * @param source how the difference was found
 * @param ends the difference where the share of the noise that lies in the stint is the least that
 *     it may be, and where it is the most; equal where it is known
 * @param reach how far the worthwhile difference is reached
 * @param steps what it can show beside its trend, at the most that the noise may be; empty for
 *     other plans than steps days
 * @param longest true if no more stints of this rule with as many scored laps fit
 * @param best true for the one that shows the least difference at both ends
 */
public record Division(
    Plan plan,
    Schedule schedule,
    double swaps,
    Handlings handlings,
    DayAnswer.Source source,
    Interval ends,
    Reach reach,
    Optional<StepsShows> steps,
    boolean longest,
    boolean best) {

  /** How far a division reaches the worthwhile difference. */
  public enum Reached {
    /** Whatever the share of the noise in the stint. */
    EITHER_WAY,
    /** If at most so much of it lies in the stint. */
    AT_MOST,
    /** If at least so much of it lies in the stint. */
    AT_LEAST,
    /** Not, whatever the share. */
    NOT,
    /** Noise or worthwhile difference are not known. */
    UNKNOWN
  }

  /**
   * How far, and up to or from which share.
   *
   * @param share of one lap's noise variance that lies in the stint, 0 to 1; empty where it makes
   *     no difference
   */
  public record Reach(Reached reached, OptionalDouble share) {}

  /** Number of stints. */
  public int stints() {
    return plan.stints();
  }

  /** Scored laps a stint. */
  public int scored() {
    return plan.laps().scored();
  }

  /** Laps of the whole day, warm-up included. */
  public int laps() {
    return plan.laps().warmUp() + plan.lapsOfDay();
  }

  /** The least that it can show, over what is not known of the noise. */
  public double least() {
    return Math.min(ends.low(), ends.high());
  }

  /** The most. */
  public double most() {
    return Math.max(ends.low(), ends.high());
  }

  /** True if it is how a plan divides its day. */
  public boolean is(Plan other) {
    return stints() == other.stints()
        && scored() == other.laps().scored()
        && plan.protocol().equals(other.protocol());
  }

  /** The same, marked. */
  Division asBest() {
    return new Division(
        plan, schedule, swaps, handlings, source, ends, reach, steps, longest, true);
  }
}
