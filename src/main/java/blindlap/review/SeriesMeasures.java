package blindlap.review;

import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.stats.compare.ConfidenceCurve;
import blindlap.stats.compare.HarmTest;
import blindlap.stats.compare.PValueAdjustment;
import blindlap.stats.distribution.Interval;
import blindlap.stats.order.Sampling;
import blindlap.stats.pool.PooledSession;
import blindlap.stats.pool.RidersMean;
import blindlap.stats.pool.StratifiedMeasures;
import blindlap.stats.pool.StratifiedSessions;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The measures of a series beside its primary one (docs/method.md#measures-of-a-series). One rider:
 * over the product of the days' orders. Several riders: by the mean of the riders with its t, never
 * by the product, which says nothing of riders in general. A session with another sort of measure
 * by that name, without variation, or with too many values missing is left out of that measure.
 */
final class SeriesMeasures {
  private final Plan first;
  private final List<String> ids;
  private final List<DayRecord> days;
  private final boolean oneRider;

  private SeriesMeasures(Plan first, List<String> ids, List<DayRecord> days) {
    this.first = first;
    this.ids = ids;
    this.days = days;
    this.oneRider = days.stream().map(day -> rider(day)).distinct().count() == 1;
  }

  /**
   * @param first the plan that declared the series, of two setups
   * @param ids of its setups
   * @param days the pooled sessions
   */
  static List<SeriesMeasure> of(Plan first, List<String> ids, List<DayRecord> days) {
    return days.isEmpty() || ids.size() != 2
        ? List.of()
        : new SeriesMeasures(first, ids, days).found();
  }

  private static String rider(DayRecord day) {
    return day.plan().rider().strip().toLowerCase(Locale.ROOT);
  }

  /** A measure with what each session says of it. */
  private record Said(Measure measure, List<Optional<PooledSession>> sessions, int fewest) {
    List<PooledSession> all() {
      return sessions.stream().flatMap(Optional::stream).toList();
    }
  }

  private List<SeriesMeasure> found() {
    List<Said> said = new ArrayList<>();
    for (Measure measure : first.measures()) {
      if (measure.role() != Measure.Role.PRIMARY) {
        Said each = said(measure);
        if (!each.all().isEmpty()) {
          said.add(each);
        }
      }
    }
    List<SeriesMeasure> found = new ArrayList<>();
    double[] harms = new double[WatchedHarms.watched(first).size()];
    Arrays.fill(harms, 1);
    List<Integer> watched = new ArrayList<>();
    List<HarmTest> tests = new ArrayList<>();
    for (Said each : said) {
      Pooled pooled = oneRider ? theseDays(each) : riders(each);
      found.add(pooled.measure());
      pooled
          .harm()
          .ifPresent(
              harm -> {
                harms[tests.size()] = harm.p();
                watched.add(found.size() - 1);
                tests.add(harm);
              });
    }
    adjust(found, said);
    double[] adjusted = harms.length == 0 ? harms : PValueAdjustment.HOLM.adjust(harms);
    for (int i = 0; i < tests.size(); i++) {
      int at = watched.get(i);
      found.set(at, found.get(at).withHarm(tests.get(i).adjustedTo(adjusted[i])));
    }
    return found;
  }

  private record Pooled(SeriesMeasure measure, Optional<HarmTest> harm) {}

  private Said said(Measure measure) {
    List<Optional<PooledSession>> sessions = new ArrayList<>();
    int[] left = new int[2];
    for (DayRecord day : days) {
      Optional<PooledSession> session =
          day.plan()
              .measure(measure.name())
              .filter(own -> alike(own, measure))
              .flatMap(own -> SeriesNumbers.session(day, own, ids));
      session.ifPresent(
          of -> {
            int[] order = of.order();
            for (int i = 0; i < order.length; i++) {
              left[order[i]] += of.valid()[i] && !Double.isNaN(of.values()[i]) ? 1 : 0;
            }
          });
      sessions.add(session);
    }
    return new Said(measure, sessions, Math.min(left[0], left[1]));
  }

  private static boolean alike(Measure own, Measure wanted) {
    return own.kind() == wanted.kind()
        && own.unit().equals(wanted.unit())
        && own.scale() == wanted.scale()
        && own.summary() == wanted.summary()
        && own.better() == wanted.better()
        && own.role() == wanted.role()
        && own.worthwhileAs(wanted);
  }

  private Pooled theseDays(Said said) {
    StratifiedSessions these = StratifiedSessions.compare(said.all(), Sampling.OF_SERIES);
    ConfidenceCurve curve = these.curve();
    SeriesMeasure measure =
        new SeriesMeasure(
            said.measure(),
            said.all().size(),
            these.estimate(),
            curve.interval(0.95),
            curve.interval(0.90),
            OptionalDouble.of(curve.p(0)),
            OptionalDouble.empty(),
            Optional.empty());
    return new Pooled(
        measure,
        band(said.measure())
            .map(
                band ->
                    HarmTest.of(
                        curve,
                        band.low(),
                        band.high(),
                        direction(said.measure()),
                        HarmTest.p(curve, band.low(), band.high()),
                        said.fewest())));
  }

  private Pooled riders(Said said) {
    Map<String, List<Double>> byRider = new LinkedHashMap<>();
    for (int i = 0; i < days.size(); i++) {
      PooledSession session = said.sessions().get(i).orElse(null);
      if (session != null) {
        byRider
            .computeIfAbsent(rider(days.get(i)), k -> new ArrayList<>())
            .add(StratifiedSessions.estimate(session));
      }
    }
    double[] means =
        byRider.values().stream()
            .mapToDouble(own -> own.stream().mapToDouble(Double::doubleValue).average().orElse(0))
            .toArray();
    Optional<RidersMean> mean = RidersMean.of(means);
    SeriesMeasure measure =
        new SeriesMeasure(
            said.measure(),
            said.all().size(),
            Arrays.stream(means).average().orElseThrow(),
            mean.map(m -> m.interval(0.95)),
            mean.map(m -> m.interval(0.90)),
            mean.map(m -> OptionalDouble.of(m.p(0))).orElse(OptionalDouble.empty()),
            OptionalDouble.empty(),
            Optional.empty());
    Optional<Interval> band = band(said.measure());
    return new Pooled(
        measure,
        mean.isEmpty() || band.isEmpty()
            ? Optional.empty()
            : Optional.of(
                mean.get().harm(band.get().low(), band.get().high(), direction(said.measure()))));
  }

  private static Optional<Interval> band(Measure measure) {
    return measure.role() == Measure.Role.WATCH_FOR_HARM
        ? Comparison.band(measure)
        : Optional.empty();
  }

  private static HarmTest.Direction direction(Measure measure) {
    return measure.better() == Measure.Better.HIGHER
        ? HarmTest.Direction.LESS_IS_HARM
        : HarmTest.Direction.MORE_IS_HARM;
  }

  /** Step-down over the product for one rider, Holm's for several. */
  private void adjust(List<SeriesMeasure> found, List<Said> said) {
    List<Integer> family = new ArrayList<>();
    for (int i = 0; i < found.size(); i++) {
      if (found.get(i).measure().role() == Measure.Role.SECONDARY && found.get(i).p().isPresent()) {
        family.add(i);
      }
    }
    if (family.isEmpty()) {
      return;
    }
    double[] adjusted =
        oneRider
            ? StratifiedMeasures.compare(
                    family.stream().map(i -> said.get(i).sessions()).toList(), Sampling.OF_SERIES)
                .pAdjusted()
            : PValueAdjustment.HOLM.adjust(
                family.stream().mapToDouble(i -> found.get(i).p().orElseThrow()).toArray());
    for (int i = 0; i < adjusted.length; i++) {
      found.set(family.get(i), found.get(family.get(i)).withAdjusted(adjusted[i]));
    }
  }
}
