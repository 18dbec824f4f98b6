package blindlap.desk;

import blindlap.exchange.CsvText;
import blindlap.fault.Problem;
import blindlap.session.ReasonFor;
import blindlap.session.SessionFault;
import blindlap.session.SessionState;
import blindlap.session.day.LapId;
import blindlap.wording.AloneWords;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/**
 * What somebody scores afterwards from video or traces, by code. Codes are numbers drawn at random;
 * they stand by size, so that nothing tells in which order they were ridden.
 */
public final class ScoredByCode {
  private final Sessions sessions;

  public ScoredByCode(Sessions sessions) {
    this.sessions = sessions;
  }

  /**
   * A lap to score.
   *
   * @param lap which
   * @param code of its stint
   * @param number among the scored laps of its stint, from 1
   */
  public record Row(LapId lap, int code, int number) {}

  /** The ridden laps that are scored, by the size of their codes. */
  public static List<Row> rows(SessionState state) {
    int settling = state.plan().laps().settling();
    return state.laps().stream()
        .filter(lap -> lap.ridden() && lap.id().lap() > settling)
        .map(lap -> new Row(lap.id(), state.code(lap.id().stint()), lap.id().lap() - settling))
        .sorted(Comparator.comparingInt(Row::code).thenComparingInt(Row::number))
        .toList();
  }

  /**
   * Records what was scored; all or nothing.
   *
   * @param typed values as typed, by lap and measure; what is left empty stays as it is
   * @param who scored
   * @param knows whether that person knows which code was which setup
   */
  public Sessions.Result record(
      SessionState state, Map<LapId, Map<String, String>> typed, String who, boolean knows) {
    if (who.isBlank()) {
      return new Sessions.Result.Refused(
          List.of(Problem.of(SessionFault.REASON_MISSING, "", ReasonFor.CORRECTION)));
    }
    List<String> measures =
        typed.values().stream().flatMap(row -> row.keySet().stream()).distinct().toList();
    List<String> given = new ArrayList<>();
    Sessions.Result last = new Sessions.Result.Done(state, List.of());
    for (String measure : measures) {
      List<List<String>> rows = new ArrayList<>();
      typed.forEach(
          (lap, row) -> {
            String value = row.getOrDefault(measure, "").strip();
            if (!value.isEmpty()) {
              int number = lap.ofDay(state.plan().laps().perStint());
              rows.add(List.of(String.valueOf(number), value));
            }
          });
      if (!rows.isEmpty()) {
        given.add(measure);
        rows.sort(Comparator.comparingInt(row -> Integer.parseInt(row.get(0))));
        byte[] file =
            CsvText.write(';', Stream.of("lap", measure).toList(), rows)
                .getBytes(StandardCharsets.UTF_8);
        String reason = AloneWords.say(knows ? "scored.knowing" : "scored.by.code", who.strip());
        last =
            new LapFiles(sessions)
                .correct(state, file, reason, knows ? List.of(measure) : List.of());
        if (last instanceof Sessions.Result.Refused) {
          return last;
        }
      }
    }
    return last;
  }
}
