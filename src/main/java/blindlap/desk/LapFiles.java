package blindlap.desk;

import blindlap.exchange.CsvText;
import blindlap.exchange.FileFault;
import blindlap.exchange.LapsFile;
import blindlap.fault.Problem;
import blindlap.fault.TypedNumber;
import blindlap.plan.Covariate;
import blindlap.plan.Plan;
import blindlap.session.CovariateCommands;
import blindlap.session.DayCommands;
import blindlap.session.KeyKnown;
import blindlap.session.SessionState;
import blindlap.session.TwoValues;
import blindlap.session.day.CovariateAt;
import blindlap.session.day.LapId;
import blindlap.session.day.LapInput;
import blindlap.session.day.SessionId;
import blindlap.session.day.Source;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

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
                .among(
                    new DayCommands(latest)
                        .correct(withTheRest(latest, reading.laps()), reason, decider),
                    knowing));
  }

  /** An empty cell takes a value out; a measure without a column keeps the one it has. */
  private static List<LapInput> withTheRest(SessionState state, List<LapInput> laps) {
    List<LapInput> whole = new ArrayList<>();
    for (LapInput lap : laps) {
      Map<String, BigDecimal> values = new LinkedHashMap<>();
      state.lap(lap.lap()).ifPresent(known -> values.putAll(known.values()));
      values.keySet().removeAll(lap.columns().keySet());
      values.putAll(lap.values());
      whole.add(lap.with(values));
    }
    return whole;
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

  /**
   * Corrects a covariate, with a reason.
   *
   * @param lap number over the day, as typed; of a covariate of stints any lap of the stint
   * @param value as typed; empty takes it out
   */
  public Sessions.Result correctCovariate(
      SessionState state, String lap, String name, String value, String reason) {
    Plan plan = state.plan();
    Covariate covariate = plan.covariate(name).orElseThrow();
    int number = TypedNumber.whole(lap).orElse(0);
    if (number < 1 || number > plan.lapsOfDay()) {
      return refused(Problem.of(FileFault.NOT_A_LAP, "", lap, plan.lapsOfDay()));
    }
    boolean timed = covariate.kind().timed();
    Optional<BigDecimal> typed = timed ? TypedNumber.time(value) : TypedNumber.number(value);
    if (typed.isEmpty() && !value.isBlank()) {
      FileFault fault = timed ? FileFault.NOT_A_TIME_FORM : FileFault.NOT_A_NUMBER;
      return refused(Problem.of(fault, "", name, value));
    }
    LapId id = LapId.ofDay(number, plan.laps().perStint());
    CovariateAt at = new CovariateAt(name, id.stint(), covariate.perLap() ? id.lap() : 0);
    return sessions.act(
        state.id(),
        latest -> new CovariateCommands(latest).correct(at, typed.orElse(null), reason));
  }

  private static Sessions.Result refused(Problem problem) {
    return new Sessions.Result.Refused(List.of(problem));
  }
}
