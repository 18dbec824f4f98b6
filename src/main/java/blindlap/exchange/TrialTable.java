package blindlap.exchange;

import blindlap.exchange.PackageTables.Column;
import blindlap.fault.Unreadable;
import blindlap.plan.PlanJson;
import blindlap.plan.TellingRun;
import blindlap.review.DayRecord;
import blindlap.review.TellingAnalysis;
import blindlap.review.TellingTrial;
import blindlap.session.day.Guess;
import blindlap.session.day.Guess.Sureness;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;

/** The trials of a telling run; no table of other sessions. */
final class TrialTable {
  private TrialTable() {}

  /** Adds how sure the rider was to the answers of a package. */
  static void sureness(
      List<Map<String, String>> rows, TellingRun run, SortedMap<Integer, Guess> guesses) {
    for (Map<String, String> row : rows) {
      String trial = PackageCells.text(row, "trial");
      String typed = PackageCells.text(row, "sureness");
      Guess guess =
          trial.matches("\\d{1,3}") ? guesses.get(run.lastStint(Integer.parseInt(trial))) : null;
      if (guess != null && !typed.isEmpty()) {
        Sureness sure =
            Sureness.parse(typed)
                .orElseThrow(() -> new Unreadable(PackageFault.NOT_A_SURENESS, typed));
        guesses.put(
            run.lastStint(Integer.parseInt(trial)), new Guess(guess.setup(), sure, guess.cue()));
      }
    }
  }

  static void write(PackageTables tables, DayRecord day) {
    TellingRun run = day.plan().telling();
    if (run == null) {
      return;
    }
    List<TellingTrial> answered = TellingAnalysis.finding(day).trials();
    List<List<String>> rows = new ArrayList<>();
    for (int number = 1; number <= run.trials(); number++) {
      int trial = number;
      Optional<TellingTrial> counts =
          answered.stream().filter(each -> each.number() == trial).findFirst();
      Guess answer = day.guesses().get(run.lastStint(number));
      Sureness sureness = answer == null ? null : answer.sureness();
      rows.add(
          List.of(
              String.valueOf(number),
              String.valueOf(run.firstStint(number)),
              counts.map(each -> String.valueOf(each.differed())).orElse(""),
              counts.map(each -> String.valueOf(each.named())).orElse(""),
              counts.map(each -> String.valueOf(each.right())).orElse(""),
              sureness == null ? "" : PlanJson.word(sureness),
              String.valueOf(counts.isPresent())));
    }
    tables.table(
        "trials",
        List.of(
            Column.of("trial", "integer", "trial, from 1"),
            Column.of("first_stint", "integer", "its first stint; every lap of it is one"),
            Column.of("differed", "integer", "the lap to be named, from 1 within the trial"),
            Column.of("named", "integer", "the lap that was named"),
            Column.of("right", "boolean", "whether they are the same"),
            Column.of("sureness", "string", "hunch, fairly sure, certain; empty if not said"),
            Column.of("counts", "boolean", "false where it was void or has no answer")),
        rows);
  }
}
