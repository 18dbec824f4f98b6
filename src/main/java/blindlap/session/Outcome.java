package blindlap.session;

import blindlap.fault.Problem;
import java.util.List;

/** The answer to a command: what a user may well try is refused in words, not by an exception. */
public sealed interface Outcome {
  /**
   * The command holds and becomes these facts.
   *
   * @param facts in the order in which they are written
   */
  record Accepted(List<Fact> facts) implements Outcome {
    public Accepted {
      facts = List.copyOf(facts);
    }
  }

  /**
   * The command does not hold; nothing is written.
   *
   * @param problems at least one
   */
  record Refused(List<Problem> problems) implements Outcome {
    public Refused {
      problems = List.copyOf(problems);
    }
  }

  /** Accepts facts. */
  static Outcome accepted(Fact... facts) {
    return new Accepted(List.of(facts));
  }

  /** Refuses for one problem. */
  static Outcome refused(SessionFault fault, String where, Object... details) {
    return new Refused(List.of(Problem.of(fault, where, details)));
  }
}
