package blindlap.desk;

import blindlap.desk.day.DayResult;
import blindlap.desk.day.KeyingIn;
import blindlap.desk.day.MeasureState;
import blindlap.desk.day.RiderDays;
import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.session.CovariateCommands;
import blindlap.session.DayCommands;
import blindlap.session.Fact;
import blindlap.session.HandOver;
import blindlap.session.KeyKnown;
import blindlap.session.LifeCommands;
import blindlap.session.Outcome;
import blindlap.session.ReasonFor;
import blindlap.session.SessionFault;
import blindlap.session.SessionState;
import blindlap.session.day.CovariateAt;
import blindlap.session.day.Day;
import blindlap.session.day.DeviationKind;
import blindlap.session.day.Guess;
import blindlap.session.day.LapId;
import blindlap.session.day.LapState;
import blindlap.session.day.SessionId;
import blindlap.session.day.Source;
import blindlap.session.day.VoidEvent;
import blindlap.timing.TimeRecord;
import blindlap.wording.day.RideWords;
import java.math.BigDecimal;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/** The rider's days, decided on the whole record and answered with the day alone. */
class RecordedDays implements RiderDays {
  /** Reason of a correction made on the score sheet itself, before the lap is done. */
  private static final String MOVED = "changed on the score sheet";

  /** The same on a lap that was done and then opened again. */
  private static final String OPENED_AGAIN = "changed on the score sheet, opened again";

  private final Sessions sessions;
  private final KeyingIn keyingIn;
  private final Clock clock;

  RecordedDays(Sessions sessions, KeyingIn keyingIn, Clock clock) {
    this.sessions = sessions;
    this.keyingIn = keyingIn;
    this.clock = clock;
  }

  /** Lets a decision on the latest state become entries. */
  Sessions.Result decide(SessionId id, Function<SessionState, Outcome> decision) {
    return sessions.act(id, decision);
  }

  /** When what is done now was said. */
  Instant said() {
    return clock.instant();
  }

  /**
   * True of what was said a while ago by someone who could not know what else had happened: what
   * was ridden then was ridden.
   */
  boolean late() {
    return false;
  }

  @Override
  public Optional<Day> day(SessionId id) {
    return sessions.state(id).map(SessionState::day);
  }

  @Override
  public KeyingIn keyingIn() {
    return keyingIn;
  }

  final DayResult act(SessionId id, Function<SessionState, Outcome> decision) {
    return decide(id, decision).day();
  }

  @Override
  public DayResult handedOver(SessionId id, int stint) {
    return act(id, latest -> new HandOver(latest).withoutPage(stint, said()));
  }

  @Override
  public DayResult warmUp(SessionId id) {
    return act(
        id,
        latest ->
            latest.capReached() && !late()
                ? Outcome.refused(SessionFault.LAP_CAP, "", latest.lapCap().orElseThrow())
                : commands(latest).stint(0, new Fact.WarmUpRidden(latest.warmUps() + 1)));
  }

  @Override
  public DayResult score(
      SessionId id, LapId lap, String measure, BigDecimal value, boolean knowsKey) {
    return act(
        id,
        latest -> {
          Outcome outcome = score(latest, lap, measure, value);
          return knowsKey ? new KeyKnown(latest).scored(outcome, lap.stint(), measure) : outcome;
        });
  }

  private DayCommands commands(SessionState latest) {
    DayCommands commands = new DayCommands(latest);
    return late() ? commands.unseen() : commands;
  }

  private Outcome score(SessionState latest, LapId lap, String measure, BigDecimal value) {
    Outcome outcome = commands(latest).score(lap, measure, value, Source.SCREEN);
    BigDecimal before = latest.lap(lap).map(l -> l.values().get(measure)).orElse(null);
    if (outcome instanceof Outcome.Refused || before == null) {
      return outcome;
    }
    // Whoever had no value before him corrects none, and repeats none.
    if (late()) {
      return outcome;
    }
    return before.compareTo(value) == 0
        ? new Outcome.Accepted(List.of())
        : Outcome.accepted(
            new Fact.ScoreCorrected(
                lap, measure, value, latest.day().ridden(lap) ? OPENED_AGAIN : MOVED));
  }

  @Override
  public DayResult takeBack(
      SessionId id, LapId lap, String measure, MeasureState from, MeasureState to) {
    return act(
        id,
        latest ->
            MeasureState.of(latest.day(), lap, measure).equals(from)
                ? commands(latest).note(lap, putBack(to, lap, measure, latest.plan()))
                : Outcome.refused(SessionFault.CHANGED_MEANWHILE, "", measure));
  }

  /** The fact that puts back what stood there. */
  private static Fact putBack(MeasureState to, LapId lap, String measure, Plan plan) {
    boolean timed =
        plan.measures().stream()
            .filter(each -> each.name().equals(measure))
            .map(Measure::kind)
            .anyMatch(Measure.Kind::timed);
    if (!timed) {
      return new Fact.ScoreCorrected(lap, measure, to.value(), "undone");
    }
    Instant running = to.running();
    if (running != null) {
      return new Fact.WatchStarted(lap, measure, running);
    }
    TimeRecord time = to.time();
    return time == null
        ? new Fact.WatchReset(lap, measure)
        : new Fact.TimeTaken(lap, measure, time);
  }

  @Override
  public DayResult note(SessionId id, LapId lap, String text) {
    return act(
        id,
        latest ->
            latest.lap(lap).map(LapState::note).orElse("").equals(text)
                ? new Outcome.Accepted(List.of())
                : commands(latest).note(lap, new Fact.NoteWritten(lap, text)));
  }

  @Override
  public DayResult conditions(SessionId id, LapId lap, Map<String, String> conditions) {
    return act(id, latest -> commands(latest).note(lap, new Fact.ConditionsNoted(lap, conditions)));
  }

  @Override
  public DayResult covariate(SessionId id, CovariateAt at, @Nullable BigDecimal value) {
    return act(id, latest -> new CovariateCommands(latest).say(at, value));
  }

  @Override
  public DayResult guess(SessionId id, int stint, Guess guess) {
    return act(id, latest -> commands(latest).stint(stint, new Fact.GuessGiven(stint, guess)));
  }

  @Override
  public DayResult guessTakenBack(SessionId id, int stint, Guess from, @Nullable Guess to) {
    return act(
        id,
        latest -> {
          if (!from.equals(latest.guesses().get(stint))) {
            return Outcome.refused(SessionFault.CHANGED_MEANWHILE, "", RideWords.say("guess"));
          }
          return commands(latest)
              .stint(
                  stint,
                  to == null ? new Fact.GuessTakenBack(stint) : new Fact.GuessGiven(stint, to));
        });
  }

  @Override
  public DayResult noteTakenBack(SessionId id, LapId lap, String from, String to) {
    return act(
        id,
        latest ->
            latest.lap(lap).map(LapState::note).orElse("").equals(from)
                ? commands(latest).note(lap, new Fact.NoteWritten(lap, to))
                : Outcome.refused(SessionFault.CHANGED_MEANWHILE, "", RideWords.say("note")));
  }

  @Override
  public DayResult watchStarted(SessionId id, LapId lap, String measure, Instant at) {
    return act(
        id,
        latest ->
            mayStart(latest, lap)
                .orElseGet(
                    () -> commands(latest).note(lap, new Fact.WatchStarted(lap, measure, at))));
  }

  @Override
  public DayResult watchReset(SessionId id, LapId lap, String measure) {
    return act(id, latest -> commands(latest).note(lap, new Fact.WatchReset(lap, measure)));
  }

  @Override
  public DayResult time(
      SessionId id, LapId lap, String measure, TimeRecord time, boolean knowsKey) {
    return act(
        id,
        latest -> {
          Outcome outcome = commands(latest).note(lap, new Fact.TimeTaken(lap, measure, time));
          return knowsKey
              ? new KeyKnown(latest)
                  .timed(outcome, lap.stint(), time.timedBy().name().toLowerCase(Locale.ROOT))
              : outcome;
        });
  }

  @Override
  public DayResult ridden(SessionId id, LapId lap) {
    return act(
        id,
        latest -> {
          if (latest.day().ridden(lap)) {
            return new Outcome.Accepted(List.of());
          }
          return mayRide(latest, lap)
              .orElseGet(() -> commands(latest).note(lap, new Fact.LapRidden(lap, Source.SCREEN)));
        });
  }

  /** Why a lap may not be ridden now; empty if it may. */
  private Optional<Outcome> mayRide(SessionState latest, LapId lap) {
    if (latest.day().ridden(lap)) {
      return Optional.empty();
    }
    if (latest.capReached() && !late()) {
      return Optional.of(Outcome.refused(SessionFault.LAP_CAP, "", latest.lapCap().orElseThrow()));
    }
    return latest.handedOver(lap.stint())
        ? Optional.empty()
        : Optional.of(Outcome.refused(SessionFault.NOT_HANDED_OVER, "", lap.stint()));
  }

  /** Why a lap may not start now; empty if it may. One that is under way goes on. */
  private Optional<Outcome> mayStart(SessionState latest, LapId lap) {
    Optional<Outcome> refused = mayRide(latest, lap);
    boolean underWay = latest.lap(lap).filter(l -> l.ridden() || l.underWay()).isPresent();
    return refused.isPresent() || underWay || late() || latest.day().mayStart(lap.stint())
        ? refused
        : Optional.of(Outcome.refused(SessionFault.BIKE_WITH_HELPER, "", lap.stint()));
  }

  @Override
  public DayResult pastCap(SessionId id, int stint, String reason) {
    return act(
        id,
        latest -> {
          if (reason.isBlank()) {
            return Outcome.refused(SessionFault.REASON_MISSING, "", ReasonFor.LAP_BEYOND_CAP);
          }
          return latest.capReached()
              ? commands(latest)
                  .stint(
                      stint, new Fact.DeviationNoted(stint, DeviationKind.LAP_CAP, reason.strip()))
              : new Outcome.Accepted(List.of());
        });
  }

  @Override
  public DayResult spoiled(SessionId id, LapId lap, VoidEvent event, String words) {
    return act(
        id,
        latest -> {
          List<Fact> facts = new ArrayList<>();
          if (!latest.day().ridden(lap)) {
            facts.add(new Fact.LapRidden(lap, Source.SCREEN));
          }
          facts.add(new Fact.LapVoided(lap, event, words, false));
          Outcome outcome = commands(latest).note(lap, facts.get(facts.size() - 1));
          return outcome instanceof Outcome.Refused ? outcome : new Outcome.Accepted(facts);
        });
  }

  @Override
  public DayResult voidTakenBack(SessionId id, LapId lap, VoidEvent event) {
    return act(
        id,
        latest ->
            latest.lap(lap).flatMap(LapState::voided).filter(v -> v.event() == event).isPresent()
                ? commands(latest).withdrawVoid(lap, "undone")
                : Outcome.refused(
                    SessionFault.CHANGED_MEANWHILE, "", RideWords.say("void.changed")));
  }

  @Override
  public DayResult deviation(SessionId id, int stint, DeviationKind kind, String what) {
    return act(
        id, latest -> commands(latest).stint(stint, new Fact.DeviationNoted(stint, kind, what)));
  }

  @Override
  public DayResult blindBroken(SessionId id, int stint, String what) {
    return act(id, latest -> new LifeCommands(latest).blindBroken(stint, what));
  }

  @Override
  public DayResult cutShort(
      SessionId id, int lastStint, String reason, String decidedBy, boolean knowsKey) {
    return act(
        id, latest -> new LifeCommands(latest).cutShort(lastStint, reason, decidedBy, knowsKey));
  }

  @Override
  public DayResult closeDay(SessionId id) {
    return act(id, latest -> new LifeCommands(latest).closeDay());
  }
}
