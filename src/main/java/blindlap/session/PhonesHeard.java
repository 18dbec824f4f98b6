package blindlap.session;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * What phones said of a day.
 *
 * @param last greatest number of an entered message, by client
 * @param conflicts what a phone without signal said and what else was said meanwhile, where the two
 *     do not go together; values that differ stand with their lap
 */
public record PhonesHeard(Map<String, Long> last, List<Conflict> conflicts) {
  /** How far two clocks that were set by one another may lie apart. */
  public static final Duration CLOCKS = Duration.ofSeconds(2);

  /** What is in conflict. */
  public enum Kind {
    /** Something newer stood there when it came: it is kept and changes nothing. */
    OUTDATED,
    /** The rider read the code before the helper's page handed the bike over. */
    BEFORE_HAND_OVER
  }

  /**
   * A conflict.
   *
   * @param entry what the phone said
   */
  public record Conflict(Kind kind, StoredEntry entry) {}

  public PhonesHeard {
    last = Map.copyOf(last);
    conflicts = List.copyOf(conflicts);
  }

  static PhonesHeard of(PhonesSaid said, List<StoredEntry> entries) {
    List<Conflict> conflicts = new ArrayList<>();
    said.outdated.forEach(entry -> conflicts.add(new Conflict(Kind.OUTDATED, entry)));
    if (!said.last.isEmpty()) {
      entries.stream()
          .filter(entry -> entry.entry().fact() instanceof PlateRead)
          .filter(entry -> before(entry.entry(), entries))
          .forEach(entry -> conflicts.add(new Conflict(Kind.BEFORE_HAND_OVER, entry)));
    }
    return new PhonesHeard(said.last, conflicts);
  }

  private static boolean before(Entry read, List<StoredEntry> entries) {
    return beforeHandOver(((PlateRead) read.fact()).stint(), read.when(), entries);
  }

  /** True if a moment is earlier than the hand-over of a stint by the helper's page. */
  static boolean beforeHandOver(int stint, Instant said, List<StoredEntry> entries) {
    Instant latest = said.plus(CLOCKS);
    return entries.stream()
        .map(StoredEntry::entry)
        .filter(e -> e.fact() instanceof Fact.BikeHandedOver given && given.stint() == stint)
        .findFirst()
        .filter(given -> given.when().isAfter(latest))
        .isPresent();
  }
}
