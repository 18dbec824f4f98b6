package blindlap.ride;

import blindlap.plan.Blinding;
import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.session.day.Day;
import blindlap.session.day.Guess;
import blindlap.session.day.LapId;
import blindlap.session.day.LapState;
import blindlap.session.day.Trial;
import blindlap.timing.TimeRecord;
import blindlap.wording.day.RideTrialWords;
import blindlap.wording.day.RideWords;
import java.math.BigDecimal;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * What the Ride page shows: where the day stands, and of the lap in hand what was given so far. It
 * holds nothing of earlier laps and nothing of the key.
 *
 * @param stage what is asked now
 * @param lap the lap in hand; null where there is none
 * @param number of the lap over the day, or of the warm-up lap
 * @param of laps of the day, or warm-up laps
 * @param code code of the stint; empty where there is none
 * @param guessAsked true on the last scored lap of a stint, or of a trial, if guesses are asked
 * @param values given so far, times left out
 * @param watches each timed measure and its watch
 * @param note the lap's note
 * @param guess the stint's guess; null if none
 * @param conditions of the lap
 * @param voided true if the lap is void
 * @param ridden laps ridden so far, warm-up included
 * @param most laps agreed; null if no cap was set
 * @param helperHandsOver true where the helper uses the page and hands over there
 * @param locked true while the lap may not start: the bike is back with the helper
 * @param trial the trial of the lap in hand; null but in a telling run
 */
public record RideSheet(
    Stage stage,
    @Nullable LapId lap,
    int number,
    int of,
    String code,
    boolean guessAsked,
    Map<String, BigDecimal> values,
    Map<String, Watch> watches,
    String note,
    @Nullable Guess guess,
    Map<String, String> conditions,
    boolean voided,
    int ridden,
    @Nullable Integer most,
    boolean helperHandsOver,
    boolean locked,
    @Nullable Trial trial) {

  /** What is asked of the rider now. */
  public enum Stage {
    /** No session is open, or it has no plan for today. */
    NO_SESSION,
    /** Every lap agreed to is ridden: is there to be one more? */
    CAP,
    /** The bike is with the helper. */
    HAND_OVER,
    WARM_UP,
    /** A lap at the start of a stint that is never analysed. */
    SETTLING,
    SCORED,
    /** The lap in hand is done: only now about times. */
    DONE,
    /** Every lap of the plan is ridden, or the day was cut short. */
    ALL_RIDDEN,
    /** The day is closed. */
    OVER
  }

  /**
   * A watch as the rider may see it.
   *
   * @param state what it does
   * @param startedAt start of a running watch by the wall clock; null if it does not run
   * @param seconds the time, only where times may be shown and one counts
   * @param doubtful wall and monotonic time in seconds, only where times may be shown and they
   *     differ
   */
  public record Watch(
      State state,
      @Nullable Instant startedAt,
      @Nullable BigDecimal seconds,
      List<BigDecimal> doubtful) {
    /** What a watch does. */
    public enum State {
      READY,
      RUNNING,
      STOPPED
    }
  }

  /** Nothing to show. */
  public static final RideSheet NONE = bare(Stage.NO_SESSION, 0, 0, 0, null, false);

  public RideSheet {
    values = Map.copyOf(values);
    watches = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(watches));
    conditions = Map.copyOf(conditions);
  }

  /** True where the lap in hand is the last of its trial: the trial's answer is given here. */
  public boolean endsTrial() {
    return trial != null && stint() == trial.last();
  }

  /** True if an event may still spoil the lap in hand: a trial is void before its answer only. */
  public boolean mayBeSpoiled() {
    boolean inHand = lap != null && (stage == Stage.SCORED || stage == Stage.DONE);
    return inHand
        && !voided
        && (trial == null || trial.voided().isEmpty() && trial.answer().isEmpty());
  }

  /** The stint the page is about; 0 for the warm-up. */
  public int stint() {
    return lap == null ? 0 : lap.stint();
  }

  /**
   * "Stint 7 of 16", which lap of the stint or warm-up, "Trial 4 of 15, lap 2 of 3"; empty where
   * there is no lap.
   */
  String headline(Plan plan) {
    if (number == 0) {
      return "";
    }
    if (lap == null) {
      return RideWords.say("warm.up", number, of);
    }
    if (plan.telling() != null) {
      return RideTrialWords.headline(plan.telling(), lap.stint());
    }
    int per = plan.laps().perStint();
    return per == 1
        ? RideWords.say("stint", lap.stint(), plan.stints())
        : RideWords.say("stint.lap", lap.stint(), plan.stints(), lap.lap(), per);
  }

  /**
   * The sheet of a day.
   *
   * @param done the lap that was just done, while the page still speaks of it
   * @param again the lap that was opened again
   */
  static RideSheet of(Day day, Optional<LapId> done, Optional<LapId> again) {
    if (!day.step().day()) {
      return plain(Stage.OVER, day);
    }
    if (again.isPresent()) {
      return sheet(Stage.SCORED, day, again.get());
    }
    if (done.isPresent()) {
      return sheet(Stage.DONE, day, done.get());
    }
    Optional<LapId> next = day.nextLap();
    if (next.isPresent() && day.capReached()) {
      return sheet(Stage.CAP, day, next.get());
    }
    int warmUps = day.plan().laps().warmUp();
    if (day.warmingUp()) {
      return warmUp(day, warmUps);
    }
    return next.map(lap -> sheet(stage(day, lap), day, lap))
        .orElseGet(() -> plain(Stage.ALL_RIDDEN, day));
  }

  private static Stage stage(Day day, LapId lap) {
    if (!day.handedOver(lap.stint())) {
      return Stage.HAND_OVER;
    }
    return lap.lap() <= day.plan().laps().settling() ? Stage.SETTLING : Stage.SCORED;
  }

  private static RideSheet plain(Stage stage, Day day) {
    return bare(stage, 0, 0, day.lapsSoFar(), day.lapCap().orElse(null), day.helperHandsOver());
  }

  private static RideSheet warmUp(Day day, int warmUps) {
    Stage stage = day.handedOver(0) ? Stage.WARM_UP : Stage.HAND_OVER;
    return bare(
        stage,
        day.warmUps() + 1,
        warmUps,
        day.lapsSoFar(),
        day.lapCap().orElse(null),
        day.helperHandsOver());
  }

  /** A sheet about no scored lap: nothing to answer, nothing to time. */
  private static RideSheet bare(
      Stage stage, int number, int of, int soFar, @Nullable Integer cap, boolean helper) {
    return new RideSheet(
        stage, null, number, of, "", false, Map.of(), Map.of(), "", null, Map.of(), false, soFar,
        cap, helper, false, null);
  }

  private static RideSheet sheet(Stage stage, Day day, LapId lap) {
    Plan plan = day.plan();
    LapState known = day.lap(lap).orElse(null);
    Map<String, BigDecimal> values = new LinkedHashMap<>();
    Map<String, Watch> watches = new LinkedHashMap<>();
    boolean scored = lap.lap() > plan.laps().settling();
    boolean shown = stage == Stage.DONE && plan.blinding().times() == Blinding.Times.AFTER_SCORING;
    for (Measure measure : plan.askedOnTheDay()) {
      if (measure.kind().timed()) {
        if (scored) {
          watches.put(measure.name(), watch(known, measure.name(), shown));
        }
      } else if (known != null && known.values().containsKey(measure.name())) {
        values.put(
            measure.name(), java.util.Objects.requireNonNull(known.values().get(measure.name())));
      }
    }
    return new RideSheet(
        stage,
        lap,
        lap.ofDay(plan.laps().perStint()),
        plan.lapsOfDay(),
        String.valueOf(day.code(lap.stint())),
        plan.asksGuessAfter(lap.stint())
            && lap.lap() == plan.laps().perStint()
            && !day.inVoidTrial(lap.stint()),
        values,
        watches,
        known == null ? "" : known.note(),
        day.guesses().get(lap.stint()),
        known == null ? Map.of() : known.conditions(),
        known != null && known.voided().isPresent(),
        day.lapsSoFar(),
        day.lapCap().orElse(null),
        day.helperHandsOver(),
        stage == Stage.SCORED
            && !day.mayStart(lap.stint())
            && (known == null || !known.underWay() && !known.ridden()),
        Trial.at(day, lap.stint()).orElse(null));
  }

  private static Watch watch(@Nullable LapState lap, String measure, boolean shown) {
    if (lap == null) {
      return new Watch(Watch.State.READY, null, null, List.of());
    }
    Instant running = lap.running().get(measure);
    if (running != null) {
      return new Watch(Watch.State.RUNNING, running, null, List.of());
    }
    TimeRecord time = lap.times().get(measure);
    if (time == null) {
      return new Watch(Watch.State.READY, null, null, List.of());
    }
    if (!shown) {
      return new Watch(Watch.State.STOPPED, null, null, List.of());
    }
    List<BigDecimal> both =
        time.typed() == null && time.doubtful()
            ? List.of(
                BigDecimal.valueOf(time.wallNanos(), 9),
                BigDecimal.valueOf(time.monotonicNanos(), 9))
            : List.of();
    return new Watch(Watch.State.STOPPED, null, time.seconds(), both);
  }
}
