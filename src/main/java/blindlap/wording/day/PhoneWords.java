package blindlap.wording.day;

import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Words of the pages on phones: those of their own, and those that they share with the window, so
 * that both say the same.
 */
public final class PhoneWords {
  // Closing and ending a day early are the laptop's, and what a guess may be comes with the day:
  // phones load nothing of it.
  private static final List<String> WINDOW_ALONE =
      List.of("close.", "cut.", "key.in.", "guess.end.");

  private PhoneWords() {}

  /** All words that a page may ask for, by key, with places {0}, {1} … for what is put in. */
  public static Map<String, String> all() {
    SortedMap<String, String> all = new TreeMap<>();
    for (Words words : new Words[] {Words.of("ride"), Words.of("phone")}) {
      words.keys().stream()
          .filter(key -> WINDOW_ALONE.stream().noneMatch(key::startsWith))
          .forEach(key -> all.put(key, words.pattern(key)));
    }
    return all;
  }
}
