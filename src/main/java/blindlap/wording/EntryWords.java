package blindlap.wording;

import blindlap.wording.day.Words;

/** What an entry is about, such as "a void". */
public final class EntryWords {
  private static final Words WORDS = Words.of("remarks");

  private EntryWords() {}

  /** By the name of its fact; the name itself where another program has one of its own. */
  public static String entry(String fact) {
    return WORDS.has("fact." + fact) ? WORDS.say("fact." + fact) : fact;
  }
}
