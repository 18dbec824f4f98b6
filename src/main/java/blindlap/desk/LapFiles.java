package blindlap.desk;

import blindlap.exchange.LapsFile;
import blindlap.session.DayCommands;
import blindlap.session.SessionState;
import blindlap.session.day.SessionId;
import blindlap.session.day.Source;

/** Records files of laps: all rows or none. */
public final class LapFiles {
  private final Sessions sessions;

  public LapFiles(Sessions sessions) {
    this.sessions = sessions;
  }

  /** Records the laps of a file. */
  public Sessions.Result record(SessionState state, byte[] file) {
    LapsFile.Reading reading = LapsFile.read(file, state.plan(), state.codes());
    if (!reading.problems().isEmpty()) {
      return new Sessions.Result.Refused(reading.problems());
    }
    SessionId id = state.id();
    return sessions.act(id, latest -> new DayCommands(latest).record(reading.laps(), Source.FILE));
  }

  /** Corrects recorded laps by those of a file, with a reason. */
  public Sessions.Result correct(SessionState state, byte[] file, String reason) {
    LapsFile.Reading reading = LapsFile.read(file, state.plan(), state.codes());
    if (!reading.problems().isEmpty()) {
      return new Sessions.Result.Refused(reading.problems());
    }
    return sessions.act(
        state.id(), latest -> new DayCommands(latest).correct(reading.laps(), reason));
  }
}
