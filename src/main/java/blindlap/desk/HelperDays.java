package blindlap.desk;

import blindlap.fault.Problem;
import blindlap.seal.Sealing;
import blindlap.seal.SecureBytes;
import blindlap.session.Notebook;
import blindlap.session.SessionState;
import blindlap.session.day.SessionId;
import java.time.Clock;
import java.util.List;
import java.util.Optional;

/** Opens helper's days. */
public final class HelperDays {
  private final Keys keys;
  private final Sessions sessions;
  private final Sealing sealing;
  private final Notebook notebook;
  private final Clock clock;
  private final SecureBytes random;

  HelperDays(
      Keys keys,
      Sessions sessions,
      Sealing sealing,
      Notebook notebook,
      Clock clock,
      SecureBytes random) {
    this.keys = keys;
    this.sessions = sessions;
    this.sealing = sealing;
    this.notebook = notebook;
    this.clock = clock;
    this.random = random;
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
    if (state.step().day()) {
      day.makeUp(state);
    } else if (HelperOver.missing(state)) {
      HelperOver over = new HelperOver(day, clock);
      over.write(over.entry(state)); // somebody else closed the day
    }
    return new Opened.Day(day);
  }

  /** A day PIN as the helper chose it. */
  public DayPin pin(String digits) {
    return DayPin.of(digits, random);
  }
}
