package blindlap.picture;

import blindlap.plan.Plan;
import blindlap.plan.StepsDay;
import blindlap.plot.GuessedEnds;
import blindlap.plot.GuessedOrder;
import blindlap.plot.SetupMark;
import blindlap.plot.surface.Drawing;
import blindlap.plot.surface.Spoken;
import blindlap.review.DayRecord;
import blindlap.review.Finding;
import blindlap.review.Guesses;
import blindlap.session.day.Guess;
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
      return ends(finding);
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

  /** Levels have no marks: where each lay between both ends, and the end that was guessed. */
  private static Optional<Drawing> ends(Finding finding) {
    DayRecord day = finding.day();
    Plan plan = day.plan();
    double[] numbers = plan.levelNumbers();
    double low = numbers[plan.place(false)];
    double range = numbers[plan.place(true)] - low;
    String letters = finding.guesses().letters();
    List<GuessedEnds.Stint> stints = new ArrayList<>();
    for (int i = 0; i < letters.length(); i++) {
      if (letters.charAt(i) != '.') {
        double place = (numbers[day.setup(i + 1)] - low) / range;
        stints.add(new GuessedEnds.Stint(i + 1, place, guess(day, i + 1)));
      }
    }
    return stints.isEmpty()
        ? Optional.empty()
        : Optional.of(
            GuessedEnds.of(
                new GuessedEnds.Content(
                    stints,
                    WORDS.say("guess.level"),
                    WORDS.say("guess.nearer"),
                    WORDS.say("guess.low"),
                    WORDS.say("guess.high"),
                    WORDS.say("guess.unknown"),
                    new Spoken(new FindingText(finding).guesses(), ""))));
  }

  private static GuessedEnds.Guess guess(DayRecord day, int stint) {
    Guess guess = day.guesses().get(stint);
    Integer end = guess == null ? null : guess.setup();
    if (end == null) {
      return GuessedEnds.Guess.UNKNOWN;
    }
    return switch (StepsDay.End.values()[end]) {
      case LOW -> GuessedEnds.Guess.LOW;
      case HIGH -> GuessedEnds.Guess.HIGH;
    };
  }
}
