package blindlap.exchange;

import blindlap.review.Handling;
import blindlap.session.Entry;
import blindlap.session.Fact;
import blindlap.session.HelperEntry;
import blindlap.session.SessionState;
import blindlap.session.StoredEntry;
import blindlap.session.day.LapId;
import blindlap.session.day.Source;
import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * How long the handlings of an unsealed day took: from the times at which laps were done and bikes
 * handed over, as the entries have them, and from the helper's opened records.
 */
public final class DayHandlings {
  /** Disagreement of the helper's two clocks at which a wait is not known. */
  private static final Duration AGREEMENT = Duration.ofSeconds(2);

  private final SessionState state;
  private final SortedMap<LapId, Instant> done = new TreeMap<>();
  private final Map<Integer, Instant> handedOver = new TreeMap<>();
  private final Set<Integer> keyedIn = new HashSet<>();

  private DayHandlings(SessionState state) {
    this.state = state;
    Set<StoredEntry> late = new HashSet<>(state.notApplied());
    state.entries().stream()
        .filter(stored -> !late.contains(stored))
        .map(StoredEntry::entry)
        .forEach(this::said);
  }

  /** What is known of each stint's handling, 0 being that before the warm-up. */
  public static SortedMap<Integer, Handling> of(SessionState state) {
    DayHandlings all = new DayHandlings(state);
    SortedMap<Integer, Handling> handlings = new TreeMap<>();
    for (int stint = 0; stint <= state.plan().stints(); stint++) {
      Handling handling = all.handling(stint);
      if (handling.waited() != null || handling.took() != null) {
        handlings.put(stint, handling);
      }
    }
    return handlings;
  }

  private void said(Entry entry) {
    if (entry.fact() instanceof Fact.BikeHandedOver fact) {
      handedOver.putIfAbsent(fact.stint(), entry.when());
    } else if (entry.fact() instanceof Fact.LapRidden fact) {
      done.putIfAbsent(fact.lap(), entry.when());
      if (fact.source() != Source.SCREEN) {
        keyedIn.add(fact.lap().stint()); // written down later: its time is that of the typing
      }
    }
  }

  private Handling handling(int stint) {
    String text = state.openedHelperRecords().get(stint);
    HelperEntry record =
        text == null ? null : HelperEntryText.read(text, state.plan()).orElse(null);
    HelperEntry.Timing timing = record == null ? null : record.timing();
    Duration given = timing == null ? null : timing.given();
    return new Handling(
        stint,
        doubtful(record) ? null : wait(stint),
        timing == null ? null : seconds(timing.took()),
        given == null ? null : seconds(given),
        timing != null && timing.declared() ? timing.words() : null);
  }

  private @Nullable BigDecimal wait(int stint) {
    Instant over = handedOver.get(stint);
    Instant last =
        done.entrySet().stream()
            .filter(lap -> lap.getKey().stint() == stint - 1)
            .map(Map.Entry::getValue)
            .reduce((a, b) -> b)
            .orElse(null);
    if (over == null || last == null || keyedIn.contains(stint - 1) || over.isBefore(last)) {
      return null;
    }
    return seconds(Duration.between(last, over));
  }

  /** True if the helper's clocks disagree: the machine slept, or its clock was set. */
  private static boolean doubtful(@Nullable HelperEntry record) {
    if (record == null || record.timing() == null) {
      return false;
    }
    Instant begun = record.begun();
    Instant ready = record.done();
    if (begun == null || ready == null) {
      return false;
    }
    Duration apart = Duration.between(begun, ready).minus(record.timing().took()).abs();
    return apart.compareTo(AGREEMENT) > 0;
  }

  private static BigDecimal seconds(Duration time) {
    return BigDecimal.valueOf(time.toMillis(), 3);
  }
}
