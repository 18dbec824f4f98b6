package blindlap.session;

import blindlap.fault.Problem;
import blindlap.session.day.SessionId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** Checks that the chains of a session are whole and that they agree with one another. */
public final class Chains {
  private final Map<NotebookId, TreeMap<Long, StoredEntry>> chains = new TreeMap<>();
  private final List<Problem> problems = new ArrayList<>();

  private Chains() {}

  /**
   * What is wrong with a set of entries.
   *
   * @param session whose entries they should be
   * @param entries in any order; their texts match their hashes
   * @return nothing if every chain starts at 1, has no gap, links by hash, had seen only entries
   *     that are here, and the first entry of all commits the plan
   */
  public static List<Problem> problems(SessionId session, List<StoredEntry> entries) {
    Chains chains = new Chains();
    for (StoredEntry stored : entries) {
      chains.add(session, stored);
    }
    for (TreeMap<Long, StoredEntry> chain : chains.chains.values()) {
      chains.checkChain(chain);
    }
    return List.copyOf(chains.problems);
  }

  /**
   * As many entries as still verify: each chain up to its first break, without what had seen
   * something that is not kept.
   *
   * @param entries in any order; their texts match their hashes
   */
  public static List<StoredEntry> verifying(SessionId session, List<StoredEntry> entries) {
    List<StoredEntry> kept = new ArrayList<>();
    Map<NotebookId, Head> heads = new HashMap<>();
    Set<Head> known = new HashSet<>();
    List<StoredEntry> left = new ArrayList<>(entries);
    left.removeIf(stored -> !stored.entry().session().equals(session));
    left.sort(Comparator.comparing(stored -> stored.entry().number()));
    boolean grown = true;
    while (grown) {
      grown = false;
      for (StoredEntry stored : List.copyOf(left)) {
        Entry entry = stored.entry();
        if (follows(entry, heads.get(entry.notebook())) && known.containsAll(entry.seen())) {
          kept.add(stored);
          heads.put(entry.notebook(), stored.head());
          known.add(stored.head());
          left.remove(stored);
          grown = true;
        }
      }
    }
    return kept;
  }

  private static boolean follows(Entry entry, @Nullable Head own) {
    if (own == null) {
      return entry.number() == 1
          && entry.previous().equals(Hash.NONE)
          && (isCommit(entry) || !entry.seen().isEmpty());
    }
    return entry.number() == own.number() + 1 && entry.previous().equals(own.hash());
  }

  private void add(SessionId session, StoredEntry stored) {
    Entry entry = stored.entry();
    if (!entry.session().equals(session)) {
      report(ChainFault.OTHER_SESSION, entry, entry.session().brief());
      return;
    }
    StoredEntry other =
        chains
            .computeIfAbsent(entry.notebook(), key -> new TreeMap<>())
            .putIfAbsent(entry.number(), stored);
    if (other != null && !other.hash().equals(stored.hash())) {
      report(ChainFault.FORKED, entry);
    }
  }

  private void checkChain(TreeMap<Long, StoredEntry> chain) {
    Hash previous = Hash.NONE;
    long number = 0;
    for (StoredEntry stored : chain.values()) {
      Entry entry = stored.entry();
      if (entry.number() != number + 1) {
        report(ChainFault.GAP, entry);
      } else if (!entry.previous().equals(previous)) {
        report(ChainFault.NOT_LINKED, entry);
      }
      if (entry.number() == 1 && entry.seen().isEmpty() && !isCommit(entry)) {
        report(ChainFault.NO_COMMIT, entry);
      }
      entry.seen().forEach(seen -> checkSeen(entry, seen));
      number = entry.number();
      previous = stored.hash();
    }
  }

  private static boolean isCommit(Entry entry) {
    return entry.fact() instanceof Fact.PlanCommitted;
  }

  private void checkSeen(Entry entry, Head seen) {
    StoredEntry found = chains.getOrDefault(seen.notebook(), new TreeMap<>()).get(seen.number());
    if (found == null) {
      report(ChainFault.SEEN_IS_MISSING, entry, seen.number(), brief(seen.notebook()));
    } else if (!found.hash().equals(seen.hash())) {
      report(ChainFault.SEEN_DIFFERS, entry, seen.number(), brief(seen.notebook()));
    }
  }

  private void report(ChainFault fault, Entry entry, Object... details) {
    problems.add(Problem.of(fault, place(entry), details));
  }

  /** Where an entry stands, as sentences name it. */
  public static String place(Entry entry) {
    return "entry " + entry.number() + " of notebook " + brief(entry.notebook());
  }

  private static String brief(NotebookId id) {
    return new SessionId(id.text()).brief();
  }
}
