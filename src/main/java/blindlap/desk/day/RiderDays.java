package blindlap.desk.day;

import blindlap.session.day.CovariateAt;
import blindlap.session.day.Day;
import blindlap.session.day.DeviationKind;
import blindlap.session.day.Guess;
import blindlap.session.day.LapId;
import blindlap.session.day.SessionId;
import blindlap.session.day.VoidEvent;
import blindlap.timing.TimeRecord;
import java.math.BigDecimal;
import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * What rider and starter do on the day. Every method saves before it answers. Nothing here comes
 * near the key.
 */
public interface RiderDays {
  /** The day of a session as it stands on disk. */
  Optional<Day> day(SessionId id);

  /** Keying in paper. */
  KeyingIn keyingIn();

  /**
   * The bike was handed over where the helper works from paper, or there is no helper. Where the
   * helper uses the page, and where it came before a swap's time had passed, that is recorded as a
   * deviation; nothing here tells of it.
   */
  DayResult handedOver(SessionId id, int stint);

  /** A warm-up lap was ridden. */
  DayResult warmUp(SessionId id);

  /**
   * A value was given; another value than the one before is a correction.
   *
   * @param knowsKey true if whoever scored knows the key: a deviation of the stint and measure
   */
  DayResult score(SessionId id, LapId lap, String measure, BigDecimal value, boolean knowsKey);

  /**
   * An answer on this lap's sheet is taken back by an entry that puts what stood there before.
   *
   * @param from what it was changed to; if something else stands there by now, it is kept
   * @param to what stood there before
   */
  DayResult takeBack(SessionId id, LapId lap, String measure, MeasureState from, MeasureState to);

  /** A note on a lap. */
  DayResult note(SessionId id, LapId lap, String text);

  /** Conditions of a lap. */
  DayResult conditions(SessionId id, LapId lap, Map<String, String> conditions);

  /**
   * A covariate is said.
   *
   * @param value null takes it back
   */
  DayResult covariate(SessionId id, CovariateAt at, @Nullable BigDecimal value);

  /** The rider's guess after a stint. */
  DayResult guess(SessionId id, int stint, Guess guess);

  /**
   * A guess, or a part of it, is taken back.
   *
   * @param from what was guessed; if something else stands there by now, it is kept
   * @param to what stood there before; null if nothing did
   */
  DayResult guessTakenBack(SessionId id, int stint, Guess from, @Nullable Guess to);

  /**
   * A note is taken back.
   *
   * @param from what was written; if something else stands there by now, it is kept
   * @param to what stood there before; may be empty
   */
  DayResult noteTakenBack(SessionId id, LapId lap, String from, String to);

  /** A watch was started; refused until the bike was handed over. */
  DayResult watchStarted(SessionId id, LapId lap, String measure, Instant at);

  /** A false start. */
  DayResult watchReset(SessionId id, LapId lap, String measure);

  /**
   * A time was taken or typed.
   *
   * @param knowsKey true if whoever timed knows the key: a deviation of the stint
   */
  DayResult time(SessionId id, LapId lap, String measure, TimeRecord time, boolean knowsKey);

  /** Done with a lap: from now on it is corrected in the review, with a reason. */
  DayResult ridden(SessionId id, LapId lap);

  /** Every lap agreed to is ridden; one more is, for a reason that everyone can read. */
  DayResult pastCap(SessionId id, int stint, String reason);

  /** The lap was spoiled by an event; it counts as ridden. */
  DayResult spoiled(SessionId id, LapId lap, VoidEvent event, String words);

  /**
   * Takes a void back: the lap counts again.
   *
   * @param event the event that made it void; refused if it is another by now
   */
  DayResult voidTakenBack(SessionId id, LapId lap, VoidEvent event);

  /** Something went otherwise than planned. */
  DayResult deviation(SessionId id, int stint, DeviationKind kind, String what);

  /** The rider saw or was told what is fitted. */
  DayResult blindBroken(SessionId id, int stint, String what);

  /** The day ends early. */
  DayResult cutShort(
      SessionId id, int lastStint, String reason, String decidedBy, boolean knowsKey);

  /** The day is over, paper is keyed in, nothing has been looked at. */
  DayResult closeDay(SessionId id);
}
