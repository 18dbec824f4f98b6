package blindlap.wording.day;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/** The usual endings of an English word: lap, laps; ride, rides, riding; stop, stopped. */
public final class WordForms {
  private static final String VOWELS = "aeiou";

  /** Verbs of ours that change inside. */
  private static final Map<String, List<String>> ODD =
      Map.of(
          "draw", List.of("drew", "drawn"),
          "ride", List.of("rode", "ridden"),
          "show", List.of("shown"),
          "hide", List.of("hid", "hidden"));

  private WordForms() {}

  /**
   * The word itself and what its endings make of it, in small letters. Some of them are no words;
   * whoever looks a word up meets none of those.
   *
   * @param word one word or several; endings are those of the last
   */
  public static Set<String> of(String word) {
    String plain = word.toLowerCase(Locale.ROOT);
    Set<String> forms = new LinkedHashSet<>(Set.of(plain));
    forms.addAll(ODD.getOrDefault(plain, List.of()));
    int length = plain.length();
    if (length < 2) {
      return forms;
    }
    char last = plain.charAt(length - 1);
    String less = plain.substring(0, length - 1);
    for (String ending : new String[] {"s", "es", "ed", "ing", "'s"}) {
      forms.add(plain + ending);
    }
    if (last == 'e') {
      forms.add(plain + "d");
      forms.add(less + "ing");
    }
    if (last == 'y') {
      forms.add(less + "ies");
      forms.add(less + "ied");
    }
    boolean doubles =
        VOWELS.indexOf(last) < 0 && VOWELS.indexOf(plain.charAt(length - 2)) >= 0 && length > 2;
    if (doubles) {
      forms.add(plain + last + "ed");
      forms.add(plain + last + "ing");
    }
    return forms;
  }
}
