package blindlap.stats.order;

import blindlap.fault.StatsException;
import java.util.Arrays;
import java.util.List;

/**
 * What is removed from a day before setups are compared: a drift over the stint positions, and
 * covariates that no setup can touch, such as the wind (docs/method.md#covariates).
 */
public final class Nuisance {
  /** More covariates than these cost more degrees of freedom than a day can spare. */
  public static final int MOST = 2;

  private final Drift drift;
  private final double[][] covariates;

  private Nuisance(Drift drift, double[][] covariates) {
    this.drift = drift;
    this.covariates = covariates;
  }

  /** A drift alone. */
  public static Nuisance of(Drift drift) {
    return new Nuisance(drift, new double[0][]);
  }

  /**
   * A drift and covariates.
   *
   * @param covariates at most {@link #MOST}, one value per stint each; NaN where not known, which
   *     masks the stint
   * @throws StatsException if there are more, their lengths differ or a value is infinite
   */
  public static Nuisance of(Drift drift, List<double[]> covariates) {
    if (covariates.size() > MOST) {
      throw new StatsException(
          "covariates", "has " + covariates.size() + " covariates, but at most " + MOST + " fit.");
    }
    double[][] own = new double[covariates.size()][];
    for (int i = 0; i < own.length; i++) {
      own[i] = covariates.get(i).clone();
      if (own[i].length != own[0].length) {
        throw new StatsException("covariates[" + i + "]", "must be as long as the one before it.");
      }
      for (int j = 0; j < own[i].length; j++) {
        if (Double.isInfinite(own[i][j])) {
          throw new StatsException("covariates[" + i + "][" + j + "]", "must be a finite number.");
        }
      }
    }
    return new Nuisance(drift, own);
  }

  public Drift drift() {
    return drift;
  }

  /** Number of covariates. */
  public int covariates() {
    return covariates.length;
  }

  /** One value per stint; NaN where not known. */
  public double[] covariate(int i) {
    return covariates[i].clone();
  }

  /** Only these covariates, by index. */
  public Nuisance only(List<Integer> kept) {
    return new Nuisance(drift, kept.stream().map(i -> covariates[i]).toArray(double[][]::new));
  }

  /** Number of nuisance columns, the constant included, if all can be told apart. */
  public int columns() {
    return drift.columns() + covariates.length;
  }

  /**
   * The stints that can be used: those of the argument on which every covariate is known.
   *
   * @throws StatsException if a covariate has another number of stints
   */
  public boolean[] known(boolean[] use) {
    boolean[] known = use.clone();
    for (int i = 0; i < covariates.length; i++) {
      if (covariates[i].length != use.length) {
        throw new StatsException(
            "covariates[" + i + "]",
            "has " + covariates[i].length + " values for " + use.length + " stints.");
      }
      for (int j = 0; j < known.length; j++) {
        known[j] &= !Double.isNaN(covariates[i][j]);
      }
    }
    return known;
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Nuisance theirs
        && drift == theirs.drift
        && Arrays.deepEquals(covariates, theirs.covariates);
  }

  @Override
  public int hashCode() {
    return 31 * drift.hashCode() + Arrays.deepHashCode(covariates);
  }
}
