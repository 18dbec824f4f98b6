package blindlap.store;

import blindlap.session.Entry;
import blindlap.session.Hash;
import blindlap.session.NotebookId;
import blindlap.session.StoredEntry;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Checks that every chain of a session is whole: numbers without gaps, hashes that link. */
final class Chains {
  private Chains() {}

  /**
   * @throws blindlap.session.NotebookException naming the place if a chain is broken
   */
  static void verify(List<StoredEntry> entries, Path file) {
    Map<NotebookId, TreeMap<Long, StoredEntry>> chains = new HashMap<>();
    for (StoredEntry stored : entries) {
      chains
          .computeIfAbsent(stored.entry().notebook(), key -> new TreeMap<>())
          .put(stored.entry().number(), stored);
    }
    for (TreeMap<Long, StoredEntry> chain : chains.values()) {
      Hash previous = Hash.NONE;
      long number = 0;
      for (StoredEntry stored : chain.values()) {
        Entry entry = stored.entry();
        if (entry.number() != number + 1 || !entry.previous().equals(previous)) {
          throw Connections.damaged(
              file,
              new IllegalStateException(
                  "the chain of session "
                      + entry.session().brief()
                      + " breaks at entry "
                      + entry.number()));
        }
        number = entry.number();
        previous = stored.hash();
      }
    }
  }
}
