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
      List.of(
          "close.",
          "cut",
          "key.in",
          "guess.end.",
          "place",
          "plate.",
          "cap.end",
          "covariate.RIDER",
          "covariate.STARTER",
          "covariate.T",
          "covariate.title",
          "time.signs",
          "timed.by",
          "scorer",
          "void.done",
          "void.stands",
          "void.back",
          "void.changed",
          "deviation.done",
          "cover.off",
          "day.closed",
          "over.",
          "no.session",
          "not.saved",
          "lap",
          "stint.lap",
          "trial.");

  /** Beginnings of keys that only a day of trials asks for; the others are not served. */
  private static final List<String> OF_TRIALS =
      List.of(
          "trial.headline",
          "trial.lap",
          "trial.before",
          "trial.pick",
          "trial.answer",
          "trial.done.",
          "trial.void.follows",
          "trial.void.do",
          "trial.void.name");

  private PhoneWords() {}

  /** Words that a page asks for on a day of trials, and on no other. */
  public static Map<String, String> ofTrials() {
    Words ride = Words.of("ride");
    SortedMap<String, String> words = new TreeMap<>();
    ride.keys().stream()
        .filter(key -> OF_TRIALS.stream().anyMatch(key::startsWith))
        .filter(key -> !key.equals("trial.void.done"))
        .forEach(key -> words.put(key, ride.pattern(key)));
    return words;
  }

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
