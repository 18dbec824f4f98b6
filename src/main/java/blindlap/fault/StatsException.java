package blindlap.fault;

/**
 * Numbers that a calculation cannot use: infinite, impossible, too few. The message is one sentence
 * that starts with the argument at fault; it answers a calculation request. What a plan, a finding
 * or a series can run into is {@link Unusable}.
 */
public sealed class StatsException extends IllegalArgumentException permits Unusable {
  private static final long serialVersionUID = 2L;

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
  public final String argument() {
    return argument;
  }

  /** What is wrong with it, as the rest of a sentence. */
  public final String why() {
    return why;
  }

  /** The same refusal where the caller knows the argument by another name. */
  public StatsException named(String name) {
    StatsException renamed = new StatsException(name, why);
    renamed.initCause(this);
    return renamed;
  }
}
