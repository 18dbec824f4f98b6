package blindlap.session.day;

import java.util.Comparator;

/**
 * Where a covariate is said.
 *
 * @param covariate its name in the plan
 * @param stint from 1
 * @param lap within the stint, from 1, settling laps first; 0 where it is said once for the stint
 */
public record CovariateAt(String covariate, int stint, int lap) implements Comparable<CovariateAt> {
  private static final Comparator<CovariateAt> ORDER =
      Comparator.comparingInt(CovariateAt::stint)
          .thenComparingInt(CovariateAt::lap)
          .thenComparing(CovariateAt::covariate);

  public CovariateAt {
    if (stint < 1 || lap < 0) {
      throw new IllegalArgumentException("stints are counted from 1, and laps");
    }
  }

  @Override
  public int compareTo(CovariateAt other) {
    return ORDER.compare(this, other);
  }
}
