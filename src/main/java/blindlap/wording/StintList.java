package blindlap.wording;

import blindlap.wording.day.Words;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;

/** "stint 3", "stints 3 and 8", "the warm-up and stints 3, 5 and 8"; stint 0 is the warm-up. */
final class StintList {
  private static final Words WORDS = Words.of("finding");

  private StintList() {}

  static String words(Collection<Integer> stints) {
    List<String> numbers = stints.stream().filter(s -> s > 0).map(String::valueOf).toList();
    List<String> parts = new ArrayList<>();
    if (stints.contains(0)) {
      parts.add(WORDS.say("stint.warm.up"));
    }
    if (!numbers.isEmpty()) {
      parts.add(WORDS.say(numbers.size() == 1 ? "stint" : "stints", and(numbers)));
    }
    return and(parts);
  }

  /** Parts with commas between them and "and" before the last. */
  static String and(List<String> parts) {
    int last = parts.size() - 1;
    return last < 1
        ? String.join("", parts)
        : String.join(", ", parts.subList(0, last)) + WORDS.say("and") + parts.get(last);
  }
}
