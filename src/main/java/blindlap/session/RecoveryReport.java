package blindlap.session;

import blindlap.fault.Problem;
import java.util.List;

/**
 * What could be saved from a damaged notebook.
 *
 * @param sessions number of sessions in the new notebook
 * @param entries number of entries in the new notebook; every one of them verifies
 * @param losses what is known to be missing, of {@link NotebookFault}
 */
public record RecoveryReport(long sessions, long entries, List<Problem> losses) {
  public RecoveryReport {
    losses = List.copyOf(losses);
  }
}
