package blindlap.review;

import blindlap.plan.Measure;
import blindlap.stats.compare.HarmTest;
import blindlap.stats.compare.ManySetups;
import blindlap.stats.distribution.Interval;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
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
 * @param harms of a measure that is watched for harm: what each pair comes to; else empty
 * @param caveats what a reader must know beside the numbers
 */
public record ManyComparison(
    Measure measure,
    StintValues stints,
    ManySetups result,
    OptionalDouble adjusted,
    List<PairHarm> harms,
    Set<Caveat> caveats) {
  /** Where the interval of a pair lies against the worthwhile difference. */
  public enum Size {
    BEYOND,
    WITHIN,
    OPEN
  }

  /**
   * A watched harm between two setups (docs/method.md#pair-harm).
   *
   * @param pair the setups
   * @param found shown, ruled out of both, or not settled
   * @param interval the interval that decides whether it is shown, on the scale of the analysis:
   *     for all pairs and all watched measures together
   */
  public record PairHarm(ManySetups.Pair pair, HarmTest.Finding found, Interval interval) {}

  public ManyComparison {
    harms = List.copyOf(harms);
    caveats = java.util.Collections.unmodifiableSet(new java.util.TreeSet<>(caveats));
  }

  ManyComparison withAdjusted(double p) {
    return new ManyComparison(measure, stints, result, OptionalDouble.of(p), harms, caveats);
  }

  /** The same measure with other numbers, for a result beside this one. */
  public ManyComparison with(ManySetups other) {
    return new ManyComparison(measure, stints, other, OptionalDouble.empty(), List.of(), caveats);
  }

  ManyComparison withHarms(List<PairHarm> found) {
    return new ManyComparison(measure, stints, result, adjusted, found, caveats);
  }

  /**
   * The interval of a pair at 95 %, for all pairs together, on the scale of the analysis:
   * approximate; empty where nothing varies.
   */
  public Optional<Interval> shifts(ManySetups.Pair pair) {
    return result.interval(pair, 0.95);
  }

  /** The same as said: a difference in the unit, or a ratio on the ratio scale. */
  public Optional<Interval> interval(ManySetups.Pair pair) {
    return shifts(pair)
        .map(i -> new Interval(measure.scale().back(i.low()), measure.scale().back(i.high())));
  }

  /** The pair's interval against the worthwhile difference; empty without one or without a test. */
  public Optional<Size> against(ManySetups.Pair pair) {
    Optional<Interval> band = Comparison.band(measure);
    if (!tested() || band.isEmpty()) {
      return Optional.empty();
    }
    return shifts(pair).map(i -> against(i, band.get()));
  }

  static Size against(Interval interval, Interval band) {
    if (interval.low() > band.high() || interval.high() < band.low()) {
      return Size.BEYOND;
    }
    return interval.low() > band.low() && interval.high() < band.high() ? Size.WITHIN : Size.OPEN;
  }

  /** The pairs of which a harm as large as declared is shown. */
  public List<PairHarm> shownHarms() {
    return harms.stream().filter(h -> h.found() == HarmTest.Finding.SHOWN).toList();
  }

  /** Index of the setup of a pair that did worse. */
  public int worse(ManySetups.Pair pair) {
    boolean secondLarger = pair.estimate() > 0;
    boolean moreIsWorse = measure.better() == Measure.Better.LOWER;
    return secondLarger == moreIsWorse ? pair.second() : pair.first();
  }

  /** A p as it may be said: NaN where too many values are missing for a test. */
  public double said(double p) {
    return untested() ? Double.NaN : p;
  }

  /** True if a test may be said. */
  public boolean tested() {
    return !untested() && !result.noVariation();
  }

  /** True if no test may be said, whatever varied. */
  public boolean untested() {
    return caveats.contains(Caveat.MISSING) || caveats.contains(Caveat.ENDED_FREELY);
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
