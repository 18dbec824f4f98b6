package blindlap.review;

import blindlap.plan.Covariate;
import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.session.SessionState;
import blindlap.session.day.Step;
import blindlap.stats.noise.LapNoise;
import blindlap.stats.noise.PooledCorrelation;
import blindlap.stats.noise.RiderNoise;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.Sampling;
import blindlap.stats.power.Detectable;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/**
 * A rider's noise on a trail in one measure over all days that tell of it. Days count together only
 * where measure, unit, scale and the number of scored laps a stint are the same: a mean of two laps
 * is steadier than one lap.
 *
 * @param rider who
 * @param trail where
 * @param measure what, as the latest day describes it
 * @param scoredLaps scored laps a stint
 * @param days oldest first, at least one
 * @param apart what days with two and more scored laps a stint, however many, tell of lap noise and
 *     stint noise apart
 */
public record NoiseRecord(
    String rider,
    String trail,
    Measure measure,
    int scoredLaps,
    List<NoiseDay> days,
    List<LapNoise> apart) {
  public NoiseRecord {
    days = List.copyOf(days);
    apart = List.copyOf(apart);
  }

  /** Lap noise and stint noise over the days that tell them apart; empty if none does. */
  public Optional<LapNoise> split() {
    return apart.isEmpty() ? Optional.empty() : Optional.of(LapNoise.pooled(apart));
  }

  private record What(String name, Measure.Kind kind, String unit, boolean ratio, int scored) {
    static What of(Measure measure, int scored) {
      return new What(
          measure.name().strip().toLowerCase(Locale.ROOT),
          measure.kind(),
          measure.unit(),
          measure.scale() == blindlap.stats.compare.Scale.RATIO,
          scored);
    }
  }

  /**
   * Collects the noise of one rider on one trail, a record a measure, primary measures first.
   *
   * @param states sessions of that rider and trail; those that tell nothing yet are passed over
   * @param open makes the record of an unsealed session
   */
  public static List<NoiseRecord> of(
      List<SessionState> states, Function<SessionState, DayRecord> open) {
    Map<What, NoiseRecord> found = new LinkedHashMap<>();
    List<SessionState> oldestFirst = new ArrayList<>(states);
    oldestFirst.sort(
        Comparator.comparing((SessionState s) -> s.plan().day())
            .thenComparing(SessionState::committedAt));
    for (SessionState state : oldestFirst) {
      Optional<Function<Measure, NoiseDay>> day = day(state, open);
      for (Measure measure : day.isEmpty() ? List.<Measure>of() : measures(state.plan())) {
        int scored = state.plan().laps().scored();
        NoiseDay told = day.orElseThrow().apply(measure);
        found.merge(
            What.of(measure, scored),
            new NoiseRecord(
                state.plan().rider(),
                state.plan().trail(),
                measure,
                scored,
                List.of(told),
                List.of()),
            NoiseRecord::then);
      }
    }
    List<NoiseRecord> records = List.copyOf(found.values());
    return records.stream().map(record -> record.told(records)).toList();
  }

  /**
   * What a session without a key tells, a record a measure: an open noise run as far as it is
   * ridden, or an old day.
   */
  public static List<NoiseRecord> ofOneDay(SessionState state) {
    Plan plan = state.plan();
    List<NoiseRecord> records = new ArrayList<>();
    for (Measure measure : measures(plan)) {
      NoiseDay day =
          state
              .plainDay()
              .map(old -> NoiseDay.ofPlainDay(state, old, measure))
              .orElseGet(() -> NoiseDay.ofNoiseRun(state, measure));
      records.add(
          new NoiseRecord(
              plan.rider(),
              plan.trail(),
              measure,
              plan.laps().scored(),
              List.of(day),
              day.split().stream().toList()));
    }
    return records;
  }

  /** Lap noise and stint noise are the same however many laps were ridden. */
  private NoiseRecord told(List<NoiseRecord> all) {
    List<LapNoise> split =
        all.stream()
            .filter(other -> other.isAbout(measure))
            .flatMap(other -> other.days.stream())
            .flatMap(day -> day.split().stream())
            .toList();
    return new NoiseRecord(rider, trail, measure, scoredLaps, days, split);
  }

  private NoiseRecord then(NoiseRecord later) {
    List<NoiseDay> all = new ArrayList<>(days);
    all.addAll(later.days);
    return new NoiseRecord(later.rider, later.trail, later.measure, scoredLaps, all, List.of());
  }

  private static List<Measure> measures(Plan plan) {
    List<Measure> sorted = new ArrayList<>(plan.measures());
    sorted.sort(Comparator.comparing(m -> m.role() != Measure.Role.PRIMARY));
    return sorted;
  }

  private static Optional<Function<Measure, NoiseDay>> day(
      SessionState state, Function<SessionState, DayRecord> open) {
    if (state.step() == Step.ABANDONED) {
      return Optional.empty();
    }
    if (state.unsealed()) {
      DayRecord record = open.apply(state);
      return Optional.of(measure -> NoiseDay.of(record, measure));
    }
    if (state.plainDay().isPresent()) {
      return Optional.of(
          measure -> NoiseDay.ofPlainDay(state, state.plainDay().orElseThrow(), measure));
    }
    return state.hasKey() || state.step().day()
        ? Optional.empty()
        : Optional.of(measure -> NoiseDay.ofNoiseRun(state, measure));
  }

  /** Days that have a noise. */
  public List<NoiseDay> told() {
    return days.stream().filter(day -> day.noise().isPresent()).toList();
  }

  /** How a covariate went with the measure over the days that tell; empty if none does. */
  public Optional<PooledCorrelation> correlation(Covariate covariate) {
    return PooledCorrelation.of(
        days.stream()
            .flatMap(day -> day.covariates().stream())
            .filter(each -> each.covariate().sameAs(covariate))
            .map(CovariateSeen::seen)
            .toList());
  }

  /** The covariates that its days tell of, as the latest of them declare them. */
  public List<Covariate> covariates() {
    List<Covariate> found = new ArrayList<>();
    for (int i = days.size() - 1; i >= 0; i--) {
      days.get(i).covariates().stream()
          .map(CovariateSeen::covariate)
          .filter(each -> found.stream().noneMatch(each::sameAs))
          .forEach(found::add);
    }
    return List.copyOf(found);
  }

  /** √(Σ df·sd²/Σ df) over the days; empty if none has a noise. */
  public Optional<RiderNoise> pooled() {
    List<RiderNoise> each = days.stream().flatMap(day -> day.noise().stream()).toList();
    return each.isEmpty() ? Optional.empty() : Optional.of(RiderNoise.pooled(each));
  }

  /** Share of void laps over all days; 0 without laps. */
  public double voidShare() {
    int laps = days.stream().mapToInt(NoiseDay::laps).sum();
    return laps == 0 ? 0 : days.stream().mapToInt(NoiseDay::voidLaps).sum() / (double) laps;
  }

  /**
   * The difference that a day of two setups in blocks of four shows with 80 % probability at this
   * noise, on the scale of the analysis; empty if no noise is known.
   *
   * @param stints a multiple of 4, at least 12
   */
  public Optional<Double> canShow(int stints) {
    Assignments set = Assignments.rule(2, stints).block(4).build();
    return pooled()
        .filter(noise -> noise.sd() > 0)
        .map(
            noise ->
                Detectable.of(set, measure.drift(), Sampling.PREFERRED)
                    .difference(noise.sd(), 0.8));
  }

  /** True for the same measure, whatever the number of scored laps. */
  public boolean isAbout(Measure other) {
    return isAbout(other, scoredLaps);
  }

  /** True for the same measure counted the same way. */
  public boolean isAbout(Measure other, int scored) {
    return What.of(measure, scoredLaps).equals(What.of(other, scored));
  }
}
