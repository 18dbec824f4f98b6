package blindlap.session.day;

import blindlap.plan.Plan;
import blindlap.plan.TellingRun;
import blindlap.plan.Timetable;
import java.math.BigDecimal;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * A session's day as rider and starter may know it, whoever opened the key in the meantime: what
 * was planned, what was ridden and said so far. It does not change, and nothing it holds depends on
 * the order.
 *
 * @param id which session
 * @param plan the committed plan
 * @param step where the session stands
 * @param codes the codes of all stints in ridden order
 * @param laps laps with anything recorded, in order
 * @param guesses guesses by stint
 * @param stintsHandedOver stints whose bike was handed over; 0 = the warm-up
 * @param helperHandsOver true once the helper has used the page, whose hand-over is then waited for
 * @param bikeOut the stint for which the bike is with the rider, 0 = the warm-up; null while it is
 *     with the helper
 * @param warmUps number of warm-up laps ridden
 * @param reasonsPastCap how often someone said why one more lap than agreed is ridden
 * @param cutAfter the stint after which the day was cut short, 0 for none; null if it was not
 * @param covariates what was said of covariates
 */
public record Day(
    SessionId id,
    Plan plan,
    Step step,
    List<Integer> codes,
    SortedMap<LapId, LapState> laps,
    SortedMap<Integer, Guess> guesses,
    SortedSet<Integer> stintsHandedOver,
    boolean helperHandsOver,
    @Nullable Integer bikeOut,
    int warmUps,
    int reasonsPastCap,
    @Nullable Integer cutAfter,
    SortedMap<CovariateAt, BigDecimal> covariates) {

  public Day {
    codes = List.copyOf(codes);
    laps = Collections.unmodifiableSortedMap(new TreeMap<>(laps));
    guesses = Collections.unmodifiableSortedMap(new TreeMap<>(guesses));
    covariates = Collections.unmodifiableSortedMap(new TreeMap<>(covariates));
    stintsHandedOver = Collections.unmodifiableSortedSet(new TreeSet<>(stintsHandedOver));
  }

  /**
   * The code of a stint.
   *
   * @param stint from 1
   */
  public int code(int stint) {
    return codes.get(stint - 1);
  }

  /** What is known of a lap, if anything is. */
  public Optional<LapState> lap(LapId lap) {
    return Optional.ofNullable(laps.get(lap));
  }

  /** True if a lap is recorded as ridden. */
  public boolean ridden(LapId lap) {
    return lap(lap).filter(LapState::ridden).isPresent();
  }

  /** True if a lap of a stint is under way or ridden. */
  public boolean stintBegun(int stint) {
    return laps.values().stream()
        .anyMatch(lap -> lap.id().stint() == stint && (lap.ridden() || lap.underWay()));
  }

  /** True if the bike was handed over for a stint; 0 = the warm-up. */
  public boolean handedOver(int stint) {
    return stintsHandedOver.contains(stint);
  }

  /** Last stint whose bike was handed over; 0 for none. */
  public int handedOver() {
    return stintsHandedOver.isEmpty() ? 0 : stintsHandedOver.last();
  }

  /**
   * True if a lap of a stint may start: the bike was handed over, and where the helper uses the
   * page it has not come back since. What is started goes on, and what is ridden is scored,
   * wherever the bike is.
   */
  public boolean mayStart(int stint) {
    return handedOver(stint) && (!helperHandsOver || bikeOut != null && bikeOut == stint);
  }

  /** The stint with which the day ends: the plan's last one unless it was cut short. */
  public int lastStint() {
    return cutAfter == null ? plan.stints() : cutAfter;
  }

  /** The next lap to record, if any is left: of a void trial none is. */
  public Optional<LapId> nextLap() {
    int perStint = plan.laps().perStint();
    for (int lap = 1; lap <= lastStint() * perStint; lap++) {
      LapId at = LapId.ofDay(lap, perStint);
      if (!ridden(at) && !inVoidTrial(at.stint())) {
        return Optional.of(at);
      }
    }
    return Optional.empty();
  }

  /** True if a stint belongs to a trial that an event spoiled: nothing more of it is ridden. */
  public boolean inVoidTrial(int stint) {
    TellingRun run = plan.telling();
    if (run == null || stint < 1) {
      return false;
    }
    int trial = run.trial(stint);
    return laps
        .subMap(new LapId(run.firstStint(trial), 1), new LapId(run.lastStint(trial) + 1, 1))
        .values()
        .stream()
        .anyMatch(lap -> lap.voided().isPresent());
  }

  /**
   * The lap that was done last, while nothing is recorded of the one after it: it may be opened
   * again. Settling laps have nothing to open.
   */
  public Optional<LapId> reopenable() {
    Optional<LapId> last =
        laps.values().stream()
            .filter(LapState::ridden)
            .map(LapState::id)
            .max(Comparator.naturalOrder());
    return last.filter(lap -> step.day() && lap.lap() > plan.laps().settling())
        .filter(lap -> laps.tailMap(lap).size() == 1);
  }

  /** Number of laps recorded as ridden. */
  public int lapsRidden() {
    return (int) laps.values().stream().filter(LapState::ridden).count();
  }

  /** Number of laps ridden so far, warm-up included. */
  public int lapsSoFar() {
    return warmUps + lapsRidden();
  }

  /** The latest stint of which any lap is ridden; 0 if none is. */
  public int latestStint() {
    return laps.values().stream()
        .filter(LapState::ridden)
        .mapToInt(lap -> lap.id().stint())
        .max()
        .orElse(0);
  }

  /** True while warm-up laps are to be ridden and no other lap is. */
  public boolean warmingUp() {
    return warmUps < plan.laps().warmUp() && lapsRidden() == 0;
  }

  /** The stint that is ridden now or next, the latest one once all are; 0 for the warm-up. */
  public int stintNow() {
    return warmingUp() ? 0 : nextLap().map(LapId::stint).orElseGet(this::latestStint);
  }

  /** Most laps agreed to, warm-up included; empty if no cap was set. */
  public Optional<Integer> lapCap() {
    return Optional.ofNullable(plan.timetable()).map(Timetable::lapBudget);
  }

  /**
   * True if every lap agreed to is ridden and nobody has said why another is. Each reason is good
   * for one lap.
   */
  public boolean capReached() {
    return lapCap().filter(most -> lapsSoFar() >= most + reasonsPastCap).isPresent();
  }
}
