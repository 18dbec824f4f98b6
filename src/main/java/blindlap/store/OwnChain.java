package blindlap.store;

import blindlap.exchange.EntryText;
import blindlap.session.Entry;
import blindlap.session.Fact;
import blindlap.session.Hash;
import blindlap.session.Head;
import blindlap.session.NotebookId;
import blindlap.session.StoredEntry;
import blindlap.session.day.ByPhone;
import blindlap.session.day.SessionId;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** New entries at the end of a notebook's own chain. */
final class OwnChain {
  private OwnChain() {}

  static List<StoredEntry> longer(
      NotebookId id,
      SessionId session,
      List<Head> heads,
      List<Fact> facts,
      Instant at,
      ZoneId zone,
      @Nullable ByPhone phone) {
    if (facts.isEmpty() || (heads.isEmpty() && !(facts.get(0) instanceof Fact.PlanCommitted))) {
      throw new IllegalArgumentException("a session begins with a committed plan");
    }
    long number = 0;
    Hash previous = Hash.NONE;
    List<Head> others = new ArrayList<>();
    for (Head head : heads) {
      if (head.notebook().equals(id)) {
        number = head.number();
        previous = head.hash();
      } else {
        others.add(head);
      }
    }
    List<StoredEntry> written = new ArrayList<>();
    for (Fact fact : facts) {
      number++;
      StoredEntry entry =
          EntryText.write(new Entry(session, id, number, previous, others, at, zone, fact, phone));
      previous = entry.hash();
      written.add(entry);
    }
    return written;
  }
}
