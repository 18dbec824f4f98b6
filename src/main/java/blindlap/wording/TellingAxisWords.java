package blindlap.wording;

import blindlap.stats.tell.Telling;
import blindlap.wording.day.Words;
import java.util.List;

/** The words on the picture of right answers of a telling run. */
public final class TellingAxisWords {
  private static final Words WORDS = Words.of("telling");

  private final Telling telling;
  private final TellingFigures figures;

  TellingAxisWords(Telling telling, TellingFigures figures) {
    this.telling = telling;
    this.figures = figures;
  }

  /** "Against chance, and against what would matter". */
  public static String title() {
    return WORDS.say("axis.title");
  }

  /** What is counted. */
  public String counted() {
    return WORDS.say("axis.right");
  }

  /** Of how many. */
  public String of() {
    return WORDS.say("axis.of", telling.run().number());
  }

  /** At the line of guessing. */
  public String guessing() {
    return WORDS.say("axis.guessing", figures.guessed());
  }

  /** At the line of what would matter. */
  public String matters() {
    return WORDS.say("axis.matters", figures.mattering());
  }

  /** At the dot. */
  public String dot() {
    return WORDS.say("axis.dot", telling.right());
  }

  /** Below it. */
  public List<String> interval() {
    return List.of(WORDS.say("axis.interval"), figures.interval());
  }

  /** In the grey band. */
  public String guessers() {
    return WORDS.say("axis.guessers");
  }

  /** The picture in a sentence. */
  public String spoken() {
    return WORDS.say(
        "axis.spoken",
        telling.right(),
        telling.run().number(),
        figures.guessed(),
        figures.mattering());
  }

  /** Its interval, and where guessers land. */
  public String spokenMore() {
    return telling.run().least().isPresent()
        ? WORDS.say("axis.spoken.more", figures.interval(), telling.run().least().getAsInt() - 1)
        : WORDS.say("axis.spoken.never", figures.interval());
  }
}
