package blindlap.wording;

import blindlap.fault.Problem;
import blindlap.fault.TypedNumber;
import blindlap.wording.day.Figures;
import blindlap.wording.day.Problems;
import blindlap.wording.day.Words;
import java.util.List;

/** Words of the workshop arithmetic. */
public final class WorkshopWords {
  private static final Words WORDS = Words.of("workshop");

  private WorkshopWords() {}

  /** What a calculation works out. */
  public static String title(String kind) {
    return WORDS.say(kind + ".title");
  }

  /** Its formula. */
  public static String formula(String kind) {
    return WORDS.say(kind + ".formula");
  }

  /** Names of the numbers it takes. */
  public static List<String> inputs(String kind) {
    return List.of(WORDS.say(kind + ".inputs").split("; ", -1));
  }

  /** A result with its unit. */
  public static String result(String kind, double value) {
    int decimals = kind.startsWith("CLICKS") ? 0 : Math.abs(value) < 10 ? 2 : 1;
    return WORDS.say(kind + ".result", Figures.number(value, decimals));
  }

  /** What was typed is no number. */
  public static String notANumber(String typed) {
    return WORDS.say(TypedNumber.twoSigns(typed) ? "two.signs" : "not.a.number", typed);
  }

  /** The numbers cannot be. */
  public static String impossible(Problem why) {
    return WORDS.say("impossible", Problems.sentence(why));
  }
}
