package blindlap.session;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.PriorityQueue;

/**
 * Sorts entries so that each comes after everything its writer had seen; where that leaves a
 * choice, by notebook id and number. The same set of entries always gives the same list.
 */
public final class CausalOrder {
  private static final Comparator<StoredEntry> TIES =
      Comparator.comparing((StoredEntry e) -> e.entry().notebook())
          .thenComparing(e -> e.entry().number());

  private CausalOrder() {}

  private record Key(NotebookId notebook, long number) {}

  /**
   * Sorts the entries of one session.
   *
   * @param entries in any order; predecessors that are absent are taken as seen
   */
  public static List<StoredEntry> sort(List<StoredEntry> entries) {
    Map<Key, StoredEntry> byKey = new HashMap<>();
    for (StoredEntry entry : entries) {
      byKey.put(new Key(entry.entry().notebook(), entry.entry().number()), entry);
    }
    Map<StoredEntry, Integer> waiting = new IdentityHashMap<>();
    Map<Key, List<StoredEntry>> followers = new HashMap<>();
    PriorityQueue<StoredEntry> ready = new PriorityQueue<>(TIES);
    for (StoredEntry stored : entries) {
      int missing = 0;
      for (Key before : predecessors(stored.entry())) {
        if (byKey.containsKey(before)) {
          followers.computeIfAbsent(before, key -> new ArrayList<>()).add(stored);
          missing++;
        }
      }
      waiting.put(stored, missing);
      if (missing == 0) {
        ready.add(stored);
      }
    }
    List<StoredEntry> sorted = new ArrayList<>(entries.size());
    while (!ready.isEmpty()) {
      StoredEntry next = ready.poll();
      sorted.add(next);
      Key key = new Key(next.entry().notebook(), next.entry().number());
      for (StoredEntry follower : followers.getOrDefault(key, List.of())) {
        if (waiting.merge(follower, -1, Integer::sum) == 0) {
          ready.add(follower);
        }
      }
    }
    if (sorted.size() != entries.size()) {
      throw new IllegalArgumentException("entries name one another as predecessors");
    }
    return sorted;
  }

  private static List<Key> predecessors(Entry entry) {
    List<Key> before = new ArrayList<>();
    if (entry.number() > 1) {
      before.add(new Key(entry.notebook(), entry.number() - 1));
    }
    for (Head head : entry.seen()) {
      before.add(new Key(head.notebook(), head.number()));
    }
    return before;
  }
}
