package blindlap.session;

import blindlap.session.day.ByPhone;
import java.time.Instant;
import java.util.HashMap;
import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * What the writers of a session's entries had seen of one another. Entries are taken in causal
 * order; a notebook has always seen what it wrote itself before.
 */
final class Sight {
  /**
   * An entry's place.
   *
   * @param number in the chain of the notebook
   * @param phone the message of a phone that it came by; null where it came by none
   * @param when it was said
   */
  record Place(NotebookId notebook, long number, @Nullable ByPhone phone, Instant when) {
    static Place of(Entry entry) {
      return new Place(entry.notebook(), entry.number(), entry.phone(), entry.when());
    }

    /** True if both were written by the same machine: a phone without signal is one of its own. */
    boolean sameHand(Place other) {
      return notebook.equals(other.notebook) && apart().equals(other.apart());
    }

    /** The phone that said it without signal; empty for what was said at the notebook. */
    private String apart() {
      return phone == null || !phone.late() ? "" : phone.client();
    }
  }

  /**
   * By notebook, from which of its entries on how far the other chains were known. Only entries
   * that learned something new have a line, so that a day on one machine has none.
   */
  private final Map<NotebookId, NavigableMap<Long, Map<NotebookId, Long>>> known = new HashMap<>();

  Sight copy() {
    Sight copy = new Sight();
    known.forEach((notebook, lines) -> copy.known.put(notebook, new TreeMap<>(lines)));
    return copy;
  }

  /** Takes the next entry. */
  void take(Entry entry) {
    Map<NotebookId, Long> before = others(entry.notebook(), entry.number());
    Map<NotebookId, Long> now = new HashMap<>(before);
    for (Head head : entry.seen()) {
      others(head.notebook(), head.number()).forEach((n, upTo) -> now.merge(n, upTo, Math::max));
      now.merge(head.notebook(), head.number(), Math::max);
    }
    now.remove(entry.notebook());
    if (!now.equals(before)) {
      known
          .computeIfAbsent(entry.notebook(), none -> new TreeMap<>())
          .put(entry.number(), Map.copyOf(now));
    }
  }

  private Map<NotebookId, Long> others(NotebookId notebook, long number) {
    NavigableMap<Long, Map<NotebookId, Long>> lines = known.get(notebook);
    Map.Entry<Long, Map<NotebookId, Long>> line = lines == null ? null : lines.floorEntry(number);
    return line == null ? Map.of() : line.getValue();
  }

  /** True if whoever wrote at a place had seen another; nobody has seen what is being written. */
  boolean saw(Place writer, Place other) {
    ByPhone phone = writer.phone();
    Long knew = phone == null ? null : phone.knew();
    if (phone != null && knew != null) {
      return ownMessage(phone, writer, other) || knew(writer.notebook(), knew, other);
    }
    return reached(writer, other);
  }

  /** What a phone said before, whether or not it had signal then. */
  private static boolean ownMessage(ByPhone phone, Place writer, Place other) {
    ByPhone before = other.phone();
    return before != null
        && before.client().equals(phone.client())
        && writer.notebook().equals(other.notebook())
        && other.number() < writer.number();
  }

  /** What whoever had read a chain up to an entry had seen: that entry, and what it had seen. */
  private boolean knew(NotebookId chain, long upTo, Place other) {
    return chain.equals(other.notebook())
        ? other.number() <= upTo
        : reached(new Place(chain, upTo, null, other.when()), other);
  }

  private boolean reached(Place writer, Place other) {
    if (writer.notebook().equals(other.notebook())) {
      return other.number() < writer.number();
    }
    Long upTo = others(writer.notebook(), writer.number()).get(other.notebook());
    return upTo != null && upTo >= other.number();
  }
}
