package blindlap.seal;

import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;

/** Words as people type them: capitals, spaces, dashes and commas do not matter. */
final class TypedWords {
  private static final Pattern BETWEEN = Pattern.compile("[^\\p{L}\\p{N}]+");

  private TypedWords() {}

  /** The words in order, lower case. */
  static List<String> of(String typed) {
    return BETWEEN
        .splitAsStream(typed.toLowerCase(Locale.ROOT))
        .filter(part -> !part.isEmpty())
        .toList();
  }
}
