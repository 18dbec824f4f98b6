package blindlap.wording;

import blindlap.plan.Labels;
import blindlap.plan.Setup;
import blindlap.review.DayRecord;
import blindlap.review.KnownStints;
import blindlap.review.Masks;
import blindlap.wording.day.Figures;
import java.util.ArrayList;
import java.util.List;

/** Masked labels in sentences: which was which, and the rider's one guess. */
final class MaskWords {
  private MaskWords() {}

  /** "X was Shock K, Y was Shock L: …", or that nobody has read it yet. */
  static String which(Masks masks) {
    if (!masks.isRead()) {
      return LevelWords.WORDS.say("masks.unread");
    }
    List<Setup> setups = masks.committed().setups();
    List<String> each = new ArrayList<>();
    for (int place = 0; place < setups.size(); place++) {
      String name = setups.get(masks.read().get(place)).name();
      each.add(LevelWords.WORDS.say("masks.was", Labels.of(place), name));
    }
    return LevelWords.WORDS.say(
        "masks." + masks.from().orElseThrow().name(), String.join(", ", each));
  }

  /** How far the rider knew labels alone; said of every finding over labels. */
  static String known(DayRecord day) {
    return KnownStints.labelsOut(day)
        .map(stint -> LevelWords.WORDS.say("under.MASKED.out", stint(stint)))
        .orElse(LevelWords.WORDS.say("under.MASKED"));
  }

  private static String stint(int stint) {
    return StintList.words(List.of(stint));
  }

  /** The one guess at the end, which means nothing once it came out. */
  static String guess(DayRecord day) {
    if (KnownStints.labelsOut(day).isPresent()) {
      return LevelWords.WORDS.say("masks.guess.out", stint(KnownStints.labelsOut(day).get()));
    }
    Masks masks = day.masks().orElse(null);
    if (masks == null || !masks.isGuessed()) {
      return LevelWords.WORDS.say("masks.guess.none");
    }
    String key =
        !masks.isRead()
            ? "masks.guess.waits"
            : masks.right() ? "masks.guess.right" : "masks.guess.wrong";
    return LevelWords.WORDS.say(key, Figures.p(masks.chance()));
  }
}
