package blindlap.wording;

import blindlap.wording.day.Words;
import java.util.List;

/** Sentences of a null run that compare two names, so that nobody takes them for setups on. */
final class ByName {
  private static final Words WORDS = Words.of("finding");

  private ByName() {}

  static List<String> lines(List<String> lines) {
    return lines.stream().map(line -> WORDS.say("null.line", line)).toList();
  }
}
