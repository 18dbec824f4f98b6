package blindlap.session;

import blindlap.fault.Problem;
import blindlap.session.day.SessionId;
import java.util.List;

/** What became of entries that came from elsewhere. */
public sealed interface Addition {
  /**
   * They are in the notebook and on disk.
   *
   * @param added number of new entries
   * @param known number of entries that were here already
   */
  record Added(int added, int known) implements Addition {}

  /**
   * Nothing was added: together with what is here they would not verify.
   *
   * @param session whose entries
   * @param problems at least one, of {@link ChainFault}
   */
  record Refused(SessionId session, List<Problem> problems) implements Addition {
    public Refused {
      problems = List.copyOf(problems);
    }
  }
}
