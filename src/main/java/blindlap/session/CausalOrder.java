package blindlap.session;

import blindlap.fault.Unreadable;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.PriorityQueue;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Sorts entries so that each comes after everything its writer had seen. Where that leaves a
 * choice: first what the closing of the review had seen and that closing itself, then what the
 * opening of the seal had seen and that opening, then the rest; within each by notebook id and
 * number. So an entry that a closing had not seen always comes after it, however late it arrives.
 * The same set of entries always gives the same list.
 */
public final class CausalOrder {
  private static final Comparator<StoredEntry> BY_KEY =
      Comparator.comparing((StoredEntry e) -> e.entry().notebook())
          .thenComparing(e -> e.entry().number());

  private final List<StoredEntry> entries;
  private final Map<Key, StoredEntry> byKey = new HashMap<>();

  private CausalOrder(List<StoredEntry> entries) {
    this.entries = entries;
    for (StoredEntry entry : entries) {
      byKey.put(key(entry), entry);
    }
  }

  private record Key(NotebookId notebook, long number) {}

  private static Key key(StoredEntry entry) {
    return new Key(entry.entry().notebook(), entry.entry().number());
  }

  /**
   * Sorts the entries of one session.
   *
   * @param entries in any order, none twice; predecessors that are absent are taken as seen
   * @throws Unreadable if entries name one another as predecessors
   */
  public static List<StoredEntry> sort(List<StoredEntry> entries) {
    if (entries.stream().map(e -> e.entry().notebook()).distinct().count() <= 1) {
      return entries.stream().sorted(BY_KEY).toList();
    }
    CausalOrder order = new CausalOrder(entries);
    return order.sorted(order.firstParts());
  }

  /**
   * True if whoever knew these heads of a session knew this entry of it.
   *
   * @param entries of the session, all that are known now
   * @param heads as an entry elsewhere names them
   * @param entry one of the entries
   */
  public static boolean known(List<StoredEntry> entries, List<Head> heads, StoredEntry entry) {
    CausalOrder order = new CausalOrder(entries);
    return heads.stream()
        .map(head -> order.byKey.get(new Key(head.notebook(), head.number())))
        .filter(java.util.Objects::nonNull)
        .anyMatch(head -> order.past(head).contains(key(entry)));
  }

  /** For each entry of the first two parts, which part it belongs to. */
  private Map<Key, Integer> firstParts() {
    Map<Key, Integer> parts = new HashMap<>();
    Optional<StoredEntry> closing = closing();
    if (closing.isPresent()) {
      opening(closing.get()).ifPresent(opening -> past(opening).forEach(key -> parts.put(key, 1)));
      past(closing.get()).forEach(key -> parts.put(key, 0));
    }
    return parts;
  }

  /**
   * The closing of the review that counts: one that had seen no other and a closed day; rather one
   * whose seal was then opened; then by notebook id and number.
   */
  private Optional<StoredEntry> closing() {
    Set<Key> opened = new HashSet<>();
    of(Fact.SealOpened.class).forEach(opening -> opened.addAll(past(opening)));
    return of(Fact.ReviewClosed.class)
        .filter(closing -> sees(closing, Fact.DayClosed.class))
        .filter(closing -> !sees(closing, Fact.ReviewClosed.class))
        .min(
            Comparator.comparing((StoredEntry e) -> !opened.contains(key(e)))
                .thenComparing(BY_KEY));
  }

  private Optional<StoredEntry> opening(StoredEntry closing) {
    return of(Fact.SealOpened.class)
        .filter(opening -> past(opening).contains(key(closing)))
        .filter(opening -> !sees(opening, Fact.SealOpened.class))
        .min(BY_KEY);
  }

  private Stream<StoredEntry> of(Class<? extends Fact> kind) {
    return entries.stream().filter(entry -> kind.isInstance(entry.entry().fact()));
  }

  private boolean sees(StoredEntry entry, Class<? extends Fact> kind) {
    return past(entry).stream()
        .filter(key -> !key.equals(key(entry)))
        .anyMatch(
            key ->
                kind.isInstance(java.util.Objects.requireNonNull(byKey.get(key)).entry().fact()));
  }

  /** An entry and everything its writer had seen, as far as it is here. */
  private Set<Key> past(StoredEntry last) {
    Set<Key> past = new HashSet<>();
    Deque<StoredEntry> open = new ArrayDeque<>(List.of(last));
    while (!open.isEmpty()) {
      StoredEntry entry = open.pop();
      if (past.add(key(entry))) {
        for (Key before : predecessors(entry.entry())) {
          StoredEntry found = byKey.get(before);
          if (found != null) {
            open.push(found);
          }
        }
      }
    }
    return past;
  }

  private List<StoredEntry> sorted(Map<Key, Integer> parts) {
    Map<Key, Integer> waiting = new HashMap<>();
    Map<Key, List<StoredEntry>> followers = new HashMap<>();
    PriorityQueue<StoredEntry> ready =
        new PriorityQueue<>(
            Comparator.comparing((StoredEntry e) -> parts.getOrDefault(key(e), 2))
                .thenComparing(BY_KEY));
    for (StoredEntry entry : entries) {
      List<Key> before =
          predecessors(entry.entry()).stream().filter(byKey::containsKey).distinct().toList();
      before.forEach(k -> followers.computeIfAbsent(k, any -> new ArrayList<>()).add(entry));
      waiting.put(key(entry), before.size());
      if (before.isEmpty()) {
        ready.add(entry);
      }
    }
    List<StoredEntry> sorted = new ArrayList<>(entries.size());
    while (!ready.isEmpty()) {
      StoredEntry next = ready.poll();
      sorted.add(next);
      for (StoredEntry follower : followers.getOrDefault(key(next), List.of())) {
        if (waiting.merge(key(follower), -1, Integer::sum) == 0) {
          ready.add(follower);
        }
      }
    }
    if (sorted.size() != entries.size()) {
      throw new Unreadable(EntryFault.IN_A_CIRCLE);
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
