package blindlap.fault;

/**
 * Numbers that a calculation cannot use: infinite, impossible, too few. The message is one sentence
 * that starts with the argument at fault.
 */
public final class StatsException extends IllegalArgumentException {
  private static final long serialVersionUID = 1L;

  private final String argument;
  private final String why;

  /**
   * @param argument the argument at fault, perhaps with an index: {@code groups[2]}
   * @param why rest of the sentence, with its full stop
   */
  public StatsException(String argument, String why) {
    super(argument + ": " + why);
    this.argument = argument;
    this.why = why;
  }

  /** The argument at fault. */
  public String argument() {
    return argument;
  }

  /** What is wrong with it, as the rest of a sentence. */
  public String why() {
    return why;
  }
}
