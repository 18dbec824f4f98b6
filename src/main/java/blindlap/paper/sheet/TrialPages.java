package blindlap.paper.sheet;

import blindlap.wording.day.Words;
import java.util.HashMap;
import java.util.Map;

/** Which trials of a telling run stand on which page of a sheet. */
final class TrialPages {
  private record Range(int first, int last) {}

  private final Words words;
  private final int trials;
  private final Map<Integer, Range> ranges = new HashMap<>();

  TrialPages(Words words, int trials) {
    this.words = words;
    this.trials = trials;
  }

  void stands(int page, int trial) {
    ranges.merge(
        page,
        new Range(trial, trial),
        (a, b) -> new Range(Math.min(a.first, b.first), Math.max(a.last, b.last)));
  }

  /** "trials 7 to 12 of 100, page 2 of 17"; of a page without trials its number alone. */
  String of(int page, int pages) {
    String number = words.say("page.whole", page, pages);
    Range range = ranges.get(page);
    if (range == null) {
      return number;
    }
    String which =
        range.first == range.last
            ? words.say("trials.one", range.first, trials)
            : words.say("trials.range", range.first, range.last, trials);
    return words.say("page.trials", which, number);
  }
}
