package blindlap.phone;

import java.time.Clock;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** What was refused, once for each reason and whoever asked. */
final class Refusals {
  /** Nobody reads more, and an attacker shall not fill the memory. */
  private static final int MOST = 200;

  private final Clock clock;
  private final List<Phones.Refused> list = new ArrayList<>();
  private final Set<String> known = new HashSet<>();

  Refusals(Clock clock) {
    this.clock = clock;
  }

  /**
   * Notes it.
   *
   * @param who address or client; what it sent is not kept
   * @return true if it is the first of its kind
   */
  synchronized boolean note(Refusal why, String who) {
    if (list.size() >= MOST || !known.add(why + " " + who)) {
      return false;
    }
    list.add(new Phones.Refused(why, who, clock.instant()));
    return true;
  }

  synchronized List<Phones.Refused> all() {
    return List.copyOf(list);
  }
}
