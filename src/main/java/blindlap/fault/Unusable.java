package blindlap.fault;

import java.util.List;

/**
 * The refusal of a calculation that people can run into with a plan, a finding or a series. Besides
 * the sentence for a calculation request it carries its reason as a value, which {@code wording}
 * says.
 */
public final class Unusable extends StatsException {
  private static final long serialVersionUID = 1L;

  private final Fault reason;
  private final List<String> details;

  /**
   * @param argument the argument at fault, as in {@link StatsException}
   * @param why rest of the sentence for a calculation request, with its full stop
   * @param reason why, as a value
   * @param details numbers and texts that the reason's sentence needs
   */
  public Unusable(String argument, String why, Fault reason, Object... details) {
    this(argument, why, Problem.of(reason, "", details));
  }

  private Unusable(String argument, String why, Problem problem) {
    super(argument, why);
    this.reason = problem.fault();
    this.details = problem.details();
  }

  /** The reason with its details; its place is left to whoever knows it. */
  public Problem problem() {
    return problem("");
  }

  /** The reason with its details and the place it was found in, as the user knows it. */
  public Problem problem(String where) {
    return new Problem(reason, where, details);
  }

  @Override
  public Unusable named(String name) {
    Unusable renamed = new Unusable(name, why(), problem());
    renamed.initCause(this);
    return renamed;
  }
}
