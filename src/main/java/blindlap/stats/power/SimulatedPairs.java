package blindlap.stats.power;

import blindlap.fault.Require;
import blindlap.stats.distribution.Interval;
import blindlap.stats.distribution.Quantiles;
import java.util.Arrays;

/**
 * Simulated days of three or more setups, of which one differs from all others by one of several
 * true differences in units of noise.
 */
public final class SimulatedPairs {
  private final double[] differences;
  private final int days;
  private final int setups;
  private final long[][] tally;

  SimulatedPairs(double[] differences, int days, int setups, long[][] tally) {
    this.differences = differences.clone();
    this.days = days;
    this.setups = setups;
    this.tally = Arrays.stream(tally).map(long[]::clone).toArray(long[][]::new);
  }

  /**
   * How such a day would end, as shares of days.
   *
   * @param differ the setups are found to differ at all
   * @param pair one named pair that differs is told apart, on average over these pairs
   * @param any at least one pair that differs is told apart
   * @param all every pair that differs is told apart
   * @param wrong a pair that does not differ is told apart
   * @param error largest standard error of these shares
   */
  public record Odds(
      double differ, double pair, double any, double all, double wrong, double error) {}

  /** Number of days. */
  public int days() {
    return days;
  }

  /**
   * These days and others of the same plan and differences.
   *
   * @throws IllegalArgumentException if the differences are others
   */
  public SimulatedPairs and(SimulatedPairs more) {
    if (!Arrays.equals(differences, more.differences) || setups != more.setups) {
      throw new IllegalArgumentException("days of another plan");
    }
    long[][] both = new long[tally.length][differences.length];
    for (int row = 0; row < both.length; row++) {
      for (int step = 0; step < differences.length; step++) {
        both[row][step] = tally[row][step] + more.tally[row][step];
      }
    }
    return new SimulatedPairs(differences, days + more.days, setups, both);
  }

  /** Standard error of a simulated share. */
  public double error(double share) {
    return Math.sqrt(share * (1 - share) / days);
  }

  /**
   * How days end.
   *
   * @param at place of the true difference among those simulated
   */
  public Odds odds(int at) {
    double[] shares = {share(0, at), pair(at), share(4, at), share(2, at), share(3, at)};
    double error = Arrays.stream(shares).map(this::error).max().orElse(0);
    return new Odds(shares[0], shares[1], shares[2], shares[3], shares[4], error);
  }

  private double share(int row, int at) {
    return (double) tally[row][at] / days;
  }

  private double pair(int at) {
    return (double) tally[1][at] / ((double) days * (setups - 1));
  }

  /**
   * The difference at which a pair is told apart with this power, between the simulated ones by
   * straight lines.
   *
   * @param sd noise, above 0
   * @param from first place of a rising ladder of differences among those simulated
   * @return in the unit of {@code sd}; NaN outside the ladder
   */
  public double difference(double sd, double power, int from) {
    return Require.positive("sd", sd) * crossing(Require.innerProportion("power", power), from);
  }

  /** 95 % interval of {@link #difference} over repetitions of the simulation. */
  public Interval differenceError95(double sd, double power, int from) {
    double half = Quantiles.Z_975 * error(power);
    return new Interval(
        sd * crossing(Math.max(0, power - half), from),
        sd * crossing(Math.min(1, power + half), from));
  }

  private double crossing(double power, int from) {
    if (pair(from) >= power) {
      return Double.NaN;
    }
    for (int at = from + 1; at < differences.length; at++) {
      double below = pair(at - 1);
      double here = pair(at);
      if (here >= power) {
        double along = (power - below) / (here - below);
        return differences[at - 1] + along * (differences[at] - differences[at - 1]);
      }
    }
    return Double.NaN;
  }
}
