package blindlap.wording;

import blindlap.wording.day.Words;
import java.nio.file.Path;
import java.util.Collection;

/** What a page says of files that were to be written to a folder which somebody chose. */
public final class WrittenWords {
  private static final Words WORDS = Words.of("review");

  private WrittenWords() {}

  /** Where they lie now, or that they could not be written. */
  public static String said(boolean written, Path folder, Collection<String> names) {
    return written
        ? WORDS.say("written.to", folder, String.join(", ", names))
        : WORDS.say("written.not", folder);
  }
}
