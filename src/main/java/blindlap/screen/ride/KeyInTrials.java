package blindlap.screen.ride;

import blindlap.session.day.Day;
import blindlap.session.day.Trial;
import blindlap.wording.day.RideWords;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** How the rows of a table are called where they stand by trial; in other sessions by their lap. */
final class KeyInTrials {
  private final Day day;

  KeyInTrials(Day day) {
    this.day = day;
  }

  private Optional<Trial> trial(List<String> row) {
    return trial(row.get(0));
  }

  private Optional<Trial> trial(String lap) {
    return Trial.at(day, Integer.parseInt(lap));
  }

  /** True if rows stand by trial. */
  boolean any() {
    return Trial.at(day, 1).isPresent();
  }

  private int number(List<String> row) {
    return trial(row).map(Trial::number).orElse(0);
  }

  /** The row, and the others of its trial, by number. */
  List<Integer> together(List<List<String>> rows, int row) {
    int number = number(rows.get(row));
    return number == 0
        ? List.of(row)
        : IntStream.range(0, rows.size())
            .filter(each -> number(rows.get(each)) == number)
            .boxed()
            .toList();
  }

  /** "Trial 3: laps 7 to 9" above the first of its rows; else empty. */
  String above(List<List<String>> rows, int row) {
    boolean goesOn = row > 0 && number(rows.get(row)) == number(rows.get(row - 1));
    return trial(rows.get(row))
        .filter(trial -> !goesOn)
        .map(t -> RideWords.say("key.in.trial", t.number(), t.first(), t.last()))
        .orElse("");
  }

  /** "lap 9", of a telling run "trial 3, lap 9". */
  String lap(String lap) {
    return trial(lap)
        .map(trial -> RideWords.say("key.in.lap.trial", trial.number(), lap))
        .orElseGet(() -> RideWords.say("key.in.lap", lap));
  }

  /** What was recorded of rows in which something was typed. */
  String recorded(List<List<String>> typed) {
    return any()
        ? RideWords.say(
            "key.in.recorded.trials", typed.stream().map(this::number).distinct().count())
        : RideWords.say("key.in.recorded", typed.size());
  }
}
