package blindlap.desk;

import blindlap.fault.Problem;
import blindlap.plan.BlindLevel;
import blindlap.seal.SealParameters;
import blindlap.seal.Sealing;
import blindlap.seal.SecureBytes;
import blindlap.session.DayCommands;
import blindlap.session.Fact;
import blindlap.session.Notebook;
import blindlap.session.Outcome;
import blindlap.session.SessionState;
import blindlap.session.day.SessionId;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.Optional;

/** Opens helper's days. */
public final class HelperDays {
  /** Longest that the helper's page may stay open untouched. */
  public static final int MOST_MINUTES = 15;

  private static final int USUAL_MINUTES = 2;
  private static final String BLANK_AFTER = "helper-page/blank-after";

  private final Keys keys;
  private final Sessions sessions;
  private final Sealing sealing;
  private final Notebook notebook;
  private final Clock clock;
  private final SecureBytes random;
  private final SealParameters parameters;

  HelperDays(
      Keys keys,
      Sessions sessions,
      Sealing sealing,
      Notebook notebook,
      Clock clock,
      SecureBytes random,
      SealParameters parameters) {
    this.keys = keys;
    this.sessions = sessions;
    this.sealing = sealing;
    this.notebook = notebook;
    this.clock = clock;
    this.random = random;
    this.parameters = parameters;
  }

  /** What a phrase gave. */
  public sealed interface Opened {
    /** The day, open. */
    record Day(HelperDay day) implements Opened {}

    /** Why it stays closed. */
    record Refused(List<Problem> problems) implements Opened {}
  }

  /** The session as it stands on disk. */
  public Optional<SessionState> state(SessionId id) {
    return sessions.state(id);
  }

  /** Opens the helper's day with the phrase as typed: up to a second of work. */
  public Opened open(SessionState state, String phrase) {
    Keys.Result result = keys.helper(state, phrase);
    if (result instanceof Keys.Result.Refused refused) {
      return new Opened.Refused(refused.problems());
    }
    HelperDay day =
        new HelperDay(state, (Keys.Result.Open) result, sessions, sealing, notebook, clock);
    if (state.plan().blinding().level() == BlindLevel.PREPARED) {
      return new Opened.Day(day); // the rider hands over to himself, and closes the day
    }
    if (state.step().day()) {
      day.makeUp(state);
    } else if (HelperOver.missing(state)) {
      HelperOver over = new HelperOver(day, clock);
      over.write(over.entry(state)); // somebody else closed the day
    }
    return new Opened.Day(day);
  }

  /** The stint for which the helper has handed the bike over and not got it back; 0 = warm-up. */
  public static Optional<Integer> bikeOut(SessionState state) {
    return Optional.ofNullable(state.day().bikeOut()).filter(state.helperRecords()::containsKey);
  }

  /**
   * The bike is back with the helper: from now on no lap starts before the next hand-over. Needs no
   * key and tells nothing of it; said twice, or late, it changes nothing.
   *
   * @param stint the stint that was ridden; 0 = the warm-up
   */
  public Sessions.Result bikeReturned(SessionId id, int stint) {
    return sessions.act(
        id,
        latest -> {
          Integer out = latest.day().bikeOut();
          return out == null || out != stint
              ? new Outcome.Accepted(List.of())
              : new DayCommands(latest).stint(stint, new Fact.BikeReturned(stint));
        });
  }

  /** After how long without a touch the helper's page closes itself, as it was said last. */
  public Duration blankAfter() {
    String kept = notebook.drafts().getOrDefault(BLANK_AFTER, "");
    return kept.matches("[0-9]{1,2}") ? bounded(Integer.parseInt(kept)) : bounded(USUAL_MINUTES);
  }

  /** Remembers it: from one minute to fifteen. */
  public void blankAfter(Duration time) {
    notebook.putDraft(BLANK_AFTER, String.valueOf(bounded((int) time.toMinutes()).toMinutes()));
  }

  private static Duration bounded(int minutes) {
    return Duration.ofMinutes(Math.max(1, Math.min(MOST_MINUTES, minutes)));
  }

  /** A day PIN as the helper chose it. */
  public DayPin pin(String digits) {
    return DayPin.of(digits, random, parameters);
  }
}
