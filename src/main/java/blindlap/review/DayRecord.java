package blindlap.review;

import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.seal.OpenKey;
import blindlap.session.Fact;
import blindlap.session.Recorded;
import blindlap.session.SessionState;
import blindlap.session.day.CovariateAt;
import blindlap.session.day.Guess;
import blindlap.session.day.LapId;
import blindlap.session.day.LapState;
import blindlap.session.day.Twice;
import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * Everything that the analysis of a day uses, and nothing else: from a notebook or from a data
 * package, the numbers are the same.
 *
 * @param session id of the session
 * @param plan the plan that the finding is over: the committed one but at masked labels
 * @param key what was sealed, opened
 * @param laps laps with anything recorded, in order
 * @param guesses guesses by stint
 * @param blindBroken stints in which the rider knew, with what happened
 * @param lastStint last stint of a day that was cut short; the plan's stints otherwise
 * @param fits the helper's records by stint
 * @param remarks what else was said and done; it changes no number
 * @param handlings how long handlings took, by stint, 0 = before the warm-up; those of which
 *     nothing is known are missing
 * @param covariates what was said of covariates
 * @param looks looks before the end that were taken, in order
 * @param masks what is known of masked labels, over which the plan and the order then are; empty at
 *     any other level
 * @param recorded times on the way, from recordings
 */
public record DayRecord(
    String session,
    Plan plan,
    OpenKey key,
    List<Lap> laps,
    SortedMap<Integer, Guess> guesses,
    SortedMap<Integer, String> blindBroken,
    int lastStint,
    SortedMap<Integer, HelperFit> fits,
    List<Remark> remarks,
    SortedMap<Integer, Handling> handlings,
    SortedMap<CovariateAt, BigDecimal> covariates,
    List<TakenLook> looks,
    Optional<Masks> masks,
    RecordedTimes recorded) {

  /**
   * A lap as recorded.
   *
   * @param values those that count, by measure
   * @param setAside by measure, other values that machines recorded apart, by their rank; empty for
   *     one that was taken out
   * @param timed by measure, what a recording and a watch say of its time, where a recording does
   */
  public record Lap(
      LapId id,
      boolean ridden,
      Map<String, BigDecimal> values,
      Optional<LapState.Voided> voided,
      String note,
      Map<String, List<Optional<BigDecimal>>> setAside,
      Map<String, TimedValue> timed) {
    public Lap {
      timed = java.util.Collections.unmodifiableMap(new TreeMap<>(timed));
      values = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(values));
      setAside = java.util.Collections.unmodifiableMap(new TreeMap<>(setAside));
    }

    /** A lap of which nothing is set aside. */
    public Lap(
        LapId id,
        boolean ridden,
        Map<String, BigDecimal> values,
        Optional<LapState.Voided> voided,
        String note) {
      this(id, ridden, values, voided, note, Map.of(), Map.of());
    }

    /** A lap of a session with the values that count. */
    static Lap of(Plan plan, Recorded recorded, LapState lap) {
      Map<String, List<Optional<BigDecimal>>> aside = new TreeMap<>();
      Map<String, BigDecimal> values = new LinkedHashMap<>();
      for (Measure measure : plan.measures()) {
        String name = measure.name();
        recorded.counting(plan, measure, lap).ifPresent(value -> values.put(name, value));
        Twice twice = lap.twice().get(name);
        // Of what a recording gives, watches that disagree are beside what counts.
        if (twice != null && !measure.recorded()) {
          aside.put(
              name, twice.setAside().stream().map(v -> Optional.ofNullable(v.value())).toList());
        }
      }
      Map<String, TimedValue> timed = TimedValue.of(plan, recorded, lap);
      return new Lap(lap.id(), lap.ridden(), values, lap.voided(), lap.note(), aside, timed);
    }

    /** True if the lap, or a sector on the way of this measure, is void. */
    boolean isVoid(Measure measure) {
      TimedValue time = measure.recorded() ? timed.get(measure.name()) : null;
      return voided.isPresent() || time != null && time.voided();
    }

    /** Number of values of a measure that are set aside. */
    int setAside(String measure) {
      return setAside.getOrDefault(measure, List.of()).size();
    }

    /**
     * The same with another value of a measure that was set aside in place of the one that counts.
     *
     * @param which from 1; the last one where there are fewer
     */
    Lap with(String measure, int which) {
      List<Optional<BigDecimal>> aside = setAside.getOrDefault(measure, List.of());
      if (aside.isEmpty()) {
        return this;
      }
      Map<String, BigDecimal> other = new LinkedHashMap<>(values);
      other.remove(measure);
      aside.get(Math.min(which, aside.size()) - 1).ifPresent(v -> other.put(measure, v));
      return new Lap(id, ridden, other, voided, note, setAside, timed);
    }
  }

  public DayRecord {
    remarks = List.copyOf(remarks);
    laps = List.copyOf(laps);
    guesses = java.util.Collections.unmodifiableSortedMap(new TreeMap<>(guesses));
    blindBroken = java.util.Collections.unmodifiableSortedMap(new TreeMap<>(blindBroken));
    fits = java.util.Collections.unmodifiableSortedMap(new TreeMap<>(fits));
    covariates = java.util.Collections.unmodifiableSortedMap(new TreeMap<>(covariates));
    handlings = java.util.Collections.unmodifiableSortedMap(new TreeMap<>(handlings));
    looks = List.copyOf(looks);
  }

  /** A day of whose handlings nothing is known, without covariates. */
  public DayRecord(
      String session,
      Plan plan,
      OpenKey key,
      List<Lap> laps,
      SortedMap<Integer, Guess> guesses,
      SortedMap<Integer, String> blindBroken,
      int lastStint,
      SortedMap<Integer, HelperFit> fits,
      List<Remark> remarks) {
    this(
        session,
        plan,
        key,
        laps,
        guesses,
        blindBroken,
        lastStint,
        fits,
        remarks,
        new TreeMap<>(),
        new TreeMap<>(),
        List.of(),
        Optional.empty(),
        RecordedTimes.NONE);
  }

  /** The same day with masked labels, over which its order is. */
  public DayRecord with(Masks known) {
    return with(known.analysed(), handlings, covariates, looks, Optional.of(known), recorded);
  }

  /** The same day with times on the way. */
  public DayRecord with(RecordedTimes times) {
    return with(plan, handlings, covariates, looks, masks, times);
  }

  /** The plan as it was committed, its setups in the tester's order. */
  public Plan committedPlan() {
    return masks.map(Masks::committed).orElse(plan);
  }

  /** The last stint of which a lap was ridden; 0 if none was. */
  public int lastRidden() {
    return laps.stream().filter(Lap::ridden).mapToInt(lap -> lap.id().stint()).max().orElse(0);
  }

  /** The same day with the looks that were taken before its end. */
  public DayRecord with(List<TakenLook> taken) {
    return with(plan, handlings, covariates, taken, masks, recorded);
  }

  /** The same day with how long its handlings took. */
  public DayRecord with(SortedMap<Integer, Handling> timed) {
    return with(plan, timed, covariates, looks, masks, recorded);
  }

  /** The same day with what was said of covariates. */
  public DayRecord withCovariates(SortedMap<CovariateAt, BigDecimal> said) {
    return with(plan, handlings, said, looks, masks, recorded);
  }

  private DayRecord with(
      Plan over,
      SortedMap<Integer, Handling> timed,
      SortedMap<CovariateAt, BigDecimal> said,
      List<TakenLook> taken,
      Optional<Masks> known,
      RecordedTimes times) {
    return new DayRecord(
        session,
        over,
        key,
        laps,
        guesses,
        blindBroken,
        lastStint,
        fits,
        remarks,
        timed,
        said,
        taken,
        known,
        times);
  }

  /**
   * The record of an unsealed session.
   *
   * @param fits the helper's records, read from their opened texts
   * @param remarks what else was said and done
   * @throws IllegalStateException if the session is sealed
   */
  public static DayRecord of(
      SessionState state, SortedMap<Integer, HelperFit> fits, List<Remark> remarks) {
    return of(
        state,
        state.openKey().orElseThrow(() -> new IllegalStateException("the session is sealed")),
        fits,
        remarks);
  }

  /** The record of a session whose key has just been opened and verified. */
  public static DayRecord of(
      SessionState state, OpenKey key, SortedMap<Integer, HelperFit> fits, List<Remark> remarks) {
    SortedMap<Integer, String> broken = new TreeMap<>();
    for (Fact.BlindBroken fact : state.blindBroken()) {
      broken.merge(fact.stint(), fact.what(), (a, b) -> a + "; " + b);
    }
    Recorded recorded = state.recorded();
    DayRecord day =
        new DayRecord(
                state.id().text(),
                state.plan(),
                key,
                state.laps().stream().map(lap -> Lap.of(state.plan(), recorded, lap)).toList(),
                state.guesses(),
                broken,
                state.cutShort().map(Fact.DayCutShort::lastStint).orElse(state.plan().stints()),
                fits,
                remarks)
            .withCovariates(state.day().covariates())
            .with(state.looks().values().stream().map(TakenLook::of).toList())
            .with(RecordedTimes.of(state.recorded()));
    return Masks.of(state).map(day::with).orElse(day);
  }

  /** Remarks of a kind, in the order in which they were made. */
  public List<Remark> remarks(Remark.Kind kind) {
    return remarks.stream().filter(remark -> remark.kind() == kind).toList();
  }

  /** The order as letters, one per stint. */
  public String order() {
    return key.order();
  }

  /** The setup that was ridden under every name; empty in an ordinary session. */
  public Optional<Integer> ridden() {
    return key.nullRun();
  }

  /** Setup that the order names for a stint, from 1. */
  public int setup(int stint) {
    return key.setup(stint);
  }

  /** What is recorded of a lap. */
  public Optional<Lap> lap(LapId id) {
    return laps.stream().filter(lap -> lap.id().equals(id)).findFirst();
  }

  /** True if the day ended early. */
  public boolean cutShort() {
    return lastStint < plan.stints();
  }

  /** True if one setup was on throughout under every name. */
  public boolean nullRun() {
    return key.nullRun().isPresent();
  }

  /**
   * Stints on which another setup was on than the order names, or a level that is none of the
   * plan's; none in a null run.
   */
  public TreeSet<Integer> wrongFits() {
    boolean levels = plan.oneSetting() != null && !nullRun();
    TreeSet<Integer> wrong = levels ? fittedLevels().wrong() : new TreeSet<>();
    for (HelperFit fit : fits.values()) {
      Integer fitted = fit.fitted();
      if (!nullRun() && fitted != null && fit.stint() <= lastStint && fit.stint() > 0) {
        if (fitted != setup(fit.stint())) {
          wrong.add(fit.stint());
        }
      }
    }
    return wrong;
  }

  /** The setups as they were really on, by the helper's records. */
  public int[] asFitted() {
    int[] setups = key.setups();
    for (int stint : wrongFits()) {
      HelperFit fit = fits.get(stint);
      Integer fitted = fit == null ? null : fit.fitted();
      setups[stint - 1] = fitted == null ? setups[stint - 1] : fitted;
    }
    return setups;
  }

  private FittedLevels fittedLevels() {
    return new FittedLevels(plan, key.setups(), fits, lastStint);
  }

  /** Stints of a steps day whose measured level is not to the last digit the one planned. */
  public TreeSet<Integer> levelsOff() {
    return fittedLevels().off();
  }

  /** The level of a steps day that was on in every stint, as measured where it was measured. */
  public double[] levelsFitted() {
    return fittedLevels().at(asFitted());
  }
}
