package blindlap.session;

import blindlap.fault.Problem;
import java.util.List;

/**
 * What a full check of a notebook found.
 *
 * @param sessions number of sessions
 * @param entries number of entries that were read and hashed again
 * @param problems what is wrong, of {@link NotebookFault} and {@link ChainFault}; none if it is
 *     sound
 */
public record NotebookReport(long sessions, long entries, List<Problem> problems) {
  public NotebookReport {
    problems = List.copyOf(problems);
  }

  /** True if every entry verifies and the file is whole. */
  public boolean sound() {
    return problems.isEmpty();
  }
}
