package blindlap.store;

import blindlap.fault.Problem;
import blindlap.session.Chains;
import blindlap.session.Head;
import blindlap.session.StoredEntry;
import blindlap.session.day.SessionId;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * Entries of one session from elsewhere beside those that are here.
 *
 * @param session which session
 * @param all what would be here afterwards, in no order
 * @param fresh what is new
 * @param known number of entries that were here already
 */
record Merge(SessionId session, List<StoredEntry> all, List<StoredEntry> fresh, int known) {
  static Merge of(SessionId session, List<StoredEntry> here, List<StoredEntry> coming) {
    Set<Head> seen = new HashSet<>();
    here.forEach(entry -> seen.add(entry.head()));
    List<StoredEntry> fresh = coming.stream().filter(entry -> seen.add(entry.head())).toList();
    List<StoredEntry> all = new ArrayList<>(here);
    all.addAll(fresh);
    return new Merge(session, all, fresh, coming.size() - fresh.size());
  }

  /** Why they do not fit together; nothing if they do. */
  List<Problem> problems() {
    return Chains.problems(session, all);
  }
}
