package blindlap.wording;

import blindlap.review.DayRecord;
import blindlap.review.Finding;
import blindlap.review.KnownStints;
import blindlap.wording.day.Words;
import java.util.ArrayList;
import java.util.List;

/**
 * Whether a finding is settled for its rider, trail and day, or what stands against calling it so.
 */
final class SettledWords {
  private static final Words WORDS = Words.of("finding");

  private final Finding finding;
  private final DayRecord day;

  SettledWords(Finding finding) {
    this.finding = finding;
    this.day = finding.day();
  }

  String said() {
    List<String> conditions = conditions();
    return conditions.isEmpty()
        ? WORDS.say("next.settled")
        : WORDS.say("next.conditional", String.join("; ", conditions));
  }

  private List<String> conditions() {
    List<String> conditions = new ArrayList<>();
    switch (day.plan().level()) {
      case OPEN, DRAWN -> conditions.add(WORDS.say("condition.unblinded"));
      case MASKED -> conditions.add(WORDS.say("condition.masked"));
      case PREPARED, HELPER -> {}
    }
    if (day.cutShort()) {
      conditions.add(WORDS.say("condition.cut.short"));
    }
    if (!day.wrongFits().isEmpty()) {
      conditions.add(WORDS.say("condition.wrong.fits", StintList.words(day.wrongFits())));
    }
    if (!day.blindBroken().isEmpty()) {
      conditions.add(
          WORDS.say(
              KnownStints.labelsOut(day).isPresent()
                  ? "condition.labels.out"
                  : "condition.blind.broken",
              StintList.words(day.blindBroken().keySet())));
    }
    if (finding.guesses().flagged()) {
      conditions.add(WORDS.say("condition.guesses"));
    }
    return conditions;
  }
}
