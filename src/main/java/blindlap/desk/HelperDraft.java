package blindlap.desk;

import blindlap.exchange.HelperEntryText;
import blindlap.plan.Plan;
import blindlap.session.HelperEntry;
import java.util.Collections;
import java.util.Optional;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * What is unfinished of a handling.
 *
 * @param entry so far
 * @param steps steps ticked off, from 0: an aid to memory, which never becomes a part of the entry
 */
public record HelperDraft(HelperEntry entry, Set<Integer> steps) {
  /** Stands between the entry's text, which has no line feed, and the steps. */
  private static final String STEPS = "\nsteps";

  public HelperDraft {
    SortedSet<Integer> sorted = new TreeSet<>(steps);
    steps = Collections.unmodifiableSet(sorted);
  }

  /** The text that is encrypted. */
  String text(Plan plan) {
    return HelperEntryText.write(entry, plan)
        + steps.stream().map(step -> " " + step).collect(Collectors.joining("", STEPS, ""));
  }

  /** The draft of a text; drafts of earlier versions are the entry alone. */
  static Optional<HelperDraft> read(String text, Plan plan) {
    int end = text.indexOf(STEPS);
    Set<Integer> steps = new TreeSet<>();
    if (end >= 0) {
      for (String step : text.substring(end + STEPS.length()).strip().split(" ")) {
        if (step.matches("[0-9]{1,3}")) {
          steps.add(Integer.valueOf(step));
        }
      }
    }
    return HelperEntryText.read(end < 0 ? text : text.substring(0, end), plan)
        .map(entry -> new HelperDraft(entry, steps));
  }

  /** Says which stint only. */
  @Override
  public String toString() {
    return "HelperDraft[stint " + entry.stint() + "]";
  }
}
