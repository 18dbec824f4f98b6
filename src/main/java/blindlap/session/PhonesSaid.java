package blindlap.session;

import blindlap.session.day.ByPhone;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * What phones said so far: which messages are entered, and when what stands was said, so that an
 * answer that was given earlier and came later does not replace it.
 */
final class PhonesSaid {
  /** Greatest number of an entered message, by client. */
  final Map<String, Long> last = new TreeMap<>();

  /** What came so late that something newer stood there. */
  final List<StoredEntry> outdated = new ArrayList<>();

  private final Map<Object, Instant> said = new HashMap<>();
  private @Nullable Instant moved;

  void takeOver(PhonesSaid other) {
    last.putAll(other.last);
    outdated.addAll(other.outdated);
    said.putAll(other.said);
    moved = other.moved;
  }

  void take(StoredEntry stored) {
    ByPhone phone = stored.entry().phone();
    if (phone != null) {
      last.merge(phone.client(), phone.number(), Math::max);
    }
  }

  /**
   * True if an entry says something of which nothing newer stands; what a phone said late otherwise
   * is kept and listed.
   *
   * @param of what it is about
   */
  boolean newest(StoredEntry stored, Object of) {
    Entry entry = stored.entry();
    Instant stands = said.get(of);
    ByPhone phone = entry.phone();
    if (phone != null && phone.late() && stands != null && entry.when().isBefore(stands)) {
      outdated.add(stored);
      return false;
    }
    said.put(of, entry.when());
    return true;
  }

  /** True if the bike was not moved later than this entry says that it was. */
  boolean moves(Entry entry) {
    if (moved != null && entry.phone() != null && entry.when().isBefore(moved)) {
      return false;
    }
    moved = entry.when();
    return true;
  }
}
