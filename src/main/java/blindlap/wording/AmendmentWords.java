package blindlap.wording;

import blindlap.session.Entry;
import blindlap.session.Fact;
import blindlap.session.HelperEntry;
import blindlap.session.SessionState;
import blindlap.session.StoredEntry;
import blindlap.wording.day.DayWords;
import blindlap.wording.day.Words;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What was added after the key was opened: dated, with its reason, marked as such. */
public final class AmendmentWords {
  private static final Words WORDS = Words.of("finding");

  private AmendmentWords() {}

  /** One line an amendment, in the order they were written: when, what, why. */
  public static List<String> lines(SessionState state) {
    List<String> lines = new ArrayList<>();
    for (StoredEntry stored : state.entries()) {
      Entry entry = stored.entry();
      if (entry.fact() instanceof Fact.AmendmentMade made && state.amendments().contains(made)) {
        lines.add(line(entry.at().atZone(entry.zone()), made.text(), made.reason()));
      }
    }
    return lines;
  }

  /** One amendment: when, what, why. */
  public static String line(ZonedDateTime at, String text, String reason) {
    return WORDS.say("amendment", DayWords.zoned(at), text, reason);
  }

  /**
   * What the helper said of a wrong fit too late for any sealed record, as an amendment.
   *
   * @param correction as the helper's draft has it
   */
  public static Fact.AmendmentMade leftInDraft(
      SessionState state, HelperEntry.Correction correction) {
    Entry last = state.entries().get(state.entries().size() - 1).entry();
    String said =
        WORDS.say(
            "amendment.fit",
            StintList.words(List.of(correction.stint())),
            state.plan().setups().get(correction.fitted()).name(),
            DayWords.zoned(correction.noticed().atZone(last.zone())));
    String words = correction.words().isBlank() ? "" : " " + correction.words();
    return new Fact.AmendmentMade(said + words, WORDS.say("amendment.fit.reason"));
  }

  /**
   * For the head of a finding: that the session was abandoned all the same, and that there are
   * amendments; empty if neither is so.
   */
  public static Optional<String> mark(SessionState state) {
    List<String> said = new ArrayList<>();
    state.abandonedBecause().ifPresent(reason -> said.add(WORDS.say("abandoned", reason)));
    mark(state.amendments().size()).ifPresent(said::add);
    return said.isEmpty() ? Optional.empty() : Optional.of(String.join(" ", said));
  }

  /** The same for so many. */
  public static Optional<String> mark(int count) {
    return count == 0
        ? Optional.empty()
        : Optional.of(WORDS.say(count == 1 ? "amended.one" : "amended", count));
  }
}
