package blindlap.fault;

import java.util.List;

/**
 * What was to be read is not in a form this program knows. It carries what is wrong as a value,
 * which {@code wording} says.
 */
public final class Unreadable extends IllegalArgumentException {
  private static final long serialVersionUID = 1L;

  private final Fault reason;
  private final List<String> details;

  /**
   * @param reason what is wrong
   * @param details numbers and texts that its sentence needs
   */
  public Unreadable(Fault reason, Object... details) {
    this(Problem.of(reason, "", details));
  }

  private Unreadable(Problem problem) {
    super(problem.fault().name() + " " + problem.details());
    this.reason = problem.fault();
    this.details = problem.details();
  }

  /** What is wrong, with its details; its place is left to whoever knows it. */
  public Problem problem() {
    return new Problem(reason, "", details);
  }
}
