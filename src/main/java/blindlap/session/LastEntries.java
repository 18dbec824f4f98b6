package blindlap.session;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Where the chains of a session end. */
final class LastEntries {
  private LastEntries() {}

  /** The last entry of every chain when more entries have followed. */
  static List<Head> after(List<Head> before, List<StoredEntry> more) {
    Map<NotebookId, Head> heads = new TreeMap<>();
    before.forEach(head -> heads.put(head.notebook(), head));
    for (StoredEntry entry : more) {
      heads.merge(
          entry.entry().notebook(), entry.head(), (a, b) -> a.number() > b.number() ? a : b);
    }
    return List.copyOf(heads.values());
  }
}
