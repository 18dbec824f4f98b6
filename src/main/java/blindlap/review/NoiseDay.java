package blindlap.review;

import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.session.Fact;
import blindlap.session.PlainLap;
import blindlap.session.Recorded;
import blindlap.session.SessionState;
import blindlap.stats.compare.StintSummary;
import blindlap.stats.noise.LapNoise;
import blindlap.stats.noise.RiderNoise;
import blindlap.stats.noise.StintNoise;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * What one day tells of a rider's noise in one measure (docs/method.md#noise).
 *
 * @param session id of the session
 * @param day its date
 * @param source what sort of day
 * @param noise from stint to stint with setups and drift removed, on the scale of the analysis;
 *     empty if too few stints have a value
 * @param split how much of it lies in the lap and how much in the stint; empty with one scored lap
 *     a stint, or too few values
 * @param covariates how covariates went with the measure; empty where none was declared
 * @param drift fitted straight-line change over the day on that scale; NaN if it cannot be told
 * @param stints stints used
 * @param laps scored laps ridden
 * @param voidLaps those that are void
 */
public record NoiseDay(
    String session,
    LocalDate day,
    Source source,
    Optional<RiderNoise> noise,
    Optional<LapNoise> split,
    List<CovariateSeen> covariates,
    double drift,
    int stints,
    int laps,
    int voidLaps) {

  /** Sorts of days that tell of noise. */
  public enum Source {
    /** An unsealed comparison. */
    COMPARISON,
    /** An unsealed null run that was concealed from the rider. */
    NULL_RUN,
    /** One setup throughout, said openly. */
    NOISE_RUN,
    /** An old day brought in from a file, not blinded. */
    PLAIN_DAY,
    /** An unsealed steps day, its levels removed one by one like setups, whatever their trend. */
    STEPS_DAY;

    /** True if the rider did not know what was on. */
    public boolean blinded() {
      return this == COMPARISON || this == STEPS_DAY || this == NULL_RUN;
    }
  }

  /**
   * Of an unsealed session. Setups are taken as they were really on; so are levels, each with a
   * mean of its own: what bends off their trend is no noise.
   */
  static NoiseDay of(DayRecord day, Measure measure) {
    StintValues stints =
        StintValues.of(day, measure.with(StintSummary.MEAN), StintValues.Laps.NOT_VOID);
    return of(
        day.session(),
        day.plan().day(),
        source(day),
        StintNoise.of(day.asFitted(), stints.values(), stints.valid(), measure.drift()),
        LapNoise.of(day.asFitted(), stints.laps(), measure.drift()),
        CovariateSeen.of(day, measure, stints),
        day.laps().stream()
            .filter(lap -> lap.ridden() && lap.id().lap() > day.plan().laps().settling())
            .map(lap -> lap.voided().isPresent())
            .toList());
  }

  private static Source source(DayRecord day) {
    if (day.nullRun()) {
      return Source.NULL_RUN;
    }
    return day.plan().steps() == null ? Source.COMPARISON : Source.STEPS_DAY;
  }

  /** Of an open noise run, once its day is closed. */
  static NoiseDay ofNoiseRun(SessionState state, Measure measure) {
    Plan plan = state.plan();
    Recorded recorded = state.recorded();
    StintValues stints =
        StintValues.of(
            plan,
            id -> state.lap(id).map(lap -> DayRecord.Lap.of(plan, recorded, lap)),
            measure.with(StintSummary.MEAN),
            StintValues.Laps.NOT_VOID);
    return of(
        state.id().text(),
        plan.day(),
        Source.NOISE_RUN,
        StintNoise.of(new int[plan.stints()], stints.values(), stints.valid(), measure.drift()),
        LapNoise.of(new int[plan.stints()], stints.laps(), measure.drift()),
        List.of(),
        state.laps().stream()
            .filter(lap -> lap.ridden() && lap.id().lap() > plan.laps().settling())
            .map(lap -> lap.voided().isPresent())
            .toList());
  }

  /** Of an old day; its stints have as many laps as its plan says. */
  static NoiseDay ofPlainDay(SessionState state, Fact.PlainDayImported old, Measure measure) {
    int each = state.plan().laps().scored();
    int last = old.laps().stream().mapToInt(PlainLap::position).max().orElse(0);
    int stints = (last + each - 1) / each;
    double[][] laps = new double[stints][each];
    for (double[] stint : laps) {
      Arrays.fill(stint, Double.NaN);
    }
    int[] setups = new int[stints];
    List<String> names = new ArrayList<>();
    for (PlainLap lap : old.laps()) {
      int at = (lap.position() - 1) / each;
      if (!names.contains(lap.setup())) {
        names.add(lap.setup());
      }
      setups[at] = names.indexOf(lap.setup());
      BigDecimal value = lap.values().get(measure.name());
      if (value != null && !lap.voided()) {
        laps[at][(lap.position() - 1) % each] = measure.scale().forward(value.doubleValue());
      }
    }
    double[] means = new double[stints];
    boolean[] valid = new boolean[stints];
    for (int i = 0; i < stints; i++) {
      means[i] = StintSummary.MEAN.of(laps[i]);
      valid[i] = !Double.isNaN(means[i]);
    }
    return of(
        state.id().text(),
        state.plan().day(),
        Source.PLAIN_DAY,
        StintNoise.of(setups, means, valid, measure.drift()),
        LapNoise.of(setups, laps, measure.drift()),
        List.of(),
        old.laps().stream().map(PlainLap::voided).toList());
  }

  private static NoiseDay of(
      String session,
      LocalDate day,
      Source source,
      StintNoise fit,
      Optional<LapNoise> split,
      List<CovariateSeen> covariates,
      List<Boolean> voids) {
    return new NoiseDay(
        session,
        day,
        source,
        fit.noise(),
        split,
        covariates,
        fit.change(),
        fit.used(),
        voids.size(),
        (int) voids.stream().filter(isVoid -> isVoid).count());
  }
}
