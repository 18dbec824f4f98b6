package blindlap.wording.day;

import java.util.Map;

/** Words of the pages on phones. */
public final class PhoneWords {
  private PhoneWords() {}

  /** All words that a page asks for, by key. */
  public static Map<String, String> all() {
    return Map.of();
  }
}
