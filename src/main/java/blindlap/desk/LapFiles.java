package blindlap.desk;

import blindlap.exchange.CsvText;
import blindlap.exchange.LapsFile;
import blindlap.session.DayCommands;
import blindlap.session.SessionState;
import blindlap.session.day.SessionId;
import blindlap.session.day.Source;
import java.nio.charset.StandardCharsets;
import java.util.List;

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

  /**
   * Corrects one value, with a reason.
   *
   * @param lap number over the day, as typed
   * @param value as typed
   */
  public Sessions.Result correct(
      SessionState state, String lap, String measure, String value, String reason) {
    String row =
        CsvText.write(';', List.of("lap", measure), List.of(List.of(lap.strip(), value.strip())));
    return correct(state, row.getBytes(StandardCharsets.UTF_8), reason);
  }
}
