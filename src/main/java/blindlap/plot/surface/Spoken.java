package blindlap.plot.surface;

/**
 * A picture in words.
 *
 * @param sentence what it shows, in one sentence
 * @param table its numbers, in running text; may be empty
 */
public record Spoken(String sentence, String table) {
  /** Checks that there is a sentence. */
  public Spoken {
    if (sentence.isBlank()) {
      throw new IllegalArgumentException("A drawing needs a sentence that says what it shows");
    }
  }

  /** Sentence and table together. */
  public String all() {
    return table.isBlank() ? sentence : sentence + " " + table;
  }
}
