package blindlap.review;

import blindlap.plan.Measure;
import blindlap.stats.compare.ManySetups;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * One measure of a session with three or more setups: do they differ at all, and which pairs
 * (docs/method.md#many-setups). It carries no verdict phrase and no total order.
 *
 * @param measure which measure
 * @param stints the analysed units
 * @param result the numbers
 * @param adjusted the omnibus p, adjusted among the secondary measures after Holm; empty for others
 * @param caveats what a reader must know beside the numbers
 */
public record ManyComparison(
    Measure measure,
    StintValues stints,
    ManySetups result,
    OptionalDouble adjusted,
    Set<Caveat> caveats) {
  public ManyComparison {
    caveats = java.util.Collections.unmodifiableSet(new java.util.TreeSet<>(caveats));
  }

  ManyComparison withAdjusted(double p) {
    return new ManyComparison(measure, stints, result, OptionalDouble.of(p), caveats);
  }

  /** The same measure with other numbers, for a result beside this one. */
  public ManyComparison with(ManySetups other) {
    return new ManyComparison(measure, stints, other, OptionalDouble.empty(), caveats);
  }

  /**
   * Pairs of a measure watched for harm that differ, so that one of the two did worse. Whether by
   * the harm that was declared is not tested with three and more setups.
   */
  public List<ManySetups.Pair> worse() {
    return measure.role() == Measure.Role.WATCH_FOR_HARM
            && measure.better() != Measure.Better.NEITHER
        ? separatedPairs()
        : List.of();
  }

  /** Index of the setup of a pair that did worse. */
  public int worse(ManySetups.Pair pair) {
    boolean secondLarger = pair.estimate() > 0;
    boolean moreIsWorse = measure.better() == Measure.Better.LOWER;
    return secondLarger == moreIsWorse ? pair.second() : pair.first();
  }

  /** A p as it may be said: NaN where too many values are missing for a test. */
  public double said(double p) {
    return caveats.contains(Caveat.MISSING) ? Double.NaN : p;
  }

  /** True if a test may be said. */
  public boolean tested() {
    return !caveats.contains(Caveat.MISSING) && !result.noVariation();
  }

  /** True if the setups differ at all in this measure at level .05. */
  public boolean differs() {
    return tested() && adjusted.orElse(result.p()) <= 0.05;
  }

  /** True if a pair differs at level .05, adjusted for the number of pairs. */
  public boolean separated(ManySetups.Pair pair) {
    return tested() && pair.pAdjusted() <= 0.05;
  }

  /** The pairs that differ. */
  public List<ManySetups.Pair> separatedPairs() {
    return result.pairs().stream().filter(this::separated).toList();
  }

  /** Setups from the smallest to the largest mean, drift removed. */
  public List<Integer> ranked() {
    double[] above = aboveFirst();
    List<Integer> setups = new ArrayList<>();
    for (int i = 0; i < above.length; i++) {
      setups.add(i);
    }
    setups.sort((a, b) -> Double.compare(above[a], above[b]));
    return setups;
  }

  /** How far each setup lies above the first. */
  public double[] aboveFirst() {
    int setups = (int) Math.round((1 + Math.sqrt(1 + 8.0 * result.pairs().size())) / 2);
    double[] above = new double[setups];
    for (ManySetups.Pair pair : result.pairs()) {
      if (pair.first() == 0) {
        above[pair.second()] = pair.estimate();
      }
    }
    return above;
  }

  /** True if every neighbouring pair of the ranking differs, so that a total order may be said. */
  public boolean ordered() {
    List<Integer> ranked = ranked();
    for (int i = 0; i + 1 < ranked.size(); i++) {
      int a = Math.min(ranked.get(i), ranked.get(i + 1));
      int b = Math.max(ranked.get(i), ranked.get(i + 1));
      if (separatedPairs().stream().noneMatch(p -> p.first() == a && p.second() == b)) {
        return false;
      }
    }
    return true;
  }
}
