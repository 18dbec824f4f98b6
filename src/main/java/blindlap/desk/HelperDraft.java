package blindlap.desk;

import blindlap.exchange.HelperEntryText;
import blindlap.plan.Plan;
import blindlap.seal.HelperRecord;
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
 * @param paper the form of the same stint's paper, if anything of it is typed
 */
public record HelperDraft(HelperEntry entry, Set<Integer> steps, Optional<PaperForm> paper) {
  /** Stands between the entry's text, which has no line feed, and the steps. */
  private static final String STEPS = "\nsteps";

  /** Stands between the steps and the form of paper. */
  private static final String PAPER = "\npaper ";

  public HelperDraft {
    SortedSet<Integer> sorted = new TreeSet<>(steps);
    steps = Collections.unmodifiableSet(sorted);
  }

  /** A draft without paper. */
  public HelperDraft(HelperEntry entry, Set<Integer> steps) {
    this(entry, steps, Optional.empty());
  }

  /** The same with another entry. */
  HelperDraft with(HelperEntry other) {
    return new HelperDraft(other, steps, paper);
  }

  /** True if all of it has room where it is kept. */
  boolean fits(Plan plan) {
    return HelperRecord.length(whole(plan)) <= HelperRecord.ROOM;
  }

  /** The text that is encrypted; a form without room is left out before the entry is. */
  String text(Plan plan) {
    return fits(plan) ? whole(plan) : stepped(plan);
  }

  private String whole(Plan plan) {
    return stepped(plan) + paper.map(form -> PAPER + form.text()).orElse("");
  }

  private String stepped(Plan plan) {
    return HelperEntryText.write(entry, plan)
        + steps.stream().map(step -> " " + step).collect(Collectors.joining("", STEPS, ""));
  }

  /** The draft of a text; drafts of earlier versions are the entry alone, or have no paper. */
  static Optional<HelperDraft> read(String text, Plan plan) {
    int form = text.indexOf(PAPER);
    String stepped = form < 0 ? text : text.substring(0, form);
    int end = stepped.indexOf(STEPS);
    Set<Integer> steps = new TreeSet<>();
    if (end >= 0) {
      for (String step : stepped.substring(end + STEPS.length()).strip().split(" ")) {
        if (step.matches("[0-9]{1,3}")) {
          steps.add(Integer.valueOf(step));
        }
      }
    }
    Optional<PaperForm> paper =
        form < 0 ? Optional.empty() : PaperForm.read(text.substring(form + PAPER.length()));
    return HelperEntryText.read(end < 0 ? stepped : stepped.substring(0, end), plan)
        .map(entry -> new HelperDraft(entry, steps, paper.filter(p -> p.stint() == entry.stint())));
  }

  /** Says which stint only. */
  @Override
  public String toString() {
    return "HelperDraft[stint " + entry.stint() + "]";
  }
}
