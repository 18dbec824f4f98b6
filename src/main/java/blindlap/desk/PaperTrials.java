package blindlap.desk;

import blindlap.exchange.LapsFile;
import blindlap.fault.Problem;
import blindlap.plan.TellingRun;
import blindlap.session.SessionFault;
import blindlap.session.day.LapInput;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * Which rows of a table of trials were ridden. On paper most laps of a trial have nothing to write:
 * a lap was ridden if it or a later one of its trial says something, and none was after a void.
 */
final class PaperTrials {
  private PaperTrials() {}

  /** What was read, without rows of laps that were not ridden; other sessions as they are. */
  static LapsFile.Reading ridden(@Nullable TellingRun run, LapsFile.Reading reading) {
    if (run == null || !reading.problems().isEmpty()) {
      return reading;
    }
    Map<Integer, List<LapInput>> trials =
        reading.laps().stream()
            .collect(
                Collectors.groupingBy(
                    lap -> run.trial(lap.lap().stint()), TreeMap::new, Collectors.toList()));
    List<LapInput> laps = new ArrayList<>();
    List<Problem> problems = new ArrayList<>();
    trials.forEach(
        (trial, rows) -> {
          int said =
              rows.stream().filter(PaperTrials::says).mapToInt(PaperTrials::stint).max().orElse(0);
          Optional<LapInput> event = event(rows);
          boolean answered = rows.stream().anyMatch(PaperTrials::answers);
          for (LapInput row : rows) {
            boolean after = event.filter(lap -> stint(lap) < stint(row)).isPresent();
            if (after && says(row) && !answered) {
              problems.add(
                  Problem.of(
                      SessionFault.LAP_AFTER_VOID,
                      row.where(),
                      trial,
                      stint(event.orElseThrow()),
                      stint(row)));
            } else if (stint(row) <= said) {
              laps.add(row);
            }
          }
        });
    return new LapsFile.Reading(laps, problems);
  }

  private static int stint(LapInput row) {
    return row.lap().stint();
  }

  /** The first lap of a trial that an event spoiled. */
  private static Optional<LapInput> event(List<LapInput> rows) {
    return rows.stream()
        .filter(row -> !blank(row.voidReason()))
        .min(java.util.Comparator.comparingInt(PaperTrials::stint));
  }

  private static boolean answers(LapInput row) {
    return !blank(row.guess()) || !blank(row.sureness()) || !row.cue().isBlank();
  }

  private static boolean says(LapInput row) {
    return answers(row)
        || !blank(row.voidReason())
        || !row.note().isBlank()
        || !row.values().isEmpty()
        || !row.conditions().isEmpty();
  }

  private static boolean blank(@Nullable String typed) {
    return typed == null || typed.isBlank();
  }
}
