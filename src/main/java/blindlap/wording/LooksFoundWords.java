package blindlap.wording;

import blindlap.review.Finding;
import blindlap.review.LooksFound;
import blindlap.wording.day.Figures;
import blindlap.wording.day.Words;
import java.util.ArrayList;
import java.util.List;

/** Looks before the end of an unsealed day, a sentence each. */
public final class LooksFoundWords {
  private static final Words WORDS = Words.of("look");

  private LooksFoundWords() {}

  /** What they were, what they cost, what followed; nothing for a day without looks. */
  static List<String> lines(Finding finding) {
    List<String> lines = new ArrayList<>();
    int stints = finding.day().plan().stints();
    finding
        .looks()
        .ifPresent(
            looks -> {
              looks.seen().forEach(seen -> lines.addAll(of(seen)));
              looks.untaken().forEach(stint -> lines.add(WORDS.say("found.untaken", stint)));
              if (looks.stopped()) {
                lines.add(WORDS.say("found.stopped", looks.lastStint(), stints));
              }
              if (looks.knewTheyDiffer()) {
                lines.add(WORDS.say("found.knew", looks.settledAt().getAsInt() + 1));
              }
              if (!looks.changed().isEmpty()) {
                lines.add(WORDS.say("found.changed", StintList.words(looks.changed())));
              }
            });
    return lines;
  }

  private static List<String> of(LooksFound.Seen seen) {
    List<String> lines = new ArrayList<>();
    int stint = seen.look().stint();
    lines.add(WORDS.say(seen.look().settled() ? "found.settled" : "found.ride.on", stint));
    if (!seen.agrees()) {
      lines.add(WORDS.say("found.otherwise", stint));
    }
    return lines;
  }

  /** Interval and p of a primary measure that was looked at before the end. */
  static String evidence(String interval, LooksFound looks, double ordinary, String orders) {
    String p = DifferenceWords.p(looks.p());
    String without = DifferenceWords.p(ordinary);
    return looks.left().isPresent()
        ? WORDS.say(
            "evidence.ended",
            interval,
            p,
            without,
            orders,
            Figures.number(looks.left().getAsDouble(), 3))
        : WORDS.say("evidence.stopped", interval, p, without, orders);
  }
}
