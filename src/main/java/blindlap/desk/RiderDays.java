package blindlap.desk;

import blindlap.session.DayCommands;
import blindlap.session.Fact;
import blindlap.session.LifeCommands;
import blindlap.session.Outcome;
import blindlap.session.SessionFault;
import blindlap.session.SessionState;
import blindlap.session.day.DeviationKind;
import blindlap.session.day.Guess;
import blindlap.session.day.LapId;
import blindlap.session.day.LapState;
import blindlap.session.day.SessionId;
import blindlap.session.day.Source;
import blindlap.session.day.VoidEvent;
import blindlap.timing.TimeRecord;
import java.math.BigDecimal;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/**
 * What rider and starter do on the day. Every method saves before it answers. Nothing here comes
 * near the key.
 */
public final class RiderDays {
  /** Reason of a correction made on the score sheet itself, before the lap is done. */
  public static final String MOVED = "changed on the score sheet";

  private final Sessions sessions;
  private final KeyingIn keyingIn;

  RiderDays(Sessions sessions, KeyingIn keyingIn) {
    this.sessions = sessions;
    this.keyingIn = keyingIn;
  }

  /** The session as it stands on disk. */
  public Optional<SessionState> state(SessionId id) {
    return sessions.state(id);
  }

  /** Keying in paper. */
  public KeyingIn keyingIn() {
    return keyingIn;
  }

  private Sessions.Result act(SessionId id, Function<SessionState, Outcome> decision) {
    return sessions.act(id, decision);
  }

  /** The bike was handed over where the helper works from paper, or there is no helper. */
  public Sessions.Result handedOver(SessionId id, int stint) {
    return act(
        id,
        latest ->
            latest.handedOver(stint)
                ? new Outcome.Accepted(List.of())
                : new DayCommands(latest).stint(stint, new Fact.BikeHandedOver(stint)));
  }

  /** A warm-up lap was ridden. */
  public Sessions.Result warmUp(SessionId id) {
    return act(
        id,
        latest ->
            latest.capReached()
                ? Outcome.refused(SessionFault.LAP_CAP, "", latest.lapCap().orElseThrow())
                : new DayCommands(latest).stint(0, new Fact.WarmUpRidden(latest.warmUps() + 1)));
  }

  /** A value was given; another value than the one before is a correction. */
  public Sessions.Result score(SessionId id, LapId lap, String measure, BigDecimal value) {
    return act(
        id,
        latest -> {
          Outcome outcome = new DayCommands(latest).score(lap, measure, value, Source.SCREEN);
          BigDecimal before = latest.lap(lap).map(l -> l.values().get(measure)).orElse(null);
          if (outcome instanceof Outcome.Refused || before == null) {
            return outcome;
          }
          return before.compareTo(value) == 0
              ? new Outcome.Accepted(List.of())
              : Outcome.accepted(new Fact.ScoreCorrected(lap, measure, value, MOVED));
        });
  }

  /**
   * An answer on this lap's sheet is taken back by an entry that puts what stood there before.
   *
   * @param from what it was changed to; if something else stands there by now, it is kept
   * @param to what stood there before
   */
  public Sessions.Result takeBack(
      SessionId id, LapId lap, String measure, MeasureState from, MeasureState to) {
    return act(
        id,
        latest ->
            MeasureState.of(latest, lap, measure).equals(from)
                ? new DayCommands(latest).note(lap, to.putBack(lap, measure, latest.plan()))
                : Outcome.refused(SessionFault.CHANGED_MEANWHILE, "", measure));
  }

  /** A note on a lap. */
  public Sessions.Result note(SessionId id, LapId lap, String text) {
    return act(
        id,
        latest ->
            latest.lap(lap).map(LapState::note).orElse("").equals(text)
                ? new Outcome.Accepted(List.of())
                : new DayCommands(latest).note(lap, new Fact.NoteWritten(lap, text)));
  }

  /** Conditions of a lap. */
  public Sessions.Result conditions(SessionId id, LapId lap, Map<String, String> conditions) {
    return act(
        id, latest -> new DayCommands(latest).note(lap, new Fact.ConditionsNoted(lap, conditions)));
  }

  /** The rider's guess after a stint. */
  public Sessions.Result guess(SessionId id, int stint, Guess guess) {
    return act(
        id, latest -> new DayCommands(latest).stint(stint, new Fact.GuessGiven(stint, guess)));
  }

  /** A watch was started; refused until the bike was handed over. */
  public Sessions.Result watchStarted(SessionId id, LapId lap, String measure, Instant at) {
    return act(
        id,
        latest ->
            mayRide(latest, lap)
                .orElseGet(
                    () ->
                        new DayCommands(latest)
                            .note(lap, new Fact.WatchStarted(lap, measure, at))));
  }

  /** A false start. */
  public Sessions.Result watchReset(SessionId id, LapId lap, String measure) {
    return act(id, latest -> new DayCommands(latest).note(lap, new Fact.WatchReset(lap, measure)));
  }

  /**
   * A time was taken or typed.
   *
   * @param knowsKey true if whoever timed knows the key: a deviation of the stint
   */
  public Sessions.Result time(
      SessionId id, LapId lap, String measure, TimeRecord time, boolean knowsKey) {
    return act(
        id,
        latest -> {
          Outcome outcome =
              new DayCommands(latest).note(lap, new Fact.TimeTaken(lap, measure, time));
          boolean known =
              latest.deviations().stream()
                  .anyMatch(
                      d ->
                          d.stint() == lap.stint()
                              && d.kind() == DeviationKind.TIMEKEEPER_KNOWS_KEY);
          if (!knowsKey || known || outcome instanceof Outcome.Refused) {
            return outcome;
          }
          List<Fact> facts = new ArrayList<>(((Outcome.Accepted) outcome).facts());
          facts.add(
              new Fact.DeviationNoted(
                  lap.stint(),
                  DeviationKind.TIMEKEEPER_KNOWS_KEY,
                  time.timedBy().name().toLowerCase(java.util.Locale.ROOT)));
          return new Outcome.Accepted(facts);
        });
  }

  /** Done with a lap: from now on it is corrected in the review, with a reason. */
  public Sessions.Result ridden(SessionId id, LapId lap) {
    return act(
        id,
        latest -> {
          if (latest.lap(lap).filter(LapState::ridden).isPresent()) {
            return new Outcome.Accepted(List.of());
          }
          return mayRide(latest, lap)
              .orElseGet(
                  () ->
                      new DayCommands(latest)
                          .note(lap, new Fact.LapRidden(lap, Source.SCREEN)));
        });
  }

  /** Why a lap may not be ridden now; empty if it may. */
  private static Optional<Outcome> mayRide(SessionState latest, LapId lap) {
    if (latest.lap(lap).filter(LapState::ridden).isPresent()) {
      return Optional.empty();
    }
    if (latest.capReached()) {
      return Optional.of(Outcome.refused(SessionFault.LAP_CAP, "", latest.lapCap().orElseThrow()));
    }
    return latest.handedOver(lap.stint())
        ? Optional.empty()
        : Optional.of(Outcome.refused(SessionFault.NOT_HANDED_OVER, "", lap.stint()));
  }

  /** Every lap agreed to is ridden; one more is, for a reason that everyone can read. */
  public Sessions.Result pastCap(SessionId id, int stint, String reason) {
    return act(
        id,
        latest -> {
          if (reason.isBlank()) {
            return Outcome.refused(SessionFault.REASON_MISSING, "", "one more lap than agreed");
          }
          return latest.capReached()
              ? new DayCommands(latest)
                  .stint(
                      stint,
                      new Fact.DeviationNoted(stint, DeviationKind.LAP_CAP, reason.strip()))
              : new Outcome.Accepted(List.of());
        });
  }

  /** The lap was spoiled by an event; it counts as ridden. */
  public Sessions.Result spoiled(SessionId id, LapId lap, VoidEvent event, String words) {
    return act(
        id,
        latest -> {
          List<Fact> facts = new ArrayList<>();
          if (latest.lap(lap).filter(LapState::ridden).isEmpty()) {
            facts.add(new Fact.LapRidden(lap, Source.SCREEN));
          }
          facts.add(new Fact.LapVoided(lap, event, words, false));
          Outcome outcome = new DayCommands(latest).note(lap, facts.get(facts.size() - 1));
          return outcome instanceof Outcome.Refused ? outcome : new Outcome.Accepted(facts);
        });
  }

  /** Something went otherwise than planned. */
  public Sessions.Result deviation(SessionId id, int stint, DeviationKind kind, String what) {
    return act(
        id,
        latest -> new DayCommands(latest).stint(stint, new Fact.DeviationNoted(stint, kind, what)));
  }

  /** The rider saw or was told what is fitted. */
  public Sessions.Result blindBroken(SessionId id, int stint, String what) {
    return act(id, latest -> new LifeCommands(latest).blindBroken(stint, what));
  }

  /** The day ends early. */
  public Sessions.Result cutShort(
      SessionId id, int lastStint, String reason, String decidedBy, boolean knowsKey) {
    return act(
        id, latest -> new LifeCommands(latest).cutShort(lastStint, reason, decidedBy, knowsKey));
  }

  /** The day is over, paper is keyed in, nothing has been looked at. */
  public Sessions.Result closeDay(SessionId id) {
    return act(id, latest -> new LifeCommands(latest).closeDay());
  }
}
