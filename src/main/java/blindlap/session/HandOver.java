package blindlap.session;

import blindlap.plan.Plan;
import blindlap.plan.Timetable;
import blindlap.session.day.DeviationKind;
import blindlap.session.day.LapId;
import blindlap.session.day.LapState;
import blindlap.session.day.Source;
import blindlap.timing.TimeRecord;
import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The bike is handed over, as the Ride page has it: by the helper who works from paper, or by
 * nobody. What departs from the plan is recorded with it and told after unsealing.
 */
public final class HandOver {
  private final SessionState state;

  public HandOver(SessionState state) {
    this.state = state;
  }

  /**
   * Hands the bike over without the helper's page; nothing if the rider has it already.
   *
   * @param stint from 1; 0 = the warm-up
   * @param now by the clock on the wall
   */
  public Outcome withoutPage(int stint, Instant now) {
    if (state.day().mayStart(stint)) {
      return new Outcome.Accepted(List.of());
    }
    if (AloneCommands.alone(state) && !state.mounted().containsKey(stint)) {
      return Outcome.refused(SessionFault.NOT_MOUNTED, "", stint);
    }
    boolean again = state.handedOver(stint);
    Outcome outcome = new DayCommands(state).stint(stint, new Fact.BikeHandedOver(stint));
    if (outcome instanceof Outcome.Refused) {
      return outcome;
    }
    List<Fact> facts = new ArrayList<>(((Outcome.Accepted) outcome).facts());
    if (again || state.day().helperHandsOver() && !state.helperRecords().containsKey(stint)) {
      facts.add(new Fact.DeviationNoted(stint, DeviationKind.WITHOUT_HAND_OVER, ""));
    }
    if (!again) {
      early(stint, now).ifPresent(facts::add);
    }
    return new Outcome.Accepted(facts);
  }

  /**
   * Without signal the rider read the code on the plate: a hand-over said by the rider, once a
   * stint. Where the helper's page hands over and had not, that is a departure from the plan.
   *
   * @param stint from 1; 0 = the warm-up
   * @param when the rider said it
   */
  public Outcome plateRead(int stint, Instant when) {
    if (state.entries().stream().anyMatch(e -> e.entry().fact().equals(new PlateRead(stint)))) {
      return new Outcome.Accepted(List.of());
    }
    if (AloneCommands.alone(state) && !state.mounted().containsKey(stint)) {
      return Outcome.refused(SessionFault.NOT_MOUNTED, "", stint);
    }
    Outcome outcome = new DayCommands(state).stint(stint, new PlateRead(stint));
    boolean before = PhonesHeard.beforeHandOver(stint, when, state.entries());
    if (outcome instanceof Outcome.Refused || state.handedOver(stint) && !before) {
      return outcome;
    }
    List<Fact> facts = new ArrayList<>(((Outcome.Accepted) outcome).facts());
    boolean nothing = !state.handedOver(stint) && !state.helperRecords().containsKey(stint);
    if (before || state.day().helperHandsOver() && nothing) {
      facts.add(new Fact.DeviationNoted(stint, DeviationKind.WITHOUT_HAND_OVER, ""));
    }
    if (!state.handedOver(stint)) {
      early(stint, when).ifPresent(facts::add);
    }
    return new Outcome.Accepted(facts);
  }

  /**
   * A hand-over sooner than a swap takes, counted from the end of the lap before. Where someone
   * rides knowing what is fitted, no wait can tell anything.
   */
  private Optional<Fact> early(int stint, Instant now) {
    Plan plan = state.plan();
    Timetable timetable = plan.timetable();
    if (timetable == null || plan.unblinded() || !state.hasKey()) {
      return Optional.empty();
    }
    long planned = timetable.swap().multiply(BigDecimal.valueOf(60)).longValue();
    return lapEnded(stint)
        .map(end -> Duration.between(end, now).toSeconds())
        .filter(waited -> waited >= 0 && waited < planned)
        .map(
            waited ->
                new Fact.DeviationNoted(
                    stint, DeviationKind.EARLY_HAND_OVER, waited + " s of " + planned + " s"));
  }

  /** When the last lap before a stint ended: its watch's stop, or when it was said to be done. */
  private Optional<Instant> lapEnded(int stint) {
    Instant ended = null;
    for (StoredEntry stored : state.entries()) {
      Fact fact = stored.entry().fact();
      boolean warmUp = fact instanceof Fact.WarmUpRidden && stint == 1;
      Instant when = stored.entry().when();
      boolean lap = warmUp || fact instanceof Fact.LapRidden ridden && before(ridden, stint);
      if (lap && (ended == null || when.isAfter(ended))) {
        ended = when;
      }
    }
    Instant said = ended;
    return Optional.ofNullable(said)
        .map(at -> stopped(stint).filter(stop -> stop.isBefore(at)).orElse(at));
  }

  private static boolean before(Fact.LapRidden ridden, int stint) {
    return ridden.source() == Source.SCREEN && ridden.lap().stint() == stint - 1;
  }

  private Optional<Instant> stopped(int stint) {
    if (stint < 2) {
      return Optional.empty();
    }
    LapId last = new LapId(stint - 1, state.plan().laps().perStint());
    return state.lap(last).map(LapState::times).stream()
        .flatMap(times -> times.values().stream())
        .filter(time -> time.typed() == null)
        .map(TimeRecord::stopped)
        .max(Instant::compareTo);
  }
}
