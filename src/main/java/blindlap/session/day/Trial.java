package blindlap.session.day;

import blindlap.plan.TellingRun;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * A trial of a telling run as a day tells it: two or three stints of one lap, and one answer. The
 * answer is the guess of its last stint; it names a lap of the trial, not what was fitted.
 *
 * @param number its number in the run, from 1
 * @param first its first stint
 * @param last its last stint
 * @param ridden true if all its laps are ridden
 * @param voided what voided it, if an event did
 * @param answer what was answered, if anything was
 */
public record Trial(
    int number,
    int first,
    int last,
    boolean ridden,
    Optional<VoidEvent> voided,
    Optional<Guess> answer) {

  /** Where a trial stands. */
  public enum Standing {
    /** All laps ridden, a lap named, no event: it counts. */
    ANSWERED,
    /** An event spoiled a lap before the answer: it does not count. */
    VOID,
    /** Its laps are not all ridden, or nothing was answered. */
    OPEN
  }

  /** The trials of a day in ridden order; none of any other kind of session. */
  public static List<Trial> of(Day day) {
    TellingRun run = day.plan().telling();
    return run == null
        ? List.of()
        : IntStream.rangeClosed(1, run.trials()).mapToObj(number -> of(day, run, number)).toList();
  }

  /** The trial of a stint, from 1; empty of any other kind of session, and for the warm-up. */
  public static Optional<Trial> at(Day day, int stint) {
    TellingRun run = day.plan().telling();
    return run == null || stint < 1 || stint > run.stints()
        ? Optional.empty()
        : Optional.of(of(day, run, run.trial(stint)));
  }

  private static Trial of(Day day, TellingRun run, int number) {
    int first = run.firstStint(number);
    int last = run.lastStint(number);
    List<LapId> laps =
        IntStream.rangeClosed(first, last).mapToObj(stint -> new LapId(stint, 1)).toList();
    return new Trial(
        number,
        first,
        last,
        laps.stream().allMatch(day::ridden),
        laps.stream()
            .flatMap(lap -> day.lap(lap).flatMap(LapState::voided).stream())
            .map(LapState.Voided::event)
            .findFirst(),
        Optional.ofNullable(day.guesses().get(last)).filter(guess -> guess.setup() != null));
  }

  /** Where it stands. */
  public Standing standing() {
    if (voided.isPresent()) {
      return Standing.VOID;
    }
    return ridden && answer.isPresent() ? Standing.ANSWERED : Standing.OPEN;
  }

  /** True if the void of a stint's trial stands for good; false of any other kind of session. */
  public static boolean goneBy(Day day, int stint) {
    return at(day, stint).filter(trial -> trial.goneBy(day)).isPresent();
  }

  /** True once its void stands for good: the run has gone on since, or its day is over. */
  private boolean goneBy(Day day) {
    return !day.step().day() || day.handedOver() > last || day.latestStint() > last;
  }

  /** The lap that was named, from 1 within the trial; null if none was. */
  public @Nullable Integer named() {
    return answer.map(Guess::setup).map(place -> place + 1).orElse(null);
  }
}
