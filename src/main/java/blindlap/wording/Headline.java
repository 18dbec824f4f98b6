package blindlap.wording;

/**
 * The largest sentence of a page, in three parts so that the phrase can be marked.
 *
 * @param before what stands before the phrase
 * @param phrase the verdict phrase; may be empty
 * @param after what stands after it
 */
public record Headline(String before, String phrase, String after) {
  /** Stands in a template where the phrase goes. */
  static final String PLACE = "\uE001";

  static Headline of(String template, String phrase) {
    int at = template.indexOf(PLACE);
    return at < 0
        ? new Headline(template, "", "")
        : new Headline(template.substring(0, at), phrase, template.substring(at + 1));
  }

  /** The sentence. */
  public String text() {
    return before + phrase + after;
  }

  /** With these words in place of the full stop. */
  Headline continued(String words) {
    return after.isEmpty()
        ? new Headline(open(before) + words, phrase, after)
        : new Headline(before, phrase, open(after) + words);
  }

  private static String open(String sentence) {
    return sentence.endsWith(".") ? sentence.substring(0, sentence.length() - 1) : sentence;
  }

  Headline with(String first, String last) {
    return new Headline(first + before, phrase, after + last);
  }
}
