package blindlap.review;

import blindlap.fault.DayFault;
import blindlap.fault.Unusable;
import blindlap.plan.Measure;
import blindlap.plan.Setup;
import blindlap.stats.compare.ManySetups;
import blindlap.stats.compare.TwoSetups;
import blindlap.stats.distribution.Interval;
import blindlap.stats.noise.RiderNoise;
import blindlap.stats.order.Sampling;
import blindlap.stats.pool.AveragedSessions;
import blindlap.stats.pool.PooledSession;
import blindlap.stats.pool.StratifiedSessions;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * Numbers of a session of a series, in the setups' order of its first plan.
 *
 * @param rider who rode
 * @param session for the stratified test; empty for three and more setups
 * @param estimate second less first setup on the scale of the analysis; NaN for three and more
 * @param standardError of the estimate
 * @param noise from stint to stint
 * @param stints number of stints used
 * @param ranking how far each setup lies above the first
 * @param interval95 of the session alone
 * @param interval90 of the session alone
 */
record SeriesNumbers(
    String rider,
    Optional<PooledSession> session,
    double estimate,
    double standardError,
    RiderNoise noise,
    int stints,
    List<Double> ranking,
    Optional<Interval> interval95,
    Optional<Interval> interval90) {
  /**
   * Compares a session.
   *
   * @param ids ids of the setups in the order of the series' first plan
   * @throws Unusable if it cannot be compared
   */
  static SeriesNumbers of(DayRecord day, List<String> ids) {
    if (day.masks().filter(masks -> !masks.isRead()).isPresent()) {
      throw new Unusable("masks", "have not been read.", DayFault.MASKS_UNREAD);
    }
    Measure measure = day.plan().primary().orElseThrow();
    TakenOut out = takenOut(day, measure);
    return ids.size() == 2 ? two(day, out, ids) : many(day, measure, out, ids);
  }

  private static TakenOut takenOut(DayRecord day, Measure measure) {
    return TakenOut.of(day, measure, StintValues.counted(day, measure));
  }

  private static SeriesNumbers two(DayRecord day, TakenOut out, List<String> ids) {
    StintValues stints = out.stints();
    PooledSession session = session(day, out, ids);
    int[] order = session.order();
    TwoSetups own =
        TwoSetups.compare(
            session.set(),
            order,
            stints.values(),
            stints.valid(),
            out.nuisance(),
            Sampling.PREFERRED);
    if (own.noVariation()) {
      throw new Unusable("values", "did not vary from stint to stint.", DayFault.NO_VARIATION);
    }
    return new SeriesNumbers(
        day.plan().rider(),
        Optional.of(session),
        own.estimate(),
        own.noiseSd() / Math.sqrt(own.c()),
        RiderNoise.of(own),
        own.used(),
        List.of(0.0, own.estimate()),
        own.curve().interval(0.95),
        own.curve().interval(0.90));
  }

  private static PooledSession session(DayRecord day, TakenOut out, List<String> ids) {
    boolean flipped = !ids(day).equals(ids);
    int[] order = day.key().setups();
    for (int i = 0; flipped && i < order.length; i++) {
      order[i] = 1 - order[i];
    }
    return new PooledSession(
        day.plan().rule().assignments(),
        order,
        out.stints().values(),
        out.stints().valid(),
        out.nuisance());
  }

  /**
   * What a session of two setups says of a measure; empty where it cannot be compared or too many
   * of its values are missing.
   */
  static Optional<PooledSession> session(DayRecord day, Measure measure, List<String> ids) {
    TakenOut out = takenOut(day, measure);
    if (out.stints().missingShare() > Analysis.MOST_MISSING) {
      return Optional.empty();
    }
    PooledSession session = session(day, out, ids);
    try {
      StratifiedSessions.estimate(session);
      return Optional.of(session);
    } catch (Unusable cannotBeCompared) {
      return Optional.empty();
    }
  }

  private static SeriesNumbers many(
      DayRecord day, Measure measure, TakenOut out, List<String> ids) {
    StintValues stints = out.stints();
    ManySetups result =
        ManySetups.compare(
            day.plan().rule().assignments(),
            day.key().setups(),
            stints.values(),
            stints.valid(),
            out.nuisance(),
            Sampling.PREFERRED);
    double[] above =
        new ManyComparison(measure, stints, result, OptionalDouble.empty(), List.of(), Set.of())
            .aboveFirst();
    List<String> own = ids(day);
    List<Double> ranking = ids.stream().map(id -> above[own.indexOf(id)]).toList();
    return new SeriesNumbers(
        day.plan().rider(),
        Optional.empty(),
        Double.NaN,
        Double.NaN,
        RiderNoise.of(result),
        stints.used(),
        ranking.stream().map(value -> value - ranking.get(0)).toList(),
        Optional.empty(),
        Optional.empty());
  }

  private static List<String> ids(DayRecord day) {
    return day.plan().setups().stream().map(Setup::id).toList();
  }

  /** A rider's sessions averaged, each counted once. */
  static SeriesFinding.Rider average(List<SeriesNumbers> own) {
    int n = own.size();
    List<Double> ranking = new ArrayList<>();
    for (int setup = 0; setup < own.get(0).ranking.size(); setup++) {
      int at = setup;
      ranking.add(own.stream().mapToDouble(s -> s.ranking.get(at)).average().orElseThrow());
    }
    boolean compared = own.stream().noneMatch(s -> Double.isNaN(s.estimate));
    Optional<AveragedSessions> mean =
        compared
            ? Optional.of(
                AveragedSessions.of(
                    own.stream().mapToDouble(s -> s.estimate).toArray(),
                    own.stream().mapToDouble(s -> s.standardError).toArray(),
                    own.stream().mapToInt(s -> s.noise.df()).toArray()))
            : Optional.empty();
    return new SeriesFinding.Rider(
        own.get(0).rider,
        n,
        mean.map(AveragedSessions::estimate).orElse(Double.NaN),
        mean.map(AveragedSessions::standardError).orElse(Double.NaN),
        n == 1 ? own.get(0).interval95 : mean.map(m -> m.interval(0.95)),
        n == 1 ? own.get(0).interval90 : mean.map(m -> m.interval(0.90)),
        RiderNoise.pooled(own.stream().map(s -> s.noise).toList()).sd(),
        own.stream().mapToInt(s -> s.stints).average().orElseThrow(),
        ranking);
  }
}
