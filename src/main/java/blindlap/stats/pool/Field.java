package blindlap.stats.pool;

import blindlap.fault.StatsException;
import blindlap.stats.distribution.Interval;
import blindlap.stats.distribution.StudentizedRange;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.apache.commons.math3.distribution.FDistribution;
import org.jspecify.annotations.Nullable;

/**
 * Several setups over several days of one rider, trail and measure (docs/method.md#field): least
 * squares of day × drift and setup with one noise, and all pairs with Tukey's and Kramer's
 * intervals (Tukey 1953; Kramer 1956, Biometrics 12:307; cited from memory).
 *
 * <p>The intervals hold only if the lead of a setup does not change from day to day.
 */
public final class Field {
  /**
   * Two setups.
   *
   * @param first the setup whose name comes first
   * @param second the other
   * @param estimate second less first; NaN where no days lead from one to the other
   * @param standardError of the estimate, on {@link Field#df()}
   * @param days number of days that hold both
   */
  public record Pair(String first, String second, double estimate, double standardError, int days) {
    /** False where no days lead from one to the other. */
    public boolean known() {
      return !Double.isNaN(estimate);
    }
  }

  /**
   * Whether the days agree: F of leads that change from day to day against leads that do not.
   *
   * @param p upper tail
   */
  public record AgreementOfDays(double f, int df1, int df2, double p) {}

  /**
   * One more day of two setups.
   *
   * @param first the setup whose name comes first
   * @param second the other
   * @param widest largest half-width of the 95 % intervals of all pairs after it, the noise staying
   *     as it is; infinite where a pair would still not be known
   */
  public record NextDay(String first, String second, double widest) {}

  private static final double LEVEL = 0.95;

  private final FieldSums sums;
  private final List<String> names;
  private final List<Pair> pairs;
  private final int df;
  private final double residualSd;
  private final @Nullable AgreementOfDays agreement;

  private Field(
      FieldSums sums,
      List<String> names,
      List<Pair> pairs,
      int df,
      double residualSd,
      @Nullable AgreementOfDays agreement) {
    this.sums = sums;
    this.names = names;
    this.pairs = pairs;
    this.df = df;
    this.residualSd = residualSd;
    this.agreement = agreement;
  }

  /**
   * Fits the days together.
   *
   * @throws StatsException if there is no day, a day's values do not fit, or no degree of freedom
   *     is left
   */
  public static Field of(List<FieldDay> days) {
    if (days.isEmpty()) {
      throw new StatsException("days", "is empty, but at least 1 is needed.");
    }
    SortedMap<String, Integer> names = new TreeMap<>();
    days.forEach(day -> day.setups().forEach(name -> names.put(name, 0)));
    int at = 0;
    for (String name : names.keySet()) {
      names.put(name, at++);
    }
    FieldSums together = new FieldSums(names.size());
    double apart = 0;
    int apartRank = 0;
    for (int d = 0; d < days.size(); d++) {
      FieldSums alone = FieldSums.of(days.get(d), d, names);
      together.add(alone);
      alone.solve();
      apart += alone.left();
      apartRank += alone.rank();
    }
    together.solve();
    int df = together.freedom() - together.rank();
    if (df < 1) {
      throw new StatsException("days", "leave no degree of freedom for the noise.");
    }
    double sd = Math.sqrt(Math.max(0, together.left()) / df);
    List<String> sorted = List.copyOf(names.keySet());
    return new Field(
        together,
        sorted,
        pairs(days, sorted, together, sd),
        df,
        sd,
        agreement(together, apart, apartRank));
  }

  private static List<Pair> pairs(
      List<FieldDay> days, List<String> names, FieldSums together, double sd) {
    List<Pair> pairs = new ArrayList<>();
    for (int a = 0; a < names.size(); a++) {
      for (int b = a + 1; b < names.size(); b++) {
        String first = names.get(a);
        String second = names.get(b);
        int both =
            (int)
                days.stream()
                    .filter(day -> day.setups().contains(first) && day.setups().contains(second))
                    .count();
        boolean known = together.known(a, b);
        pairs.add(
            new Pair(
                first,
                second,
                known ? together.difference(a, b) : Double.NaN,
                known ? sd * Math.sqrt(together.unitVariance(a, b)) : Double.NaN,
                both));
      }
    }
    return List.copyOf(pairs);
  }

  private static @Nullable AgreementOfDays agreement(FieldSums together, double apart, int rank) {
    int df1 = rank - together.rank();
    int df2 = together.freedom() - rank;
    if (df1 < 1 || df2 < 1 || apart <= 0) {
      return null;
    }
    double f = Math.max(0, together.left() - apart) / df1 / (apart / df2);
    double p = 1 - new FDistribution(null, df1, df2).cumulativeProbability(f);
    return new AgreementOfDays(f, df1, df2, p);
  }

  /** All pairs, names sorted. */
  public List<Pair> pairs() {
    return pairs;
  }

  /** Stints used less nuisance columns of every day less what tells the setups apart. */
  public int df() {
    return df;
  }

  /** Stint-to-stint standard deviation of all days together, with {@link #df()}. */
  public double residualSd() {
    return residualSd;
  }

  /** Whether the days agree; empty where they do not overlap enough to tell. */
  public Optional<AgreementOfDays> agreement() {
    return Optional.ofNullable(agreement);
  }

  /** All pairs together hold their differences with 95 %; empty where a pair is not known. */
  public Optional<Interval> interval95(Pair pair) {
    if (!pair.known() || residualSd == 0) {
      return Optional.empty();
    }
    return Optional.of(Interval.around(pair.estimate(), reach(df) * pair.standardError()));
  }

  private double reach(int freedom) {
    return StudentizedRange.of(sums.setups(), freedom).quantile(LEVEL) / Math.sqrt(2);
  }

  /** Largest half-width of the intervals of all pairs; infinite where a pair is not known. */
  public double widest() {
    return widest(sums, df);
  }

  private double widest(FieldSums of, int freedom) {
    double largest = 0;
    for (int a = 0; a < names.size(); a++) {
      for (int b = a + 1; b < names.size(); b++) {
        if (!of.known(a, b)) {
          return Double.POSITIVE_INFINITY;
        }
        largest = Math.max(largest, of.unitVariance(a, b));
      }
    }
    return reach(freedom) * residualSd * Math.sqrt(largest);
  }

  /**
   * What one more day would bring, by formula (docs/method.md#field-next): for every pair that such
   * a day could hold, in the order of {@link #pairs}.
   *
   * @param stints of that day
   * @param columns what is removed of it, its mean included
   */
  public List<NextDay> next(int stints, int columns) {
    if (stints <= columns) {
      throw new StatsException("stints", "must be more than what is removed of the day.");
    }
    List<NextDay> next = new ArrayList<>();
    for (int a = 0; a < names.size(); a++) {
      for (int b = a + 1; b < names.size(); b++) {
        FieldSums more = sums.with(a, b, stints, columns);
        next.add(
            new NextDay(names.get(a), names.get(b), widest(more, more.freedom() - more.rank())));
      }
    }
    return List.copyOf(next);
  }
}
