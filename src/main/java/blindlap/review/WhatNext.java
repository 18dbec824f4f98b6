package blindlap.review;

import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plan.Rule;
import blindlap.plan.Schedule;
import blindlap.stats.compare.StintSummary;
import blindlap.stats.compare.Verdict;
import blindlap.stats.distribution.Interval;
import blindlap.stats.noise.LapNoise;
import blindlap.stats.noise.LapSplit;
import blindlap.stats.noise.RiderNoise;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What more riding could show (docs/method.md#more-days): the difference that one and three more
 * such days would show on 8 of 10, from this day's own noise with its interval, and what would
 * lower it. Never a forecast of how the question ends: the day was picked for being unsettled.
 *
 * <p>Differences are on the scale of the analysis; two setups, any two of three and more, or the
 * lowest and the highest level. No other level is ever proposed.
 *
 * @param noise of this day
 * @param days what days like this one could show, fewest first; three and more setups and steps
 *     days have no pooled analysis, and so one day only
 * @param gains what would lower the difference that one such day shows
 * @param needed how long a repeat of a steps day must be; empty for other days, and where no
 *     worthwhile difference is declared
 */
public record WhatNext(
    RiderNoise noise, List<Days> days, List<Gain> gains, Optional<NeededStints> needed) {
  private static final int POOLED = 3;

  /** A gain of less than this is not worth a sentence. */
  private static final double WORTH_SAYING = 0.95;

  private static final int MORE_LAPS = 2;

  /**
   * More such days, pooled as a declared series without this one.
   *
   * @param more their number
   * @param difference what they show on 8 of 10; NaN if they can never show anything
   * @param range the same over the 95 % interval of the noise
   */
  public record Days(int more, double difference, Interval range) {}

  /** What is changed for a gain. */
  public enum Change {
    /** More stints a day, by the same rule. */
    STINTS,
    /** Blocks of so many stints, as many stints as now. */
    BLOCKS,
    /** More scored laps a stint. How much that helps depends on what this day does not tell. */
    LAPS,
    /** So many days, declared as a series before riding. */
    SERIES,
    /** Two of the setups only, as many stints as now, in blocks of so many. */
    TWO_SETUPS
  }

  /**
   * What one change makes of the difference that a day shows on 8 of 10.
   *
   * @param change what is changed
   * @param from what it is now; 0 where it is no number
   * @param to what it would be
   * @param best the difference then; the smallest it can be where that depends on what is unknown
   * @param worst the largest it can be; the same as {@code best} where it is known
   * @param fits false if the day as timed has no room for it
   */
  public record Gain(Change change, int from, int to, double best, double worst, boolean fits) {}

  public WhatNext {
    days = List.copyOf(days);
    gains = List.copyOf(gains);
  }

  /**
   * For an unsettled comparison of two setups or steps day; empty for others, and without
   * variation.
   */
  public static Optional<WhatNext> of(DayRecord day, Comparison comparison) {
    Verdict verdict = comparison.verdict().orElse(Verdict.NO_VARIATION);
    return verdict.settled() && verdict != Verdict.COULD_NOT_SHOW
        ? Optional.empty()
        : of(
            day.plan(),
            comparison.measure(),
            comparison.riderNoise(),
            split(day, comparison.measure(), comparison.stints()));
  }

  /** For three and more setups that are not all told apart. */
  public static Optional<WhatNext> of(DayRecord day, ManyComparison comparison) {
    int pairs = comparison.result().pairs().size();
    return !comparison.tested() || comparison.separatedPairs().size() == pairs
        ? Optional.empty()
        : of(
            day.plan(),
            comparison.measure(),
            RiderNoise.of(comparison.result()),
            split(day, comparison.measure(), comparison.stints()));
  }

  /** How much of its noise the laps of a stint shared on a day, as far as it tells. */
  private static LapSplit split(DayRecord day, Measure measure, StintValues stints) {
    return LapNoise.of(day.asFitted(), stints.laps(), measure.drift())
        .map(LapNoise::split)
        .orElseGet(() -> LapSplit.unknown(day.plan().laps().scored()));
  }

  /** For a day that was not settled, by its rule and noise alone; empty without noise. */
  static Optional<WhatNext> of(Plan plan, Measure measure, RiderNoise noise, LapSplit split) {
    if (!(noise.sd() > 0)) {
      return Optional.empty();
    }
    Shows shows = new Shows(plan, measure.drift());
    int setups = plan.setups().size();
    int stints = plan.stints();
    Rule rule = plan.protocol().rule(setups, stints);
    List<Days> days = new ArrayList<>();
    days.add(days(1, shows.difference(rule, 1), noise));
    if (setups == 2) {
      days.add(days(POOLED, shows.difference(rule, POOLED), noise));
    }
    return Optional.of(
        new WhatNext(
            noise,
            days,
            gains(plan, shows, days.get(0), noise, split),
            NeededStints.of(plan, measure, shows, noise)));
  }

  private static Days days(int more, double unit, RiderNoise noise) {
    Interval sd = noise.interval95IfNormal();
    return new Days(more, unit * noise.sd(), new Interval(unit * sd.low(), unit * sd.high()));
  }

  private static List<Gain> gains(
      Plan plan, Shows shows, Days now, RiderNoise noise, LapSplit split) {
    int setups = plan.setups().size();
    int stints = plan.stints();
    List<Gain> gains = new ArrayList<>();
    int more = moreStints(plan);
    if (more <= Rule.MOST_STINTS) {
      double then = shows.difference(plan.protocol().rule(setups, more), 1) * noise.sd();
      boolean fits = more <= Schedule.mostStints(plan);
      gains.add(new Gain(Change.STINTS, stints, more, then, then, fits));
    }
    int block = setups == 2 ? 4 : setups;
    if (stints % block == 0) {
      double then = shows.difference(Rule.blocks(setups, stints, block), 1) * noise.sd();
      gains.add(new Gain(Change.BLOCKS, 0, block, then, then, true));
    }
    gains.add(moreLaps(plan, now, split));
    if (setups == 2 && plan.series() == null) {
      double then = shows.difference(plan.protocol().rule(2, stints), 2) * noise.sd();
      gains.add(new Gain(Change.SERIES, 1, 2, then, then, true));
    } else if (!plan.oneDifference() && stints % 4 == 0) {
      double then = shows.difference(Rule.blocks(2, stints, 4), 1) * noise.sd();
      gains.add(new Gain(Change.TWO_SETUPS, setups, 4, then, then, true));
    }
    gains.removeIf(gain -> !helps(gain, now));
    return gains;
  }

  /** The more of the noise lies in the stint, the less more laps help; none of it: most. */
  private static Gain moreLaps(Plan plan, Days now, LapSplit split) {
    int laps = plan.laps().scored();
    double best = now.difference() * gain(plan, split, split.share().low());
    double worst = now.difference() * gain(plan, split, split.share().high());
    return new Gain(Change.LAPS, laps, laps + MORE_LAPS, best, worst, lapsFit(plan));
  }

  private static double gain(Plan plan, LapSplit split, double share) {
    int laps = plan.laps().scored();
    StintSummary summary = plan.primary().map(Measure::summary).orElse(StintSummary.MEAN);
    return split.factor(share, laps + MORE_LAPS, summary) / split.factor(share, laps, summary);
  }

  private static boolean helps(Gain gain, Days now) {
    return Double.isNaN(now.difference())
        ? Double.isFinite(gain.best())
        : gain.best() <= WORTH_SAYING * now.difference();
  }

  /** Half as many again, in whole blocks, and as many of each setup. */
  private static int moreStints(Plan plan) {
    Integer block = plan.protocol().block();
    int setups = plan.setups().size();
    int step = block == null ? setups : block;
    int wanted = plan.stints() + Math.max(step, plan.stints() / 2);
    return wanted / step * step;
  }

  private static boolean lapsFit(Plan plan) {
    Plan.Laps laps = plan.laps();
    return plan.stints()
        <= Schedule.mostStints(
            plan, new Plan.Laps(laps.warmUp(), laps.settling(), laps.scored() + MORE_LAPS));
  }
}
