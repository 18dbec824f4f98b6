package blindlap.compute;

/**
 * A calculation request or check file that cannot be used. The message is one sentence that starts
 * with the field at fault, such as {@code given.trials: is missing.}
 */
public final class RequestException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  private final String field;
  private final String sentence;

  /**
   * @param field path of the field at fault, such as {@code given.groups[2]}
   * @param why rest of the sentence, with its full stop
   */
  public RequestException(String field, String why) {
    super(field + ": " + why);
    this.field = field;
    this.sentence = field + ": " + why;
  }

  /** The message: field and what is wrong with it. */
  public String sentence() {
    return sentence;
  }

  /** Path of the field at fault. */
  public String field() {
    return field;
  }
}
