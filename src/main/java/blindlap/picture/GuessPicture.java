package blindlap.picture;

import blindlap.plot.GuessedOrder;
import blindlap.plot.SetupMark;
import blindlap.plot.surface.Drawing;
import blindlap.plot.surface.Spoken;
import blindlap.review.DayRecord;
import blindlap.review.Finding;
import blindlap.review.Guesses;
import blindlap.wording.FindingText;
import blindlap.wording.day.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The strip of guesses of a finding: the order above, what the rider said below. */
public final class GuessPicture {
  private static final Words WORDS = Words.of("pictures");

  private GuessPicture() {}

  /** The strip; a stint without an answer is left out. Empty if nobody guessed. */
  public static Optional<Drawing> of(Finding finding) {
    DayRecord day = finding.day();
    if (day.plan().steps() != null) {
      return Optional.empty(); // levels have no marks to be guessed
    }
    Guesses guesses = finding.guesses();
    List<GuessedOrder.Stint> stints = new ArrayList<>();
    for (int i = 0; i < guesses.letters().length(); i++) {
      char said = guesses.letters().charAt(i);
      if (said != '.') {
        stints.add(
            new GuessedOrder.Stint(
                i + 1,
                SetupMark.of(day.setup(i + 1)),
                said == '-' ? Optional.empty() : Optional.of(SetupMark.of(said - 'A'))));
      }
    }
    if (stints.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        GuessedOrder.of(
            new GuessedOrder.Content(
                stints,
                WORDS.say(day.nullRun() ? "guess.named" : "guess.order"),
                WORDS.say("guess.said"),
                WORDS.say("guess.unknown"),
                new Spoken(new FindingText(finding).guesses(), ""))));
  }
}
