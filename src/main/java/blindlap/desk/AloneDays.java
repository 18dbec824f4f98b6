package blindlap.desk;

import blindlap.session.AloneCommands;
import blindlap.session.Notebook;
import blindlap.session.SessionState;
import blindlap.session.day.SessionId;
import java.time.Clock;
import java.util.Optional;

/** Days of riders who swap alone: from a covered order, or with units that a friend prepared. */
public final class AloneDays {
  private final Sessions sessions;
  private final Covers covers;
  private final Clock clock;

  AloneDays(Sessions sessions, Notebook notebook, Clock clock) {
    this.sessions = sessions;
    this.covers = new Covers(notebook);
    this.clock = clock;
  }

  /** The session as it stands on disk. */
  public Optional<SessionState> state(SessionId id) {
    return sessions.state(id);
  }

  /** The day of a session; empty where a helper swaps, and where nothing was drawn. */
  public Optional<AloneDay> day(SessionState state) {
    return AloneCommands.alone(state)
        ? Optional.of(new AloneDay(state, sessions, covers, clock))
        : Optional.empty();
  }
}
