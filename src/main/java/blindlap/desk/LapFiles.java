package blindlap.desk;

import blindlap.exchange.CsvText;
import blindlap.exchange.LapsFile;
import blindlap.session.DayCommands;
import blindlap.session.KeyKnown;
import blindlap.session.SessionState;
import blindlap.session.TwoValues;
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
    return record(state, file, List.of());
  }

  /**
   * Records the laps of a file.
   *
   * @param knowing names of the measures that were timed or scored by someone who knows the key
   */
  public Sessions.Result record(SessionState state, byte[] file, List<String> knowing) {
    LapsFile.Reading reading = LapsFile.read(file, state.plan(), state.codes());
    if (!reading.problems().isEmpty()) {
      return new Sessions.Result.Refused(reading.problems());
    }
    SessionId id = state.id();
    return sessions.act(
        id,
        latest ->
            new KeyKnown(latest)
                .among(new DayCommands(latest).record(reading.laps(), Source.FILE), knowing));
  }

  /** Corrects recorded laps by those of a file, with a reason. */
  public Sessions.Result correct(SessionState state, byte[] file, String reason) {
    return correct(state, file, reason, List.of());
  }

  /**
   * Corrects recorded laps by those of a file, with a reason.
   *
   * @param knowing names of the measures that were timed or scored by someone who knows the key
   */
  public Sessions.Result correct(
      SessionState state, byte[] file, String reason, List<String> knowing) {
    return correct(state, file, reason, knowing, TwoValues.Decider.NOBODY);
  }

  /**
   * The same.
   *
   * @param decider who decides where two machines recorded different values
   */
  public Sessions.Result correct(
      SessionState state,
      byte[] file,
      String reason,
      List<String> knowing,
      TwoValues.Decider decider) {
    LapsFile.Reading reading = LapsFile.read(file, state.plan(), state.codes());
    if (!reading.problems().isEmpty()) {
      return new Sessions.Result.Refused(reading.problems());
    }
    return sessions.act(
        state.id(),
        latest ->
            new KeyKnown(latest)
                .among(new DayCommands(latest).correct(reading.laps(), reason, decider), knowing));
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
