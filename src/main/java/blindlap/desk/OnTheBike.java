package blindlap.desk;

import blindlap.session.HelperEntry;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * What was really on in each stint, by the helper's records and what corrects them. Of two
 * corrections of a stint the later one counts.
 *
 * @param fitted setups by stint, 0 = the warm-up, as recorded at the stint itself
 * @param corrections in the order in which they were said
 */
record OnTheBike(SortedMap<Integer, Integer> fitted, List<HelperEntry.Correction> corrections) {
  static final OnTheBike UNKNOWN = new OnTheBike(new TreeMap<>(), List.of());

  OnTheBike {
    fitted = Collections.unmodifiableSortedMap(new TreeMap<>(fitted));
    corrections = List.copyOf(corrections);
  }

  /** By entries in the order of their stints. */
  static OnTheBike of(List<HelperEntry> entries) {
    OnTheBike all = UNKNOWN;
    for (HelperEntry entry : entries) {
      all = all.with(entry);
    }
    return all;
  }

  /** The same with one more entry, perhaps the one in hand, in place of what was known of it. */
  OnTheBike with(HelperEntry entry) {
    SortedMap<Integer, Integer> setups = new TreeMap<>(fitted);
    setups.put(entry.stint(), entry.fitted());
    List<HelperEntry.Correction> all = new ArrayList<>(corrections);
    entry.corrections().stream().filter(each -> !all.contains(each)).forEach(all::add);
    return new OnTheBike(setups, all);
  }

  /** The setup that was on in a stint; empty where no record tells. */
  Optional<Integer> on(int stint) {
    return corrections.stream()
        .filter(each -> each.stint() == stint)
        .map(HelperEntry.Correction::fitted)
        .reduce((before, later) -> later)
        .or(() -> Optional.ofNullable(fitted.get(stint)));
  }

  /** Says nothing of what is inside. */
  @Override
  public String toString() {
    return "OnTheBike[]";
  }
}
